import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { rateLimited, serverError } from '../helpers/discord/discordDouble.ts';
import { press } from '../helpers/discord/discordInteraction.ts';
import { at, openReminderRoom, recordingVoice, type ReminderRoom } from '../helpers/room/reminderRoom.ts';

let room: ReminderRoom;

/** Sunday evening in St John's, UTC-3:30; its Tuesday session is on 3 March 2026, 18:00 there. */
const evening = at('2026-03-01T22:30:00Z');
const morning = at('2026-03-02T11:30:00Z');
const minute = 60_000;
const hour = 60 * minute;

beforeEach(async () => {
  room = await openReminderRoom();
  await room.say(room.keeper.id, evening - hour, '/studio set zone:America/St_Johns', 'keeper');
});
afterEach(() => {
  expect(room.discord.problems).toEqual([]);
});

const wax = (plan = '') => room.say(room.mara.id, evening, `/coat on kind:wax pieces:"3 bowls"${plan}`);
const isPost = ({ path }: { path: string }) => path.endsWith('/messages');

describe('a coat that is ready', () => {
  test('is told once, to its member, when it is', async () => {
    await wax();
    expect(await room.tick(morning - 1)).toBe(0);
    expect(await room.tick(morning)).toBe(1);
    expect(room.told(room.mara.person)).toEqual([
      expect.stringMatching(/^The wax emulsion on 3 bowls is dry: it can be glazed\./),
    ]);
    for (const later of [1, hour, 25 * hour]) expect(await room.tick(morning + later)).toBe(0);
  });

  test('is told in the channel to whoever wants that, pinging them alone', async () => {
    const channel = room.discord.channel().id;
    await room.say(room.keeper.id, evening, `/studio set channel:<#${channel}>`, 'keeper');
    await room.say(room.mara.id, evening, '/remind by way:channel');
    await wax();
    await room.tick(morning);
    expect(room.inChannel(channel)).toEqual([
      expect.stringMatching(new RegExp(`^<@${room.mara.person.id}> The wax emulsion`)),
    ]);
    expect(room.told(room.mara.person)).toEqual([]);
  });

  test('is not told when it is off before, or was a slip', async () => {
    await wax();
    await room.say(room.mara.id, evening + hour, '/coat off coat:c-1');
    await room.say(room.mara.id, evening + hour, '/coat on kind:latex pieces:jug');
    await room.say(room.mara.id, evening + hour + minute, '/undo entry:c-3');
    expect(await room.tick(morning + 12 * hour)).toBe(0);
  });

  test('is told when taking it off was the slip', async () => {
    await wax();
    await room.say(room.mara.id, evening + minute, '/coat off coat:c-1');
    await room.say(room.mara.id, evening + 2 * minute, '/undo entry:c-2');
    expect(await room.tick(morning)).toBe(1);
  });

  test('with a second layer is told once, for the second', async () => {
    await wax();
    await room.say(room.mara.id, evening + 2 * hour, '/coat on kind:wax pieces:"3 bowls"');
    // It went on at 21:00, and twelve hours later it is 9:00.
    expect(await room.tick(morning + hour - 1)).toBe(0);
    expect(await room.tick(morning + hour)).toBe(1);
  });

  test('is told by the hours that a keeper sets in the meantime', async () => {
    await wax();
    await room.say(room.keeper.id, evening + hour, '/studio hours daily:12:00-20:00', 'keeper');
    expect(await room.tick(morning)).toBe(0);
    expect(await room.tick(at('2026-03-02T15:30:00Z'))).toBe(1);
  });
});

describe('a plan that is too early', () => {
  test('is warned of before, by the studio’s lead time', async () => {
    await room.say(room.keeper.id, evening, '/studio reminders lead:45min', 'keeper');
    await wax(' for:"tonight 9pm"');
    const nine = at('2026-03-02T00:30:00Z');
    expect(await room.tick(nine - 46 * minute)).toBe(0);
    expect(await room.tick(nine - 45 * minute)).toBe(1);
    expect(room.told(room.mara.person)[0]).toMatch(/^Don’t glaze 3 bowls .* is not dry before/);
  });

  test('is a session that starts before the coat is dry', async () => {
    const monday = at('2026-03-02T22:30:00Z');
    await room.say(room.keeper.id, evening, '/studio session day:tuesday hours:07:00-09:00', 'keeper');
    await room.say(room.mara.id, monday, '/coat on kind:wax pieces:jug temperature:12C humidity:85');
    // Half an hour before 7:00 is night: the warning comes just before 22:00 the evening before.
    await room.tick(at('2026-03-03T01:25:00Z'));
    expect(room.told(room.mara.person)).toEqual([expect.stringMatching(/^Don’t glaze jug at tuesday/)]);
  });

  test('is not warned of when the coat is dry by then', async () => {
    await wax(' for:"tomorrow 7pm"');
    await room.tick(morning);
    expect(room.told(room.mara.person).filter((one) => one.startsWith('Don’t'))).toEqual([]);
  });
});

describe('latex', () => {
  test('is to be peeled before the firing that is planned, and not when it is off', async () => {
    await room.say(room.mara.id, evening, '/coat on kind:latex pieces:jug');
    await room.say(room.mara.id, evening, '/coat on kind:latex pieces:vase');
    await room.say(room.mara.id, evening + hour, '/coat off coat:c-2');
    await room.say(room.keeper.id, evening + hour, '/studio firing when:"wednesday 8am"', 'keeper');
    await room.tick(morning);
    const before = room.told(room.mara.person).length;
    await room.tick(at('2026-03-03T23:30:00Z'));
    expect(room.told(room.mara.person).slice(before)).toEqual([
      expect.stringMatching(/^Peel the latex off jug before the firing/),
    ]);
  });

  test('that missed a firing is to be peeled before the next as well', async () => {
    await room.say(room.mara.id, evening, '/coat on kind:latex pieces:jug');
    const peeled = () => room.told(room.mara.person).filter((one) => one.startsWith('Peel')).length;
    for (const week of [0, 1]) {
      const later = week * 7 * 24 * hour;
      await room.say(room.keeper.id, evening + later + hour, '/studio firing when:"wednesday 8am"', 'keeper');
      await room.tick(at('2026-03-03T23:30:00Z') + later);
      expect(peeled()).toBe(week + 1);
    }
  });

  test('put on shortly before a firing is planned for the same day is to be peeled too', async () => {
    await room.say(room.mara.id, morning, '/coat on kind:latex pieces:jug');
    await room.say(room.keeper.id, morning + hour / 2, '/studio firing when:"today 4pm"', 'keeper');
    await room.tick(morning + hour);
    expect(room.told(room.mara.person)).toEqual([expect.stringMatching(/^Peel the latex off jug/)]);
  });

  test('needs no peeling reminder when the firing is called off', async () => {
    await room.say(room.mara.id, evening, '/coat on kind:latex pieces:jug');
    await room.say(room.keeper.id, evening + hour, '/studio firing when:"wednesday 8am"', 'keeper');
    await room.say(room.keeper.id, evening + hour, '/studio firing off:yes', 'keeper');
    await room.tick(morning);
    expect(await room.tick(at('2026-03-03T23:30:00Z'))).toBe(0);
  });
});

describe('buckets before a session', () => {
  const tuesday = at('2026-03-03T21:30:00Z');
  const half = 30 * minute;

  beforeEach(async () => {
    await room.say(room.keeper.id, evening, '/bucket add name:"Gull Grey" gravity:1.42-1.46', 'keeper');
    await room.say(room.keeper.id, evening, '/studio session day:tuesday hours:18:00-21:00', 'keeper');
  });

  test('that want a stir or a reading are the keeper’s, every week once', async () => {
    await room.tick(tuesday - half);
    // A week later clocks have changed: 18:00 on the wall is 20:30 UTC.
    await room.tick(at('2026-03-10T20:00:00Z'));
    expect(room.told(room.keeper.person)).toEqual(
      Array.from({ length: 2 }, () => expect.stringMatching(/^Before tuesday at .* 1 bucket wants you/)),
    );
    expect(room.told(room.mara.person)).toEqual([]);
  });

  /** Half an hour before 18:00 on the wall, so many weeks on; the clocks change on 8 March. */
  const weeksOn = (n: number) => tuesday - half + n * 7 * 24 * hour - (n > 0 ? hour : 0);

  test('are told of week after week when the next that is listed is dealt with beforehand', async () => {
    await room.tick(weeksOn(0));
    const { reminders } = JSON.parse(await room.say(room.keeper.id, weeksOn(0) + hour, '/remind list')) as {
      reminders: { reminder: string }[];
    };
    expect(reminders.length).toBeGreaterThan(0);
    await room.say(
      room.keeper.id,
      weeksOn(0) + hour,
      `/remind done reminder:"${reminders[0]?.reminder ?? ''}"`,
    );
    for (let day = 1; day <= 8 * 7; day += 1) await room.tick(weeksOn(0) + day * 24 * hour);
    // The first, and of eight weeks all but the next.
    expect(room.told(room.keeper.person)).toHaveLength(8);
  });

  test('are told of again after the studio was closed for 64 days', async () => {
    // From Monday 2 March to Monday 4 May 2026: the next Tuesday is the day after.
    await room.say(room.keeper.id, evening, '/studio hours closed:"2026-03-02 to 2026-05-04"', 'keeper');
    for (let day = 0; day < 63; day += 1) expect(await room.tick(morning + day * 24 * hour)).toBe(0);
    for (const week of [9, 10, 11]) await room.tick(weeksOn(week));
    expect(room.told(room.keeper.person)).toHaveLength(3);
  });

  test('put off until the session is on are told of then, whatever is planned meanwhile', async () => {
    await room.tick(weeksOn(0));
    await room.say(room.keeper.id, weeksOn(0) + minute, '/remind later reminder:buckets-2026-03-03-tuesday');
    await room.tick(weeksOn(0) + 40 * minute);
    await room.restart();
    expect(room.told(room.keeper.person)).toHaveLength(1);
    await room.tick(weeksOn(0) + 61 * minute);
    expect(room.told(room.keeper.person)).toHaveLength(2);
  });

  test('that are stirred and measured are nobody’s', async () => {
    const line = '/reading bucket:"Gull Grey" gravity:1.44 look:right stirred:yes';
    await room.say(room.mara.id, tuesday - half - minute, line);
    expect(await room.tick(tuesday - half)).toBe(1);
    expect(room.told(room.keeper.person)).toEqual([]);
    expect(room.logged.map(({ message }) => message)).toContain('a reminder was not needed any more');
  });
});

describe('the buttons of a reminder', () => {
  const pressed = async (label: string, now: number) => {
    room.set(now);
    const channel = [...room.discord.world.channels.values()].find(
      ({ recipient }) => recipient === room.mara.person.id,
    );
    const [message] = channel ? room.discord.messagesIn(channel.id) : [];
    if (!channel || !message) throw new Error('nothing was told');
    const interaction = await room.discord.use(
      press(
        { by: room.mara.person, channel: { id: channel.id, kind: 'dm' } },
        room.discord.message(message.id),
        label,
      ),
    );
    await room.discord.until(
      () => interaction.followUps.length > 0 || interaction.original !== undefined,
      label,
    );
  };

  beforeEach(async () => {
    await wax();
    await room.tick(morning);
  });

  test('put it off for an hour', async () => {
    await pressed('Remind me in 1 h', morning + minute);
    expect(await room.tick(morning + minute + hour - 1)).toBe(0);
    expect(await room.tick(morning + minute + hour)).toBe(1);
    const [, again] = room.told(room.mara.person).filter((one) => one.startsWith('The wax'));
    expect(again).not.toMatch(/late/);
  });

  test('say that it is glazed, and so the coat is off', async () => {
    await pressed('I glazed it', morning + minute);
    expect(await room.say(room.mara.id, morning + hour, '/coat list')).toBe('{"coats":[]}');
  });

  test('say that it is somebody else’s: no more of that coat, but a keeper sees it', async () => {
    await pressed('Not mine', morning + minute);
    expect(await room.say(room.mara.id, morning + hour, '/coat list')).toBe('{"coats":[]}');
    expect(await room.say(room.keeper.id, morning + hour, '/coat list', 'keeper')).toMatch(/"c-1"/);
  });
});

describe('a reminder that fell due while the program was down', () => {
  test('is told at the start, once, and says that it is late', async () => {
    await wax();
    room.set(morning + 3 * hour);
    await room.restart();
    await room.discord.until(() => room.told(room.mara.person).length > 0, 'what was due');
    expect(room.told(room.mara.person)).toEqual([expect.stringMatching(/This comes late/)]);
    await room.restart();
    expect(await room.tick(morning + 4 * hour)).toBe(0);
  });

  test('waits for the end of the quiet hours', async () => {
    await wax();
    await room.tick(at('2026-03-03T02:00:00Z'));
    expect(room.told(room.mara.person)).toEqual([]);
    await room.tick(at('2026-03-03T11:30:00Z'));
    expect(room.told(room.mara.person)).toHaveLength(1);
  });

  test('that is of no use any more is dropped, with a line in the log', async () => {
    await wax(' for:"tonight 9pm"');
    await room.tick(morning + 4 * 24 * hour);
    expect(room.told(room.mara.person)).toEqual([]);
    const dropped = room.logged.filter(({ message }) => message.includes('out of date'));
    expect(dropped.map(({ about }) => about)).toMatchObject([{ key: 'c-1-early' }, { key: 'c-1-ready' }]);
  });

  test('is not told before its time when the clock is set back', async () => {
    await wax();
    await room.tick(morning - 2 * hour);
    expect(await room.tick(morning - 5 * hour)).toBe(0);
    await room.tick(morning);
    expect(room.told(room.mara.person)).toHaveLength(1);
  });
});

describe('trouble on the way', () => {
  test('a rate limit is waited for, and the reminder told once', async () => {
    await wax();
    room.discord.plant(rateLimited(0.2), isPost);
    await room.tick(morning);
    expect(room.told(room.mara.person)).toHaveLength(1);
  });

  test('server errors that last are tried again later, and told once', async () => {
    await wax();
    room.discord.plant(serverError, isPost, 4);
    await room.tick(morning);
    expect(room.told(room.mara.person)).toEqual([]);
    await room.tick(morning + minute);
    await room.tick(morning + 2 * minute);
    expect(room.told(room.mara.person)).toHaveLength(1);
  });

  test('a connection that breaks after the platform has the message does not double it', async () => {
    await wax();
    room.discord.plant({ cut: 'after', how: 'closed' }, isPost);
    await room.tick(morning);
    await room.tick(morning + minute);
    expect(room.told(room.mara.person)).toHaveLength(1);
  });

  test('a repeat that the platform takes for another message says so', async () => {
    await wax();
    room.discord.plant({ cut: 'after', how: 'closed' }, isPost);
    await room.tick(morning);
    room.discord.pass(20 * minute);
    await room.tick(morning + 20 * minute);
    expect(room.told(room.mara.person)[1]).toMatch(/You may have had this already/);
  });

  test('closed messages turn to the channel', async () => {
    const shy = await room.member('Teo', { dmClosed: true });
    const channel = room.discord.channel().id;
    await room.say(room.keeper.id, evening, `/studio set channel:<#${channel}>`, 'keeper');
    await room.say(shy.id, evening, '/coat on kind:wax pieces:mug');
    await room.tick(morning);
    expect(room.inChannel(channel)).toHaveLength(1);
  });

  for (const lost of [{ deleted: true }, { forbidden: true }])
    test(`a channel that is ${Object.keys(lost).join()} is told to the keeper once; the reminder waits for another`, async () => {
      const shy = await room.member('Teo', { dmClosed: true });
      await room.say(
        room.keeper.id,
        evening,
        `/studio set channel:<#${room.discord.channel(lost).id}>`,
        'keeper',
      );
      await room.say(shy.id, evening, '/coat on kind:wax pieces:mug');
      for (const passed of [0, 1, 40, 80]) await room.tick(morning + passed * minute);
      expect(room.told(room.keeper.person)).toEqual([
        expect.stringMatching(/^I can’t write in the reminder channel/),
      ]);
      const channel = room.discord.channel().id;
      await room.say(room.keeper.id, morning + 2 * hour, `/studio set channel:<#${channel}>`, 'keeper');
      await room.tick(morning + 2 * hour);
      expect(room.inChannel(channel)).toEqual([expect.stringMatching(/mug is dry/)]);
    });

  test('a member of another platform is told there', async () => {
    const voice = recordingVoice();
    room = await openReminderRoom([voice]);
    const wren = await room.store.people.memberOf(room.studio, 'room', 'wren', 'Wren');
    await room.say(wren, evening, '/studio reminders quiet:none', 'keeper');
    await room.say(wren, evening, '/coat on kind:wax pieces:mug');
    await room.tick(at('2026-03-02T10:30:00Z'));
    expect(voice.said.map(({ to }) => to)).toEqual([wren]);
  });

  test('a reminder that nobody here can say is kept', async () => {
    const wren = await room.store.people.memberOf(room.studio, 'room', 'wren', 'Wren');
    await room.say(wren, evening, '/coat on kind:wax pieces:mug');
    await room.tick(morning);
    expect(await room.say(wren, morning + hour, '/remind list')).toMatch(/c-1-ready/);
  });
});
