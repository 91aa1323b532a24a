import { describe, expect, it, onTestFinished } from 'vitest';
import type { Reply } from '../../../src/contract/contract.ts';
import type { Voice } from '../../../src/contract/desk.ts';
import { startReminders } from '../../../src/reminders/startReminders.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { instant, type MemberId } from '../../../src/studio/ids.ts';
import { replyJson } from '../../../src/terminal/plainReply.ts';
import { en } from '../../../src/words/en.ts';
import { handbook } from '../../helpers/handbook.ts';
import { openReminderStudio } from '../../helpers/room/reminderStudio.ts';
import { settableClock, newLogbook } from '../../helpers/store/storeFile.ts';

const minute = 60_000;
const hour = 60 * minute;
const day = 24 * hour;

/** Thursday, 5 March 2026, noon in St John's: UTC-3:30 until Sunday the 8th at 02:00, then UTC-2:30 (RFC 6557 zone data). */
const thursday = Date.UTC(2026, 2, 5, 15, 30);
/** 07:30 there on that day, less whole days. */
const halfPastSeven = Date.UTC(2026, 2, 5, 11);

/** A studio with a bucket on hold, so that something waits every morning. */
const openMornings = async (...setUp: string[]) => {
  const clock = settableClock();
  const store = await openStore(await newLogbook(), { clock });
  const room = await openReminderStudio(store, '1');
  const said: { to: MemberId; reply: Reply; whom: string | undefined; at: number }[] = [];
  const voice: Voice = {
    speak: async (_studio, to, reply, _nonce, whom) => {
      said.push({ to, reply, whom, at: clock.now() });
      return 'said';
    },
  };
  const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const open = () =>
    startReminders(
      { queue: store.reminders, books: store.books, words: en, handbook, clock, log: quiet, voices: [voice] },
      { every: 1e8 },
    );
  let reminders = await open();
  onTestFinished(async () => {
    await reminders.stop();
    await store.close();
  });
  const member = (name: string) => store.people.memberOf(room.studio, 'terminal', name, name);
  const tove = await member('Tove');
  const keeper = (line: string, at = thursday) => room.say(tove, at, line, 'keeper');
  for (const line of [
    '/studio set zone:America/St_Johns',
    '/studio reminders quiet:none',
    '/studio hours daily:09:00-22:00',
    '/bucket add name:"Gull Grey" volume:15l gravity:1.42-1.46',
    '/bucket hold bucket:1 why:"tested badly"',
    ...setUp,
  ])
    await keeper(line);
  /** Lets time pass, looking every half hour as the program does every few seconds. */
  const pass = async (from: number, until: number, step = hour / 2) => {
    for (let at = from; at <= until; at += step) {
      clock.set(at);
      await reminders.tick();
    }
  };
  const restart = async () => {
    await reminders.stop();
    reminders = await open();
  };
  const times = () => said.map(({ at }) => new Date(at).toISOString().slice(0, 16));
  return {
    ...room,
    store,
    said,
    times,
    tove,
    member,
    keeper,
    pass,
    restart,
    clock,
    tick: () => reminders.tick(),
  };
};

describe('the morning’s round', () => {
  it('is told by nobody until a keeper wants it, and then by the hour that they set', async () => {
    const { pass, said, times, keeper } = await openMornings();
    await pass(thursday, thursday + day);
    expect(said).toEqual([]);
    await keeper('/studio morning at:07:30', thursday + day);
    await pass(thursday + day, thursday + 2 * day);
    expect(times()).toEqual(['2026-03-07T11:00']);
  });

  it('is told once to each of several keepers, with what waits and a strip for each bucket', async () => {
    const { pass, said, tove, member, keeper, say } = await openMornings('/studio morning at:07:30');
    await keeper('/studio keeper member:Tove');
    const wren = await member('Wren');
    await keeper('/studio keeper member:Wren');
    await keeper('/bucket release bucket:1');
    await say(wren, thursday, '/reading bucket:1 gravity:1.52 within:0.01 stirred:yes');
    await keeper('/bucket add name:"Kelp Rope"');
    await pass(thursday, thursday + day);
    expect(said.map(({ to }) => to).toSorted()).toEqual([tove, wren].toSorted());
    const [first] = said;
    if (!first) throw new Error('nobody was told');
    const shown = JSON.parse(
      JSON.stringify(replyJson(first.reply, { now: instant(thursday), zone: 'America/St_Johns' })),
    );
    expect(shown).toMatchObject({
      private: true,
      title: expect.stringMatching(/^2 things to do\./),
    });
    expect(first.reply.chart?.series).toMatchObject([
      { label: '1 · Gull Grey', band: { low: 1.42, high: 1.46 }, points: [{ value: 1.52, believed: true }] },
    ]);
    expect(shown.actions.map(({ line }: { line: string }) => line)).toContain(
      '/remind done reminder:morning-2026-03-06',
    );
  });

  it('comes at the same hour of the clock on the day that the clocks change, once', async () => {
    const { pass, times } = await openMornings('/studio morning at:07:30');
    await pass(thursday, thursday + 5 * day);
    expect(times()).toEqual([
      '2026-03-06T11:00',
      '2026-03-07T11:00',
      // The clocks went forward in the night.
      '2026-03-08T10:00',
      '2026-03-09T10:00',
      '2026-03-10T10:00',
    ]);
  });

  it('comes once where the clocks show its hour twice, and where they skip it', async () => {
    const autumn = Date.UTC(2026, 9, 31, 15, 30);
    const { pass, times, keeper, said } = await openMornings('/studio hours daily:00:00-24:00');
    await keeper('/studio morning at:01:30', autumn);
    await pass(autumn, autumn + day);
    // 1 November 2026: 01:30 is shown at 04:00 UTC by summer time and at 05:00 by winter time.
    expect(times()).toEqual(['2026-11-01T04:00']);
    said.length = 0;
    const spring = Date.UTC(2027, 2, 13, 15, 30);
    await keeper('/studio morning at:02:30', spring);
    await pass(spring, spring + day);
    // 14 March 2027: 02:00 to 03:00 is skipped, and it comes at 03:30, which is 06:00 UTC.
    expect(times()).toEqual(['2027-03-14T06:00']);
  });

  it('is left out on a weekday and on a day off when the studio is closed, and comes on the next day', async () => {
    const { pass, times, keeper } = await openMornings(
      '/studio morning at:07:30',
      '/studio hours saturday:closed',
    );
    await keeper('/studio hours closed:2026-03-08', thursday + day);
    await pass(thursday, thursday + 4 * day);
    expect(times()).toEqual(['2026-03-06T11:00', '2026-03-09T10:00']);
  });

  it('comes on a day off that is cancelled in time', async () => {
    const { pass, times, keeper } = await openMornings(
      '/studio morning at:07:30',
      '/studio hours closed:2026-03-06',
    );
    await keeper('/studio hours open:2026-03-06', thursday + hour);
    await pass(thursday, thursday + day);
    expect(times()).toEqual(['2026-03-06T11:00']);
  });

  it('comes at a changed hour from then on, and not twice on the day of the change', async () => {
    const { pass, times, keeper } = await openMornings('/studio morning at:07:30');
    await pass(thursday, halfPastSeven + day);
    await keeper('/studio morning at:10:00', halfPastSeven + day + minute);
    await pass(halfPastSeven + day + hour / 2, halfPastSeven + 2 * day + 4 * hour);
    expect(times()).toEqual(['2026-03-06T11:00', '2026-03-07T13:30']);
    await keeper('/studio morning at:off', halfPastSeven + 2 * day + 4 * hour);
    await pass(halfPastSeven + 2 * day + 4 * hour, halfPastSeven + 4 * day);
    expect(times()).toHaveLength(2);
  });

  it('moves with the zone, and is not told again for a day that was told', async () => {
    const { pass, times, keeper } = await openMornings('/studio morning at:07:30');
    await pass(thursday, halfPastSeven + day);
    await keeper('/studio set zone:America/Vancouver', halfPastSeven + day + minute);
    await pass(halfPastSeven + day + hour / 2, halfPastSeven + 2 * day + 6 * hour);
    // Vancouver is at UTC-8 on the 7th.
    expect(times()).toEqual(['2026-03-06T11:00', '2026-03-07T15:30']);
  });

  it('waits for the end of the quiet hours', async () => {
    const { pass, times, keeper } = await openMornings();
    await keeper('/studio reminders quiet:22:00-08:00');
    await keeper('/studio morning at:07:30');
    await pass(thursday, thursday + day);
    expect(times()).toEqual(['2026-03-06T11:30']);
    await expect(keeper('/studio morning at:23:00')).rejects.toThrow('quiet hours have begun');
  });

  it('is told late, and says so, when the program was off; and not once the day is over', async () => {
    const { said, times, restart, clock, tick } = await openMornings('/studio morning at:07:30');
    clock.set(halfPastSeven + day + 2 * hour);
    await restart();
    await tick();
    expect(times()).toEqual(['2026-03-06T13:00']);
    expect(JSON.stringify(said[0]?.reply.reasons)).toContain('This comes late');
    clock.set(halfPastSeven + 4 * day - 2 * hour);
    await restart();
    await tick();
    expect(times()).toHaveLength(1);
  });

  it('is told once, however often the program starts anew, for weeks', async () => {
    const { pass, said, restart } = await openMornings('/studio morning at:07:30');
    for (let n = 0; n < 21; n += 1) {
      await pass(thursday + n * day, thursday + (n + 1) * day - hour, 6 * hour);
      await restart();
      await restart();
    }
    await pass(thursday + 21 * day, thursday + 21 * day);
    // It waits for what is being said.
    await restart();
    expect(said).toHaveLength(21);
    expect(new Set(said.map(({ reply }) => JSON.stringify(reply.data['items']))).size).toBe(1);
  });

  it('is not told when nothing waits', async () => {
    const { pass, said, keeper } = await openMornings('/studio morning at:07:30');
    await keeper('/bucket retire bucket:1');
    await pass(thursday, thursday + day);
    expect(said).toEqual([]);
  });

  it('is told in the channel once for all, without what is a member’s own', async () => {
    const { pass, said, say, member, keeper, times } = await openMornings(
      '/studio morning at:07:30 way:channel',
    );
    const wren = await member('Wren');
    await keeper('/studio keeper member:Tove');
    await keeper('/studio keeper member:Wren');
    await say(wren, thursday - 2 * day, '/coat on kind:tape pieces:"3 bowls"');
    await say(wren, thursday, '/note wanted question:"banana bread with walnuts"');
    await say(wren, thursday, '/ask question:"which fish likes opera"');
    await pass(thursday, thursday + day);
    expect(times()).toEqual(['2026-03-06T11:00']);
    const [told] = said;
    expect(told?.whom).toBe('everyone');
    expect(told?.reply.private).toBe(false);
    const text = JSON.stringify(told?.reply);
    expect(text).toContain('which fish likes opera');
    expect(text).not.toMatch(/Wren|3 bowls|banana/);
  });
});
