import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../helpers/discord/answerSchemas.ts';
import { openGlazeRoom, openRoomWithGullGrey } from '../../../helpers/room/glazeRoom.ts';
import { allowance, input, referenceRows } from '../../../helpers/glaze/referenceRows.ts';

const row = (id: string) => {
  const found = referenceRows.find((one) => one.id === id);
  if (!found) throw new Error(`no row ${id}`);
  return found;
};

/**
 * A keeper's verdict on a bucket with the row's values: a window 0.06 wide around its target, gravity known to ± 0.002.
 */
const asked = async (id: string, seconds: number, solids = 2.6) => {
  const one = row(id);
  const litres = input(one, 'slurry_volume');
  const target = input(one, 'target_sg');
  const room = await openGlazeRoom();
  const window = `${(target - 0.03).toFixed(2)}-${(target + 0.03).toFixed(2)}`;
  await room.keeper(
    0,
    `/bucket add name:A pail:60l volume:${litres}l gravity:${window} seconds:12-16 cup:ford4 solids:${solids}`,
  );
  const answer = await room.keeper(
    1,
    `/reading bucket:a gravity:${input(one, 'sg')} within:0.002 seconds:${seconds} stirred:yes`,
  );
  return { verdict: verdictOf(answer), wanted: one.expected.value * 1000, within: allowance(one) * 1000 };
};

describe('to mid-window, as published and computed balances have it', () => {
  it.each(['mass-balance.water-add-1', 'mass-balance.water-add-3'])('%s', async (id) => {
    const { verdict, wanted, within } = await asked(id, 14);
    expect(verdict.step).toBe('add-water');
    expect(Math.abs((verdict.waterMl ?? 0) - wanted)).toBeLessThanOrEqual(within);
  });

  it.each(['mass-balance.water-remove-1', 'mass-balance.water-remove-2'])('%s', async (id) => {
    const { verdict, wanted, within } = await asked(id, 14);
    expect(verdict.step).toBe('draw-off-water');
    expect(Math.abs((verdict.drawOffMl ?? 0) - wanted)).toBeLessThanOrEqual(within);
  });

  it.each(['mass-balance.powder-add-1', 'mass-balance.powder-add-2'])('%s', async (id) => {
    const { verdict, wanted, within } = await asked(id, 14, input(row(id), 'solids_sg'));
    expect(Math.abs((verdict.dryGrams ?? 0) - wanted)).toBeLessThanOrEqual(within);
  });
});

describe('a pour that does not fit', () => {
  it('says nothing of a rest that is under a tenth of the pour', async () => {
    // 15 l from 1.53 to 1.44: 15 × 0.09/0.44 = 3.068 l, and 3 l by whole hundreds of millilitres.
    const room = await openRoomWithGullGrey();
    const answer = await room.say(1, '/reading bucket:gg gravity:1.53 within:0.001 seconds:14 stirred:yes');
    expect(verdictOf(answer)).toMatchObject({ waterMlLeft: expect.closeTo(18.2, 0) });
    expect(answer.title).toMatch(
      /Add 3 l of water, all that fits with room to stir, then stir and measure\.$/,
    );
  });

  it('says so and splits: what fits with room to stir now, the rest after glaze was taken out', async () => {
    const room = await openRoomWithGullGrey(['pail', '20l'], ['volume', '18l']);
    const answer = await room.say(1, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
    const verdict = verdictOf(answer);
    // 18 l · 0.06 / 0.44 = 2454.5 ml; a 20 l pail, 19 l of it usable, has room for 1 l.
    expect(verdict.waterMl).toBeCloseTo(1000, 6);
    expect(verdict).toMatchObject({ waterMlLeft: expect.closeTo(1454.5, 0) });
    expect(answer.title).toMatch(/1 l/);
    expect(answer.reasons.join('\n')).toMatch(/room to stir/);
  });

  it('a full pail is told to give glaze up first, and never to pour nothing', async () => {
    const room = await openRoomWithGullGrey(['volume', '19l']);
    const answer = await room.say(1, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
    expect(verdictOf(answer).waterMl).toBe(0);
    expect(answer.title).toMatch(/full/);
    expect(answer.title).not.toMatch(/\b0 ml/);
    expect(answer.actions.map(({ line }) => line).join('\n')).not.toMatch(/amount:0/);
  });

  it('dry batch is no more than fits either', async () => {
    const room = await openRoomWithGullGrey(['pail', '20l'], ['volume', '18.8l']);
    const answer = await room.keeper(1, '/reading bucket:gg gravity:1.36 seconds:14 stirred:yes');
    // 19 l of the pail are usable: 0.2 l of grains of gravity 2.6.
    expect(verdictOf(answer).dryGrams).toBeCloseTo(520, 6);
    expect(answer.reasons.join('\n')).toMatch(/Draw clear water off first/);
  });
});

describe('how full the pail is', () => {
  it('is asked for again after a week, with the amount for every litre till then', async () => {
    const room = await openRoomWithGullGrey();
    const week = 7 * 24 * 60;
    await room.say(week + 2, '/stirred bucket:gg');
    const answer = await room.say(week + 3, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
    const verdict = verdictOf(answer);
    expect(verdict.step).toBe('add-water');
    expect(verdict.waterMl).toBeUndefined();
    // 1000 · 0.06 / 0.44
    expect(verdict).toMatchObject({ waterMlPerLitre: expect.closeTo(136.36, 1) });
    expect(answer.title).toMatch(/each litre/);
    expect(answer.reasons.join('\n')).toMatch(/Nobody has said lately how full the pail is/);
  });

  it('follows from the gap between rim and glaze', async () => {
    const room = await openGlazeRoom();
    await room.keeper(
      0,
      '/bucket add name:A rim:29cm bottom:25cm height:34cm gravity:1.42-1.46 seconds:12-16 cup:ford4',
    );
    const answer = await room.say(1, '/reading bucket:a gravity:1.5 seconds:14 gap:7cm stirred:yes');
    // A truncated cone, 27 cm deep: there it is 25 + 4 · 27/34 = 28.176 cm wide. π · 27/12 · (25² + 25 · 28.176 +
    // 28.176²) ml.
    const held = (Math.PI * 27 * (25 ** 2 + 25 * 28.17647 + 28.17647 ** 2)) / 12;
    expect(Number(answer.data['volumeL'])).toBeCloseTo(held / 1000, 3);
    expect((verdictOf(answer).waterMl ?? 0) / ((held * 0.06) / 0.44)).toBeCloseTo(1, 3);
  });

  it('grows by what is added and shrinks by what is taken', async () => {
    const room = await openRoomWithGullGrey();
    const litres = async () => {
      const { bucket } = (await room.say(9, '/bucket show bucket:gg')).data;
      return (bucket as { volumeL: number }).volumeL;
    };
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes');
    await room.say(2, '/added bucket:gg what:water amount:1l');
    expect(await litres()).toBeCloseTo(16, 6);
    await room.say(3, '/added bucket:gg what:taken amount:6l');
    expect(await litres()).toBeCloseTo(10, 6);
    await room.say(4, '/added bucket:gg what:dry amount:260g');
    expect(await litres()).toBeCloseTo(10.1, 6);
    await room.say(5, '/added bucket:gg what:draw-off amount:600ml');
    expect(await litres()).toBeCloseTo(9.5, 6);
  });

  it('what goes from one bucket to another is in neither twice', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/bucket add name:"Gull Grey two" nick:gg2 pail:19l volume:5l gravity:1.42-1.46');
    for (const [bucket, gravity] of [
      ['gg', 1.5],
      ['gg2', 1.4],
    ] as const)
      await room.say(1, `/reading bucket:${bucket} gravity:${gravity} within:0.002 look:right stirred:yes`);
    const answer = await room.say(2, '/added bucket:gg2 what:glaze amount:5l from:gg');
    // Equal parts: (1.50 + 1.40) / 2.
    expect(verdictOf(answer).predicted?.value).toBeCloseTo(1.45, 4);
    const shown = async (bucket: string) =>
      (await room.say(3, `/bucket show bucket:${bucket}`)).data['bucket'];
    expect(await shown('gg')).toMatchObject({ volumeL: expect.closeTo(10, 6) });
    expect(await shown('gg2')).toMatchObject({ volumeL: expect.closeTo(10, 6) });
    // An undo in one bucket applies to both.
    await room.say(4, `/undo entry:${String(answer.data['entry'])}`);
    expect(await shown('gg')).toMatchObject({ volumeL: expect.closeTo(15, 6) });
    expect(await shown('gg2')).toMatchObject({ volumeL: expect.closeTo(5, 6) });
  });
});

describe('the ladder of flocculant', () => {
  const thin = '/reading bucket:gg gravity:1.44 seconds:10 stirred:yes';
  const dose = async (salt: string) => {
    const room = await openRoomWithGullGrey();
    await room.say(1, thin);
    if (salt !== '') await room.keeper(2, `/added bucket:gg what:flocculant amount:${salt}`);
    await room.say(10, '/stirred bucket:gg');
    // So much salt should have made it stiff: it is read three times.
    await room.say(21, thin);
    await room.say(21, thin);
    return { member: await room.say(21, thin), keeper: await room.keeper(21, thin) };
  };

  it('takes small steps: 0.03 % of the dry mass', async () => {
    const { member } = await dose('');
    expect(verdictOf(member)).toMatchObject({ step: 'flocculate', then: 'measure' });
    expect(member.reasons.join('\n')).toMatch(/0\.03 %/);
    expect(member.title).toMatch(/flocculant/);
  });

  it('stops for a keeper before 0.2 % since the last remake', async () => {
    // 10 725 g of dry mass: 0.17 % is 18.2 g, and one step more is 0.20 %; 0.18 % is 19.3 g, and one step more exceeds
    // it.
    expect(verdictOf((await dose('18g')).member).step).toBe('flocculate');
    const { member, keeper } = await dose('19.5g');
    expect(verdictOf(member).step).toBe('ask-keeper');
    for (const answer of [member, keeper]) {
      expect(verdictOf(answer).doseMl).toBeUndefined();
      expect(answer.reasons.join('\n')).toMatch(/0\.18 %.*keeper/);
    }
  });
});
