import { describe, expect, it } from 'vitest';
import { openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const logged = async (room: GlazeRoom) => (await room.say(90, '/bucket log bucket:gg')).reasons.length;

/** Expects a refusal that names the error, and that nothing was saved. */
const refused = async (room: GlazeRoom, line: string, named: RegExp) => {
  const before = await logged(room);
  const answer = await room.say(5, line);
  expect(answer).toMatchObject({ ok: false, kind: 'refusal' });
  expect(answer.title).toMatch(named);
  expect(await logged(room)).toBe(before);
  expect(room.bugs).toEqual([]);
};

// By hand: a uniform interval's variance goes with the square of the step (GUM), and (1/(1/8))² is 64.
it('a weight in eighths of an ounce is off a scale with that step', async () => {
  const room = await openRoomWithGullGrey();
  await room.keeper(0, '/studio vessel name:"steel cup" tare:85.4g water:100.2g temperature:20C');
  const spread = async (weight: string) =>
    Number((await room.say(5, `/reading bucket:gg weight:"${weight}" stirred:yes`)).data['u95']) ** 2;
  const fine = await spread('8.0000 oz');
  expect(((await spread('8 oz')) - fine) / ((await spread('7 8/8 oz')) - fine)).toBeCloseTo(64, 1);
});

describe('an amount of zero', () => {
  it.each([
    ['/reading bucket:gg weight:0g', /must be more than 0/],
    ['/added bucket:gg what:water amount:0ml', /must be more than 0/],
    ['/stirred bucket:gg minutes:0', /lowest is 6 s/],
  ])('%s', async (line, named) => {
    await refused(await openRoomWithGullGrey(), line, named);
  });
});

it('an action after an entry that never was is refused plainly', async () => {
  const room = await openRoomWithGullGrey();
  await refused(room, '/stirred bucket:gg after:99', /no entry 99.*ends at 1/);
});

it('the same caution is said once', async () => {
  const room = await openRoomWithGullGrey();
  const answer = await room.keeper(1, '/stirred bucket:gg with:mixer seen:cake');
  expect(new Set(answer.cautions).size).toBe(answer.cautions.length);
  expect(answer.cautions.filter((one) => one.startsWith('A power mixer'))).toHaveLength(1);
});

it.each([
  ['wax', 'glazed'],
  ['latex', 'peeled'],
])('%s that is off was %s when nothing is said, however early', async (kind, how) => {
  const room = await openRoomWithGullGrey();
  await room.say(1, `/coat on kind:${kind} pieces:bowl`);
  expect((await room.say(2, '/coat off coat:c-1')).data).toMatchObject({ how });
});

describe('what went in over the rim', () => {
  it.each([
    ['what:water amount:8l', /15 l are in the pail, and it holds 19 l: “8l” more does not fit/],
    ['what:glaze amount:8l gravity:1.44', /“8l” more/],
    // 20 kg of grains at 2.6 take 7.7 l.
    ['what:dry amount:20kg', /“20kg” more/],
  ])('%s is refused', async (typed, named) => {
    await refused(await openRoomWithGullGrey(), `/added bucket:gg ${typed}`, named);
  });

  it.each(['what:water amount:5l', 'what:glaze amount:5l gravity:1.44', 'what:dry amount:10kg'])(
    '%s is within what the volume can tell',
    async (typed) => {
      const room = await openRoomWithGullGrey();
      expect(await room.say(5, `/added bucket:gg ${typed}`)).toMatchObject({ ok: true });
    },
  );

  it('is kept when some was taken out first, when it was on an earlier day, and when nobody knows how full it was', async () => {
    const room = await openRoomWithGullGrey();
    expect(await room.say(5, '/added bucket:gg what:water amount:8l when:"2h ago"')).toMatchObject({
      ok: true,
    });
    const ladled = await openRoomWithGullGrey();
    await ladled.say(1, '/added bucket:gg what:taken amount:6l');
    expect(await ladled.say(5, '/added bucket:gg what:water amount:8l')).toMatchObject({ ok: true });
    const unknown = await openRoomWithGullGrey();
    await unknown.say(1, '/added bucket:gg what:taken');
    expect(await unknown.say(5, '/added bucket:gg what:water amount:8l')).toMatchObject({ ok: true });
  });
});

it('a bucket’s card says no dry content once something of unknown amount went in, and which powder it reckons with', async () => {
  const room = await openRoomWithGullGrey();
  await room.say(1, '/reading bucket:gg gravity:1.44 stirred:yes');
  const card = () => room.say(2, '/bucket show bucket:gg');
  // Brongniart: 2.6 × 440/1.6 = 715 g to the litre.
  expect(Number((await card()).data['dryGramsPerLitre'])).toBeCloseTo(715, 0);
  expect(JSON.stringify((await card()).facts)).toMatch(/gravity 2\.6, the usual value;/);
  await room.say(2, '/added bucket:gg what:water');
  expect((await card()).data).toMatchObject({ dryGramsPerLitre: null, solidsVolumeFraction: null });
});

describe('a misspelt option', () => {
  it.each([
    ['/reading bucket:gg graviti:1.44', /“graviti:” is not an option here. Did you mean gravity:/],
    ['/reading buket:gg gravity:1.44', /“buket:”.*bucket:/],
    ['/reading bucket:gg weigth:230g stirred:yes', /“weigth:”.*weight:/],
    ['/added bucket:gg what:water amout:1l note:fine', /“amout:”.*amount:/],
  ])('%s is named, with the nearest', async (line, named) => {
    await refused(await openRoomWithGullGrey(), line, named);
  });

  it.each([
    'note:"graviti: 1.44, the sheet says"',
    'note:thick at first. stired: a while',
    'gravity:1.44 note:see weigth: below',
    'note:cup: ours',
  ])('a note is prose: %s', async (typed) => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(5, `/reading bucket:gg look:right ${typed}`);
    expect(answer.title).not.toMatch(/not an option/);
  });
});

it('a reading over a cake that nobody has said is gone is disbelieved for that', async () => {
  const room = await openRoomWithGullGrey();
  await room.say(1, '/stirred bucket:gg seen:cake');
  const answer = await room.say(2, '/reading bucket:gg gravity:1.44');
  expect(answer.reasons.join()).toMatch(
    /does not count: a cake had been felt before it, and nobody had said that it was gone/,
  );
  const still = await openRoomWithGullGrey();
  const unstirred = await still.say(2, '/reading bucket:gg gravity:1.44 stirred:no');
  expect(unstirred.reasons.join()).toMatch(/not count: no stir to the bottom/);
});

describe('a gravity off a hydrometer', () => {
  // °Bé: 145/(145 − n); °Tw: 1 + n/200 (NIST Handbook 44 and the scales' own definitions).
  it.each([
    ['88Tw', 1.44],
    ['88 °Tw', 1.44],
    ['44Be', 145 / 101],
    ['44 °Bé', 145 / 101],
    ['1.44 sg', 1.44],
    ['44Be scale:baume', 145 / 101],
  ])('gravity:%s is read on the scale that was typed', async (typed, value) => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(5, `/reading bucket:gg gravity:${typed} stirred:yes`);
    expect(Number(answer.data['gravity'])).toBeCloseTo(value, 6);
    expect(answer.reasons.join()).toMatch(/sg/.test(typed) ? /as you gave it:/ : /From a hydrometer/);
  });

  it.each(['44Be scale:twaddell', '88Tw scale:baume', '1.44sg scale:baume'])(
    'gravity:%s contradicts itself',
    async (typed) => {
      await refused(
        await openRoomWithGullGrey(),
        `/reading bucket:gg gravity:${typed}`,
        /another unit than scale:/,
      );
    },
  );
});

describe('a gravity that is no slurry', () => {
  it.each([
    ['144', /144 .*Was it 1\.44\?/],
    ['1440', /1440 .*Was it 1\.44\?/],
    ['1.0', /1\.00 is almost that of water/],
    ['1.02', /1\.02 is almost that of water/],
    // By volume (1.99 − 1)/(2.6 − 1) = 62 % grains.
    ['1.99', /62 % .*a paste/],
  ])('gravity:%s is refused with the likely slip', async (typed, named) => {
    await refused(await openRoomWithGullGrey(), `/reading bucket:gg gravity:${typed} stirred:yes`, named);
  });
});

describe('after something went in', () => {
  it.each(['what:water amount:1l', 'what:water'])(
    '%s: stir, then measure; once stirred, measure',
    async (typed) => {
      const room = await openRoomWithGullGrey();
      await room.say(1, '/reading bucket:gg gravity:1.44 stirred:yes');
      expect((await room.say(2, `/added bucket:gg ${typed}`)).title).toMatch(
        /Stir it to the bottom, then measure/,
      );
      expect((await room.say(2, '/stirred bucket:gg')).title).toMatch(/Now measure it before anything else/);
      // A reading is believed for ten minutes after a stir.
      expect((await room.say(13, '/water-or-stir bucket:gg')).title).toMatch(
        /Stir it to the bottom, then measure/,
      );
      await room.say(14, '/stirred bucket:gg');
      expect((await room.say(15, `/added bucket:gg ${typed}`)).title).toMatch(
        /Stir it to the bottom, then measure/,
      );
    },
  );
});
