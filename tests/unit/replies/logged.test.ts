import { expect, it } from 'vitest';
import { replyLines } from '../../../src/terminal/plainReply.ts';
import { noonPlus } from '../../helpers/store/storeEvents.ts';
import { openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

it.each([
  ['/added bucket:gg what:water amount:450ml', '450 ml of water'],
  ['/added bucket:gg what:water', 'water, amount not said'],
  ['/added bucket:gg what:dry amount:300g', '300 g of dry batch'],
  ['/added bucket:gg what:draw-off amount:1l', 'drew off 1 l of clear water'],
  ['/added bucket:gg what:taken', 'took out glaze, amount not said'],
  ['/reading bucket:gg gravity:1.44 stirred:yes', 'gravity 1.44 ± 0.01, stirred'],
  ['/reading bucket:gg note:"smells"', 'a note'],
  ['/stirred bucket:gg minutes:3 with:mixer', 'stirred 3 min with a mixer'],
  ['/sieved bucket:gg mesh:80', 'sieved it through 80 mesh'],
])('%s is said to be logged, as it was understood, and not again', async (line, text) => {
  const room = await openRoomWithGullGrey();
  const answer = await room.say(5, line);
  expect(answer.logged).toEqual({ entry: '1-2', text });
  expect(answer.reasons.join('\n')).not.toContain('1-2');
});

it('what was logged for another time says so', async () => {
  const room = await openRoomWithGullGrey();
  const answer = await room.say(600, '/added bucket:gg what:water amount:450ml when:"5h ago"');
  expect(answer.logged?.text).toMatch(/^450 ml of water, for Sun 1 Mar \d\d:\d\d$/);
});

it('what is taken back is told right under the answer', async () => {
  const room = await openRoomWithGullGrey();
  await room.say(5, '/added bucket:gg what:water amount:450ml');
  const answer = await room.say(6, '/undo entry:1-2');
  expect(answer.title).toMatch(/^Took back 1-2\. /);
  expect(answer.logged?.entry).toBe('1-3');
  expect(answer.logged?.text).toMatch(/^took back 1-2 .*450 ml of water/);
});

it('what may be taken back is told apart: what it was, and when', async () => {
  const room = await openRoomWithGullGrey();
  await room.say(5, '/added bucket:gg what:water amount:450ml');
  await room.say(8, '/stirred bucket:gg minutes:3');
  await room.say(
    9,
    '/reading bucket:gg gravity:1.44 seconds:14 look:right seen:lumps,clear-water gap:7cm stirred:yes',
  );
  const who = { studio: room.studio, member: await room.member('Wren'), role: 'member' } as const;
  const request = { key: 'k', ...who, now: noonPlus(10), path: ['undo'], typed: {} };
  const choices = await room.desk.suggest(request, 'entry');
  expect(choices.map(({ name }) => name)).toEqual([
    expect.stringMatching(/^1-4 · gravity 1\.44 ± 0\.01, ford4 14 s, looks right/),
    '1-3 · stirred 3 min, 2 min ago · Gull Grey',
    '1-2 · 450 ml of water, 5 min ago · Gull Grey',
  ]);
  for (const { name } of choices) expect(name.length).toBeLessThanOrEqual(100);
});

it('an entry that was taken back has one name, in the answer and in the log', async () => {
  const room = await openRoomWithGullGrey();
  await room.say(5, '/added bucket:gg what:water amount:450ml');
  await room.say(6, '/undo entry:1-2');
  const log = await room.say(7, '/bucket log bucket:gg');
  expect(log.reasons.join('\n')).toMatch(/1-3 .*took back 1-2/);
});

it('what only asks has logged nothing', async () => {
  const room = await openRoomWithGullGrey();
  expect((await room.say(5, '/water-or-stir bucket:gg')).logged).toBeUndefined();
});

it('a terminal shows it as its second line', async () => {
  const room = await openRoomWithGullGrey();
  const reply = await room.desk.dispatch({
    key: 'one',
    studio: room.studio,
    member: await room.member('Wren'),
    role: 'member',
    now: noonPlus(5),
    path: ['added'],
    typed: { bucket: 'gg', what: 'water', amount: '450ml' },
  });
  const [, second] = replyLines(reply, { now: noonPlus(5), zone: 'UTC' }, 200).split('\n');
  expect(second?.trim()).toBe('Logged 1-2: 450 ml of water.');
});
