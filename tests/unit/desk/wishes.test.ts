import { describe, expect, it } from 'vitest';
import { openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

describe('“undo” without an entry', () => {
  it('offers the last that this person logged, and takes it back by a press', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, '/stirred bucket:gg');
    await room.say(1, '/reading bucket:gg gravity:1.50');
    await room.say(2, '/stirred bucket:gg', 'Teal');
    const asked = await room.say(3, 'undo');
    expect(asked.kind).toBe('choice');
    expect(asked.title).toBe('The last that you logged is 1-3, in Gull Grey. Take it back?');
    expect(asked.actions.map(({ line }) => line)).toEqual(['/undo entry:1-3']);
    expect((await room.say(4, '/undo entry:1-3')).title).toMatch(/^Took back 1-3\./);
    expect((await room.say(5, '/undo')).title).toMatch(/^The last that you logged is 1-2,/);
  });

  it('offers a coat, where that came last', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, '/stirred bucket:gg');
    await room.say(1, '/coat on kind:wax pieces:"6 bowls"');
    expect((await room.say(2, 'oops, wrong bucket')).actions.map(({ line }) => line)).toEqual([
      '/undo entry:c-1',
    ]);
  });

  it('offers nothing that is too old for a member, and logs nothing', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, '/stirred bucket:gg');
    const late = await room.say(16, 'undo');
    expect(late.kind).toBe('refusal');
    expect(late.title).toMatch(/^There is nothing of yours to take back/);
    expect(late.actions).toEqual([]);
  });
});

describe('a wish in plain words', () => {
  it('opens the form of a batch', async () => {
    const room = await openRoomWithGullGrey();
    const { actions, reasons } = await room.say(0, 'plan a batch');
    expect(actions.map(({ line }) => line)).toEqual(['/batch plan']);
    expect(reasons.join()).toMatch(/Or type them: \/batch plan recipe:/);
  });

  it('offers to log how it came out of the kiln', async () => {
    const room = await openRoomWithGullGrey();
    const { title, actions } = await room.say(0, 'fired gull grey: crawled');
    expect(title).toBe('Out of the kiln, gull grey: crawled. Log it?');
    const [log] = actions;
    expect((await room.say(1, log?.line ?? '')).title).toMatch(/Gull Grey, crawled/);
  });

  it('never stands before a cry for help', async () => {
    const room = await openRoomWithGullGrey();
    const { data } = await room.say(0, 'fired the kiln: it is on fire, help');
    expect(data['emergency']).toBe(true);
  });

  it('reminds of a bucket', async () => {
    const room = await openRoomWithGullGrey();
    const { data } = await room.say(0, 'remind me in 20 minutes to look at gull grey');
    expect(data).toMatchObject({ bucket: 1, at: '2026-03-01T12:20:00.000Z' });
  });

  it('logs how full it is, by a press', async () => {
    const room = await openRoomWithGullGrey();
    const { title, actions } = await room.say(0, 'gull grey is two thirds full');
    expect(title).toBe('Gull Grey: two thirds full. Log it?');
    // Two thirds of 19 l
    expect((await room.say(0, actions[0]?.line ?? '')).logged?.text).toBe('about 12.7 l in the pail');
  });
});

it('does not say that keepers see what is no question, because it is not kept for them', async () => {
  const room = await openRoomWithGullGrey();
  const { title, reasons } = await room.say(0, 'zibble quux');
  expect(title).toBe('I found nothing to log in that, and no note on it.');
  expect(reasons.join(' ')).not.toMatch(/keepers will see/);
  expect((await room.say(1, 'what is zibble quux?')).reasons.join(' ')).toMatch(/keepers will see/);
  expect((await room.keeper(2, '/note questions')).title).toMatch(/^1 question/);
});
