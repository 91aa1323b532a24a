import { describe, expect, it, test } from 'vitest';
import { faultWords } from '../../../src/words/firing/faultWords.ts';
import { verdictOf } from '../../helpers/discord/answerSchemas.ts';
import { openGlazeRoom, openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

const hour = 60;
const day = 24 * hour;

describe('a hold', () => {
  it.each([
    ['frozen', 'frozen', 'On hold, frozen. Don'],
    ['frozen', 'Frozen.', 'On hold, frozen. Don'],
    ['frozen', 'left outside.', 'On hold, frozen: left outside. Don'],
    ['other', 'a sponge fell in', 'On hold: a sponge fell in. Don'],
  ])('of %s because %s says so once', async (cause, why, title) => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, `/bucket hold bucket:gg cause:${cause} why:"${why}"`);
    const answer = await room.say(2, '/water-or-stir bucket:gg');
    expect(answer.title).toContain(title);
    expect(answer.reasons.join('\n')).not.toMatch(/\(frozen\): frozen/i);
    expect(answer.reasons.join('\n')).toMatch(/On hold.*[a-z)]\. By/);
  });
});

test.each([
  ['1h', 63, /Last stirred a little over 60 min ago, which is how long it may rest/],
  ['4h', 4 * hour + 26, /Last stirred a little over 4 h ago/],
  ['4h', 9 * hour, /Last stirred 9 h ago; it may rest 4 h/],
])('a rest limit of %s that is over after %i minutes reads as over', async (rest, after, said) => {
  const room = await openRoomWithGullGrey(['rest', rest]);
  await room.say(1, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes');
  const answer = await room.say(1 + after, '/water-or-stir bucket:gg');
  expect(verdictOf(answer).step).toBe('stir');
  expect(answer.reasons.join('\n')).toMatch(said);
});

it('a clock set back is asked about, and nothing is stirred in a day', async () => {
  const room = await openRoomWithGullGrey();
  await room.say(day, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes');
  const said = (await room.say(1, '/water-or-stir bucket:gg')).reasons.join('\n');
  expect(said).toMatch(/stir is logged for a time that is still to come\. Is a clock wrong\?/);
  expect(said).not.toMatch(/Stirred in/);
});

it('a dose that is offered is counted as if it were in, and said so', async () => {
  const room = await openRoomWithGullGrey();
  const answer = await room.say(1, '/reading bucket:gg gravity:1.44 seconds:10 stirred:yes');
  expect(answer.reasons.join('\n')).toMatch(/That makes 0\.03 % in all since the last fresh batch/);
});

it('a coat that is dry already says since when', async () => {
  const room = await openGlazeRoom();
  // On since 21:00, dry at 09:00, reported at 23:00.
  const answer = await room.say(day + 11 * hour, '/coat on kind:wax pieces:bowl when:"2026-03-01T21:00:00Z"');
  expect(answer.title).toBe('bowl: Ready since Mon 2 Mar 09:00.');
});

test.each([
  [1, /^1 pair was compared/],
  [12, /^12 pairs were compared/],
])('%i pairs of condition and fault', (pairs, said) => {
  expect(faultWords.searched(pairs).join('')).toMatch(said);
});

it.each([
  // Times in UTC; open from 08:00 to 22:00; the sheen takes 20 minutes.
  ['at night', 13 * hour + 8, '2026-03-02T08:00:00.000Z'],
  ['just before the door closes', 9 * hour + 50, '2026-03-02T08:00:00.000Z'],
  ['in the afternoon', 2 * hour, '2026-03-01T14:20:00.000Z'],
])('a piece that is prepared %s is dipped while the studio is open', async (_, minutes, dipAt) => {
  const room = await openRoomWithGullGrey();
  const answer = await room.say(minutes, '/prep piece:jug bucket:gg');
  expect(answer.data).toMatchObject({ dipAt });
});

it('a dip time says in a word that the bucket is not ready', async () => {
  const room = await openRoomWithGullGrey();
  await room.say(1, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes');
  for (const [seconds, mm] of [
    [1, 0.5],
    [3, 0.8],
    [6, 1.1],
  ])
    await room.say(2, `/dip tile bucket:gg seconds:${seconds} thickness:${mm}mm`);
  const answer = await room.say(8 * hour, '/dip time bucket:gg thickness:0.8mm');
  expect(answer.dont[0]).toBe("The bucket isn't ready: stir first.");
});
