import { describe, expect, it } from 'vitest';
import { openGlazeRoom, openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

const sevenPm = 7 * 60;

describe('the answer to a coat', () => {
  it('says when and where its member will be told that it is dry', async () => {
    const room = await openGlazeRoom();
    const { facts } = await room.say(sevenPm, '/coat on kind:wax pieces:bowl');
    // Wax of 19:00 is dry at 08:00 by the house rule, which is when the quiet hours end.
    expect(facts).toContainEqual({ label: 'Reminder', text: 'I’ll tell you here, Mon 2 Mar 08:00.' });
  });

  it('says the time alone when that is within hours, and nothing of tape, which is dry at once', async () => {
    const room = await openGlazeRoom();
    const wax = await room.say(sevenPm, '/coat on kind:hot-wax pieces:foot');
    expect(wax.facts).toContainEqual({ label: 'Reminder', text: 'I’ll tell you here at 19:15.' });
    const tape = await room.say(sevenPm, '/coat on kind:tape pieces:rim');
    expect(JSON.stringify(tape.facts)).not.toContain('Reminder');
  });

  it('says the end of the quiet hours when it is dry within them', async () => {
    const room = await openGlazeRoom();
    // 21:50 and a quarter of an hour is 22:05, which is quiet.
    const wax = await room.say(9 * 60 + 50, '/coat on kind:hot-wax pieces:foot');
    expect(wax.facts).toContainEqual({ label: 'Reminder', text: 'I’ll tell you here at 08:00.' });
  });
});

describe('the answer to a dose', () => {
  const dosed = async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.01 seconds:9 stirred:yes');
    const answer = await room.say(2, '/added bucket:gg what:flocculant amount:4ml');
    return { room, answer };
  };

  it('offers to tell its member in ten minutes, and then says where and when', async () => {
    const { room, answer } = await dosed();
    const press = answer.actions.find(({ label }) => label === 'Tell me in 10 minutes');
    expect(press?.line).toBe('/remind me bucket:1 in:10min');
    const told = await room.say(4, press?.line ?? '');
    expect(told).toMatchObject({
      private: true,
      title: 'Gull Grey: I’ll tell you here at 12:14.',
      data: { reminder: 'asked-1', at: '2026-03-01T12:14:00.000Z' },
    });
  });

  it('no longer offers it when the dose has worked', async () => {
    const { room } = await dosed();
    await room.say(3, '/stirred bucket:gg');
    const later = await room.say(20, '/water-or-stir bucket:gg');
    expect(later.actions.map(({ label }) => label)).not.toContain('Tell me in 10 minutes');
  });

  it('refuses less than a minute and more than two days, in words', async () => {
    const { room } = await dosed();
    expect((await room.say(3, '/remind me bucket:gg in:20s')).kind).toBe('refusal');
    expect((await room.say(3, '/remind me bucket:gg in:3days')).kind).toBe('refusal');
  });
});
