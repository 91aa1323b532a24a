import { describe, expect, it } from 'vitest';
import { openGlazeRoom, openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const number = (value: unknown): number => {
  expect(value).toEqual(expect.any(Number));
  return Number(value);
};
const doseMl = async (room: GlazeRoom, minutes: number) =>
  number((await room.say(minutes, '/dose bucket:gg')).data['doseMl']);
const verdict = (answer: { data: Record<string, unknown> }) =>
  answer.data['verdict'] as Record<string, unknown>;

/** Reads and doses in turn: the efflux times before and after each dose. */
const dosed = async (room: GlazeRoom, readings: readonly (number | string)[], ml: number) => {
  let minutes = 1;
  for (const [i, seconds] of readings.entries()) {
    if (i > 0) await room.say(minutes++, `/added bucket:gg what:flocculant amount:${ml}ml`);
    minutes += 10;
    await room.say(minutes, `/reading bucket:gg gravity:1.44 within:0.002 seconds:${seconds} stirred:yes`);
  }
  return minutes;
};

describe('the next dose', () => {
  it('is the ladder’s rung, in millilitres, teaspoons and grams, and the verdict’s own', async () => {
    const room = await openRoomWithGullGrey();
    const told = await room.say(1, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    const answer = await room.say(1, '/dose bucket:gg');
    // Dry mass by Brongniart: 15 l × 1000 × 2.6 × 0.44/1.6 = 10 725 g; 0.03 % of it is 3.2175 g of heptahydrate.
    // A 4.929 ml teaspoon of saturated solution holds 3.28 g at 20 °C: 3.2175/3.28 × 4.929 = 4.835 ml.
    expect(number(answer.data['heptahydrateGrams'])).toBeCloseTo(3.2175, 2);
    expect(Math.abs(number(answer.data['doseMl']) - 4.835)).toBeLessThan(0.02);
    expect(answer.data['doseMl']).toBe(verdict(told)['doseMl']);
    expect(answer.data).toMatchObject({ totalPercentOfDry: 0, rung: 1, learned: false });
    expect(answer.title).toMatch(/4\.8 ml \(about 1 tsp\)/);
    expect(answer.actions.map(({ line }) => line)).toEqual([
      '/added bucket:1 what:flocculant amount:4.8ml after:2',
    ]);
  });

  it.each([
    // 11.2 s × e^0.35 (two to three steps make a thin bucket creamy, common practice) is 15.9 s, inside 12 to 16 s.
    [11.2, 4.835],
    // 11.7 s would come to 16.6 s: half of it.
    [11.7, 4.835 / 2],
  ])('is half a step where a whole one would probably lead beyond the window: %d s', async (seconds, ml) => {
    const room = await openRoomWithGullGrey();
    await room.say(1, `/reading bucket:gg gravity:1.44 within:0.002 seconds:${seconds} stirred:yes`);
    expect(Math.abs((await doseMl(room, 1)) - ml)).toBeLessThan(0.02);
  });

  it('counts what has gone in since the last remake', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    await room.say(2, '/added bucket:gg what:flocculant amount:3.2175g');
    await room.say(3, '/added bucket:gg what:flocculant amount:3.2175g');
    const answer = await room.say(4, '/dose bucket:gg');
    // 6.435 g over 10 725 g
    expect(number(answer.data['totalPercentOfDry'])).toBeCloseTo(0.06, 3);
    expect(answer.data['rung']).toBe(3);
    await room.keeper(5, '/added bucket:gg what:dry amount:1kg remake:yes');
    expect((await room.say(6, '/dose bucket:gg')).data).toMatchObject({ totalPercentOfDry: 0, rung: 1 });
  });

  it('takes salt along in what is taken out', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    await room.say(2, '/added bucket:gg what:flocculant amount:6.435g');
    await room.say(3, '/added bucket:gg what:taken amount:5l');
    // a third less salt in a third less powder: still 0.06 %
    expect(number((await room.say(4, '/dose bucket:gg')).data['totalPercentOfDry'])).toBeCloseTo(0.06, 3);
  });

  it('stops at the keeper’s checkpoint of 0.2 %', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    // 0.18 % of 10 725 g is 19.3 g: one more rung would pass 0.2 %
    await room.say(2, '/added bucket:gg what:flocculant amount:19.3g');
    await room.say(3, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    const answer = await room.say(3, '/dose bucket:gg');
    expect(answer.data).toMatchObject({ doseMl: 0, heptahydrateGrams: 0, why: 'checkpoint' });
    expect(answer.title).toMatch(/Stop/);
    expect(answer.reasons.join(' ')).toMatch(/logs it as usual.*remake:yes/);
  });

  it('is no step of a verdict past the checkpoint, for a member or a keeper, until a remake', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/added bucket:gg what:flocculant amount:19.3g');
    await room.say(15, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    // So much salt should have made it stiff: it is read twice.
    await room.say(15, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    await room.say(15, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    const member = await room.say(15, '/water-or-stir bucket:gg');
    expect(verdict(member)).toMatchObject({ step: 'ask-keeper', keeperStep: 'ask-keeper' });
    expect(member.title).toMatch(/Ask a keeper/);
    const keeper = await room.keeper(15, '/water-or-stir bucket:gg');
    expect(verdict(keeper)['step']).toBe('ask-keeper');
    expect(verdict(keeper)['keeperStep']).toBeUndefined();
    // 19.3 g over 10 725 g
    expect(keeper.title).toMatch(
      /Stop: flocculant of 0\.18 % of its dry weight is in\. Look at it yourself.*or make a fresh batch/,
    );
    expect(keeper.reasons.join(' ')).toMatch(/logs it as usual.*remake:yes/);
    expect(keeper.reasons.join(' ')).not.toMatch(/After that/);
    expect(await room.keeper(16, '/added bucket:gg what:flocculant amount:3.2g')).toMatchObject({ ok: true });
    await room.keeper(17, '/added bucket:gg what:dry amount:100g remake:yes');
    await room.say(30, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    await room.say(30, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    expect(verdict(await room.keeper(30, '/water-or-stir bucket:gg'))['step']).toBe('flocculate');
  });

  it.each([
    ['gravity:1.44 within:0.002 seconds:14', 'creamy'],
    ['gravity:1.44 within:0.002 seconds:20', 'thick'],
    ['gravity:1.44 within:0.002 seconds:won’t-run', 'thick'],
    ['gravity:1.50 within:0.002 seconds:9', 'water-first'],
    ['gravity:1.36 within:0.002 seconds:9', 'too-wet'],
    ['gravity:1.44 within:0.002 seconds:9 seen:cake', 'hands-off'],
  ])('is none for a bucket read %s: %s', async (reading, why) => {
    const room = await openRoomWithGullGrey();
    await room.say(1, `/reading bucket:gg ${reading} stirred:yes`);
    const answer = await room.say(1, '/dose bucket:gg');
    expect(answer.data).toMatchObject({ doseMl: 0, why });
    expect(answer.actions).toEqual([]);
  });

  it('waits for a stir, and says what it will be', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    const answer = await room.say(600, '/dose bucket:gg');
    expect(answer.title).toMatch(/Stir it first/);
    expect(answer.data).toMatchObject({ now: false });
    expect(number(answer.data['doseMl'])).toBeGreaterThan(4);
    expect(answer.actions).toEqual([]);
  });

  it('is for each litre when nobody has said how full the pail is, and names no amount for the pail', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/bucket add name:"Gull Grey" nick:gg gravity:1.42-1.46 seconds:12-16 cup:ford4');
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    const { data } = await room.say(1, '/dose bucket:gg');
    expect(data).toMatchObject({ doseMl: null, heptahydrateGrams: null });
    // a fifteenth of 4.835 ml
    expect(Math.abs(number(data['doseMlPerLitre']) - 4.835 / 15)).toBeLessThan(0.002);
  });

  it('goes by drops for a jar', async () => {
    const room = await openRoomWithGullGrey(['pail', '500ml'], ['volume', '300ml']);
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    const answer = await room.say(1, '/dose bucket:gg');
    // a fiftieth of 4.835 ml: 0.0967 ml, 2 drops of 0.05 ml
    expect(number(answer.data['doseMl'])).toBeCloseTo(0.0967, 3);
    expect(answer.title).toMatch(/2 drops/);
  });
});

describe('the learned dose', () => {
  it('says that there is not enough data until two doses have a reading on each side', async () => {
    const room = await openRoomWithGullGrey();
    const minutes = await dosed(room, [7, 8], 4.83);
    const answer = await room.say(minutes, '/dose bucket:gg');
    expect(answer.data).toMatchObject({ learned: false });
    expect(answer.data['interval']).toBeUndefined();
    expect(answer.reasons.join(' ')).toMatch(/two doses, with the flow timed by the same cup/);
  });

  it('is the same where it was cold, and each cup ran slower by the cold', async () => {
    // Water is 1.386 mm²/s at 8 °C and 1.003 at 20 (IAPWS 2008); a cup shows 0.65 of the difference (from memory).
    const slower = (1.386 / 1.0034) ** 0.65;
    const [warm, cold] = [await openRoomWithGullGrey(), await openRoomWithGullGrey()];
    const at20 = [7, 8.1, 9.7];
    const minutes = await dosed(warm, at20, 4.83);
    await dosed(
      cold,
      at20.map((seconds) => `${(slower * seconds).toFixed(2)} temperature:8C`),
      4.83,
    );
    const [one, other] = [await doseMl(warm, minutes), await doseMl(cold, minutes)];
    expect(Math.abs(one / other - 1)).toBeLessThan(0.02);
  });

  it('is drawn through them, with its interval, and is the verdict’s own', async () => {
    const room = await openRoomWithGullGrey();
    const minutes = await dosed(room, [7, 8.1, 9.7], 4.83);
    const answer = await room.say(minutes, '/dose bucket:gg');
    expect(answer.data).toMatchObject({ learned: true, rung: 3 });
    const { low, high } = answer.data['interval'] as { low: number; high: number };
    // By hand: water runs through Ford #4 in 4.49 + 1/3.85 = 4.75 s, so ln(t − 4.75) is 0.811, 1.209, 1.599: 0.394 a rung.
    // Mid-window, 14 s, is ln 9.25 = 2.225: 1.59 rungs more, 7.7 ml.
    expect(low).toBeLessThan(7.7);
    expect(high).toBeGreaterThan(7.7);
    const ml = number(answer.data['doseMl']);
    expect(ml).toBeGreaterThan(4.8);
    expect(ml).toBeLessThanOrEqual(2 * 4.84);
    const asked = await room.say(minutes, '/water-or-stir bucket:gg');
    expect(verdict(asked)['doseMl']).toBe(ml);
  });

  it('stops after two rungs that changed nothing', async () => {
    const room = await openRoomWithGullGrey();
    const minutes = await dosed(room, [8, 8.1, 8], 4.83);
    const answer = await room.say(minutes, '/dose bucket:gg');
    expect(answer.data).toMatchObject({ doseMl: 0, why: 'no-change' });
    expect(answer.title).toMatch(/changed nothing/);
    const member = await room.say(minutes, '/water-or-stir bucket:gg');
    expect(verdict(member)).toMatchObject({ step: 'ask-keeper', keeperStep: 'ask-keeper' });
    expect(member.title).toMatch(/two doses changed nothing.*Ask a keeper/);
    const keeper = await room.keeper(minutes, '/water-or-stir bucket:gg');
    expect(verdict(keeper)['step']).toBe('ask-keeper');
    expect(verdict(keeper)['doseMl']).toBeUndefined();
    expect(keeper.title).toMatch(/Stop: two doses changed nothing.*clay in it\?/);
  });

  it('never asks for more than two rungs at once, nor past the checkpoint', async () => {
    const room = await openRoomWithGullGrey();
    const minutes = await dosed(room, [5.6, 5.8, 6.3], 2.5);
    expect(await doseMl(room, minutes)).toBeLessThanOrEqual(2 * 4.84);
  });

  it('forgets what it learned when deflocculant goes in', async () => {
    const room = await openRoomWithGullGrey();
    const minutes = await dosed(room, [7, 8.1, 9.7], 4.83);
    await room.keeper(minutes, '/added bucket:gg what:deflocculant amount:1ml');
    await room.say(minutes + 10, '/reading bucket:gg gravity:1.44 within:0.002 seconds:9 stirred:yes');
    expect((await room.say(minutes + 10, '/dose bucket:gg')).data).toMatchObject({ learned: false });
  });
});

describe('what else a dose is', () => {
  it('is keepers’ hands, and tried in a jar first, when it is deflocculant', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.002 seconds:30 stirred:yes');
    await room.say(2, '/stirred bucket:gg minutes:6');
    await room.say(3, '/reading bucket:gg gravity:1.44 within:0.002 seconds:30 stirred:yes');
    expect(await room.say(3, '/dose bucket:gg what:deflocculant')).toMatchObject({ kind: 'refusal' });
    const answer = await room.keeper(3, '/dose bucket:gg what:deflocculant');
    expect(answer.title).toMatch(/1 drop of deflocculant in a 250 ml jar of it/);
    expect(answer.cautions.join(' ')).toMatch(/caustic/);
  });

  it('is the solution itself, with crystals left over', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(0, '/dose what:solution water:100ml temperature:25C');
    // 118.9 g of heptahydrate saturate 100 g of water at 25 °C (on USGS PHREEQC); a quarter more, in whole tens of grams
    expect(number(answer.data['heptahydrateGrams'])).toBeCloseTo(118.9, 1);
    expect(answer.data['crystalsGrams']).toBe(150);
    // a teaspoon of it holds 3.484 g at 25 °C, within 6 % (mass fraction × density × volume × 246.474/120.366)
    expect(Math.abs(number(answer.data['teaspoonGrams']) / 3.484 - 1)).toBeLessThan(0.06);
    expect(answer.reasons.join(' ')).toMatch(/a teaspoon holds 3\.[45] g of Epsom salt at 25 °C/);
    const hot = await room.say(0, '/dose what:solution water:100ml temperature:35C');
    expect(hot.reasons.join(' ')).not.toMatch(/teaspoon/);
  });

  it('asks which bucket', async () => {
    const room = await openRoomWithGullGrey();
    expect((await room.say(0, '/dose')).title).toMatch(/Which bucket/);
  });
});
