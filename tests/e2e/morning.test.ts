import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { at, openReminderRoom, type ReminderRoom } from '../helpers/room/reminderRoom.ts';

let room: ReminderRoom;

/** Thursday evening in St John's, UTC-3:30; half past seven on Friday there. */
const evening = at('2026-03-05T22:30:00Z');
const morning = at('2026-03-06T11:00:00Z');
const minute = 60_000;

beforeEach(async () => {
  room = await openReminderRoom();
  const keeper = (line: string) => room.say(room.keeper.id, evening, line, 'keeper');
  await keeper('/studio set zone:America/St_Johns');
  await keeper('/studio reminders quiet:none');
  await keeper('/bucket add name:"Gull Grey" volume:15l gravity:1.42-1.46');
  await keeper('/bucket hold bucket:1 why:"tested badly"');
});
afterEach(() => {
  expect(room.discord.problems).toEqual([]);
});

const posts = () => room.discord.calls.filter(({ path }) => path.endsWith('/messages'));

describe('the morning’s round on Discord', () => {
  test('comes to each keeper by themselves, with what can be pressed for a row', async () => {
    const second = await room.member('Odile');
    await room.say(room.keeper.id, evening, '/studio keeper member:Tove', 'keeper');
    await room.say(room.keeper.id, evening, '/studio keeper member:Odile', 'keeper');
    await room.say(room.keeper.id, evening, '/studio morning at:07:30', 'keeper');
    expect(await room.tick(morning - 1)).toBe(0);
    expect(await room.tick(morning)).toBe(2);
    for (const { person } of [room.keeper, second]) {
      expect(room.told(person)).toEqual([
        expect.stringMatching(/^1 thing to do\. It is: Gull Grey\.\n\*\*1 · Gull Grey\*\* On hold/),
      ]);
    }
    const body = JSON.stringify(posts().at(-1)?.body);
    expect(body).toContain('1 · Gull Grey: Release it');
    await room.restart();
    expect(await room.tick(morning + minute)).toBe(0);
  });

  test('comes once in the channel, and pings nobody', async () => {
    const channel = room.discord.channel().id;
    await room.say(room.keeper.id, evening, `/studio set channel:<#${channel}>`, 'keeper');
    await room.say(room.keeper.id, evening, '/studio morning at:07:30 way:channel', 'keeper');
    await room.tick(morning);
    expect(room.inChannel(channel)).toEqual([expect.stringMatching(/^1 thing to do\./)]);
    expect(room.told(room.keeper.person)).toEqual([]);
    await room.restart();
    await room.tick(morning + 30 * minute);
    expect(room.inChannel(channel)).toHaveLength(1);
  });

  test('waits while Discord has no room for it, and comes once when it has', async () => {
    await room.say(room.keeper.id, evening, '/studio morning at:07:30', 'keeper');
    room.keeper.person.dmClosed = true;
    await room.tick(morning);
    expect(room.told(room.keeper.person)).toEqual([]);
    room.keeper.person.dmClosed = false;
    await room.tick(morning + 31 * minute);
    expect(room.told(room.keeper.person).filter((one) => one.includes('thing to do'))).toHaveLength(1);
  });
});

describe('where a member is told', () => {
  const titles = async (line: string) => {
    const reply = await room.desk.dispatch({
      key: line,
      studio: room.studio,
      member: room.mara.id,
      role: 'member',
      now: evening,
      path: ['remind', 'me'],
      typed: { bucket: '1', in: '10min' },
    });
    return JSON.stringify(reply.title);
  };

  test('is in a direct message on Discord, or in the channel for whoever wants that', async () => {
    expect(await titles('a')).toContain('in a direct message');
    const channel = room.discord.channel().id;
    await room.say(room.keeper.id, evening, `/studio set channel:<#${channel}>`, 'keeper');
    await room.say(room.mara.id, evening, '/remind by way:channel');
    expect(await titles('b')).toContain('in the studio’s channel');
  });
});
