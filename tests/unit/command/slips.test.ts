import { describe, expect, it } from 'vitest';
import { openRoomWithGullGrey, type GlazeRoom } from '../../helpers/glazeRoom.ts';

const logged = async (room: GlazeRoom) => (await room.say(90, '/bucket log bucket:gg')).reasons.length;

/** Refused, naming the slip; nothing is saved. */
const refused = async (room: GlazeRoom, line: string, named: RegExp) => {
  const before = await logged(room);
  const answer = await room.say(5, line);
  expect(answer).toMatchObject({ ok: false, kind: 'refusal' });
  expect(answer.title).toMatch(named);
  expect(await logged(room)).toBe(before);
  expect(room.bugs).toEqual([]);
};

// By hand: a scale's step counts by its square (GUM, a uniform interval), and (1/(1/8))² is 64.
it('a weight in eighths of an ounce is off a scale with that step', async () => {
  const room = await openRoomWithGullGrey();
  await room.keeper(0, '/studio vessel name:"steel cup" tare:85.4g water:100.2g temperature:20C');
  const spread = async (weight: string) =>
    Number((await room.say(5, `/reading bucket:gg weight:"${weight}" stirred:yes`)).data['u95']) ** 2;
  const fine = await spread('8.0000 oz');
  expect(((await spread('8 oz')) - fine) / ((await spread('7 8/8 oz')) - fine)).toBeCloseTo(64, 1);
});

describe('what is nothing', () => {
  it.each([
    ['/reading bucket:gg weight:0g', /must be more than 0/],
    ['/added bucket:gg what:water amount:0ml', /must be more than 0/],
    ['/stirred bucket:gg minutes:0', /starts at 6 s/],
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
  expect(answer.cautions.filter((one) => one.startsWith('Power mixer'))).toHaveLength(1);
});

it.each([
  ['wax', 'glazed'],
  ['latex', 'peeled'],
])('%s that is off was %s when nothing is said, however early', async (kind, how) => {
  const room = await openRoomWithGullGrey();
  await room.say(1, `/coat on kind:${kind} pieces:bowl`);
  expect((await room.say(2, '/coat off coat:c-1')).data).toMatchObject({ how });
});
