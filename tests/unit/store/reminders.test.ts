import Sqlite from 'better-sqlite3';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Store } from '../../../src/store/openStore.ts';
import { hours, instant, later, minutes, type MemberId, type StudioId } from '../../../src/studio/ids.ts';
import type { ClaimedReminder } from '../../../src/studio/logbook/ports.ts';
import type { StudioEvent } from '../../../src/studio/settings/studio.ts';
import { endLeases, onPostgres } from '../../helpers/postgres/databases.ts';
import { openTestStore } from '../../helpers/store/storeFile.ts';

/** 19:00 UTC on 1 March 2026; a coat of wax is ready at eight next morning. */
const evening = instant(Date.UTC(2026, 2, 1, 19));
const morning = instant(Date.UTC(2026, 2, 2, 8));
const lease = minutes(2);

let store: Store & { file: string };
let studio: StudioId;
let wren: MemberId;
let requests = 0;

beforeEach(async () => {
  store = await openTestStore();
  studio = await store.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
  wren = await store.people.memberOf(studio, 'terminal', 'Wren', 'Wren');
});

const logged = (at = evening) => ({ at, loggedAt: at, by: wren });
const coat = (keep = true) =>
  store.books.writeOnce(studio, `coat ${++requests}`, async (book) => {
    await book.logCoat({ kind: 'on', resist: 'wax', pieces: 'bowl' }, logged());
    return { keep, value: null };
  });
const set = (event: StudioEvent, at = evening) =>
  store.books.writeOnce(studio, `set ${++requests}`, async (book) => {
    await book.logStudio(event, logged(at));
    return { keep: true, value: null };
  });
const claim = (at: number, most = 10) => store.reminders.claim(instant(at), later(instant(at), lease), most);
const only = ([one, ...others]: ClaimedReminder[]): ClaimedReminder => {
  expect(others).toEqual([]);
  if (!one) throw new Error('nothing was due');
  return one;
};
const queued = () =>
  store.books.read(studio, async (book) => (await book.reminders(wren)).filter(({ told }) => !told));

describe('a reminder', () => {
  test('is stored together with its coat, or not at all', async () => {
    await coat(false);
    expect(await queued()).toEqual([]);
    await coat();
    expect(await queued()).toMatchObject([{ key: 'c-1-ready', dueAt: morning }]);
  });

  test('that is claimed is nobody else’s before the lease ends', async () => {
    await coat();
    const first = only(await claim(morning));
    expect(await claim(morning + lease - 1)).toEqual([]);
    await endLeases(store.file);
    const again = only(await claim(morning + lease));
    expect(again).toMatchObject({ nonce: first.nonce, tries: 2, unsureSince: morning });
  });

  test('is claimed by one of many that ask at the same time', async () => {
    await coat();
    const claims = await Promise.all(Array.from({ length: 20 }, () => claim(morning)));
    expect(claims.flat()).toHaveLength(1);
  });

  test('has a nonce of its own that platforms can take', async () => {
    await coat();
    await coat();
    const [one, other] = await claim(morning);
    expect(one?.nonce).toMatch(/^[\w-]{22}$/);
    expect(one?.nonce).not.toBe(other?.nonce);
  });

  test('that a dead process had claimed is due at once, or when its lease ends', async () => {
    await coat();
    await claim(morning);
    await store.reminders.reclaim(later(morning, minutes(1)));
    // Where other processes may be alive, what they have claimed stays theirs until the lease ends.
    if (onPostgres) expect(await claim(morning + lease)).toEqual([]);
    await endLeases(store.file);
    expect(only(await claim(morning + minutes(1)))).toMatchObject({ unsureSince: morning });
  });

  test('that was told is not told again, whatever hours are set afterwards', async () => {
    await coat();
    await store.reminders.settle(only(await claim(morning)), { told: true });
    await set({ kind: 'zone', zone: 'America/St_Johns' }, later(morning, hours(1)));
    await set({ kind: 'hours', week: { monday: { opens: 720, closes: 1320 } } }, later(morning, hours(1)));
    await store.reminders.reclaim(later(morning, hours(2)));
    expect(await claim(morning + hours(48))).toEqual([]);
  });

  test('that was certainly not sent is not uncertain at the next try', async () => {
    await coat();
    const again = later(morning, minutes(10));
    await store.reminders.settle(only(await claim(morning)), { again, unsure: false });
    expect(only(await claim(again))).not.toHaveProperty('unsureSince');
  });

  test('whose tries failed before a start is tried anew after it, as if for the first time', async () => {
    await coat();
    const again = later(morning, minutes(15));
    const first = only(await claim(morning));
    await store.reminders.settle(first, { again, unsure: false });
    const second = only(await claim(again));
    expect(second.tries).toBe(2);
    await store.reminders.settle(second, { again: later(again, minutes(15)), unsure: false });
    await store.reminders.reclaim(later(again, minutes(1)));
    expect(only(await claim(again + minutes(1))).tries).toBe(1);
  });

  test('that was put off while it was being said comes again all the same', async () => {
    await coat();
    const claimed = only(await claim(morning));
    await store.books.writeOnce(studio, 'later', async (book) => ({
      keep: await book.putOff(wren, claimed.key, later(morning, hours(1))),
      value: null,
    }));
    await store.reminders.settle(claimed, { told: true });
    const again = only(await claim(morning + hours(1)));
    expect(again.nonce).not.toBe(claimed.nonce);
    expect(again.dueAt).toBe(morning + hours(1));
  });

  test('of no coat is left when the coat is taken back', async () => {
    await coat();
    await store.books.writeOnce(studio, 'undo', async (book) => {
      const [one] = await book.coats();
      if (one) await book.logCoat({ kind: 'undo', of: one.seq }, logged());
      return { keep: true, value: null };
    });
    expect(await queued()).toEqual([]);
  });

  test.skipIf(onPostgres)('is found by its index, however many wait', async () => {
    await coat();
    const sqlite = new Sqlite(store.file, { readonly: true });
    const plan = sqlite
      .prepare(
        `explain query plan select id from reminders where status = 'pending' and next_at <= ? limit 1`,
      )
      .all(0);
    sqlite.close();
    expect(JSON.stringify(plan)).toMatch(/SEARCH reminders USING (?:COVERING )?INDEX reminders_next/);
  });
});

describe('what is said of sessions', () => {
  const tuesdays: StudioEvent = {
    kind: 'session',
    session: { name: 'tuesday', day: 'tuesday', hours: { opens: 1080, closes: 1260 } },
  };
  /** Half an hour before 18:00 UTC on Tuesday 3 March. */
  const before = Date.UTC(2026, 2, 3, 17, 30);

  test('goes on week after week for as long as it is answered', async () => {
    await set(tuesdays);
    for (let week = 0; week < 60; week += 1) {
      const at = instant(before + week * hours(7 * 24));
      await store.reminders.plan(instant(at - hours(1)));
      expect(await claim(at - 1)).toEqual([]);
      const outcome = week % 2 === 0 ? ({ told: true } as const) : ({ dropped: true } as const);
      await store.reminders.settle(only(await claim(at)), outcome);
    }
  });

  test('goes on after a long holiday and a long sleep', async () => {
    await set(tuesdays);
    const asleep = instant(before + hours(5 * 7 * 24 + 3));
    for (const one of await claim(asleep)) await store.reminders.settle(one, { dropped: true });
    const next = instant(before + hours(6 * 7 * 24));
    await store.reminders.plan(instant(asleep + hours(1)));
    expect(only(await claim(next)).about).toMatchObject({ kind: 'buckets', from: next + minutes(30) });
  });

  test('goes on when those that are listed are dealt with before they come', async () => {
    await set(tuesdays);
    const listed = await queued();
    await store.books.writeOnce(studio, 'done', async (book) => {
      for (const { key } of listed) await book.finish(wren, key);
      return { keep: true, value: null };
    });
    for (let week = 0; week < 10; week += 1) {
      const at = instant(before + week * hours(7 * 24));
      await store.reminders.plan(instant(at - hours(6)));
      const due = await claim(at);
      expect(due).toHaveLength(listed.some(({ dueAt }) => dueAt === at) ? 0 : 1);
      for (const one of due) await store.reminders.settle(one, { told: true });
    }
  });

  test('goes on after a closure of ten weeks', async () => {
    await set(tuesdays);
    // From Monday 2 March to Sunday 10 May 2026.
    const closed = Array.from({ length: 70 }, (_, n) =>
      new Date(Date.UTC(2026, 2, 2 + n)).toISOString().slice(0, 10),
    );
    await set({ kind: 'closures', days: closed, closed: true });
    const after = instant(Date.UTC(2026, 4, 12, 17, 30));
    expect((await queued()).map(({ dueAt }) => dueAt)).toEqual([after, after + hours(7 * 24)]);
    for (let day = 0; day < 71; day += 1) {
      const now = instant(Date.UTC(2026, 2, 2 + day, 9));
      await store.reminders.plan(now);
      expect(await claim(now)).toEqual([]);
    }
    expect(only(await claim(after)).about).toMatchObject({ kind: 'buckets' });
  });

  test('put off until the session is on comes all the same, however often others are planned', async () => {
    await set(tuesdays);
    const { key } = only(await claim(before));
    const to = instant(before + minutes(90));
    await store.books.writeOnce(studio, 'later', async (book) => ({
      keep: await book.putOff(wren, key, to),
      value: null,
    }));
    await store.reminders.plan(instant(before + minutes(60)));
    expect(only(await claim(to)).key).toBe(key);
  });

  test('is not sent once the session has started', async () => {
    const on = instant(before + minutes(60));
    await set(tuesdays, on);
    await store.reminders.plan(on);
    expect(await claim(on)).toEqual([]);
  });

  test('goes to every keeper who is named, and to none who is not any more', async () => {
    const tove = await store.people.memberOf(studio, 'terminal', 'Tove', 'Tove');
    await set(tuesdays);
    await set({ kind: 'keeper', member: tove, keeper: true });
    expect(await queued()).toEqual([]);
    expect(only(await claim(before)).member).toBe(tove);
  });

  test('ends when the session does', async () => {
    await set(tuesdays);
    await set({ kind: 'session-off', name: 'Tuesday' });
    expect(await queued()).toEqual([]);
  });

  test('keeps nobody from setting another zone when this one is unknown here', async () => {
    await set(tuesdays);
    await set({ kind: 'zone', zone: 'Mars/Olympus' });
    await set({ kind: 'zone', zone: 'America/St_Johns' });
    expect(await queued()).toMatchObject([{ dueAt: Date.UTC(2026, 2, 3, 21) }, {}]);
  });
});

describe('that somebody cannot be reached', () => {
  const told = async (at: number) => {
    const [one] = await claim(at);
    if (one) await store.reminders.settle(one, { told: true });
    return one?.about;
  };

  test('is told once a week for as long as it is so', async () => {
    await set({ kind: 'keeper', member: wren, keeper: true });
    const week = hours(7 * 24);
    for (const [after, times] of [
      [0, 1],
      [hours(1), 0],
      [week - 1, 0],
      [week, 1],
      [week + hours(1), 0],
    ] as const) {
      await store.reminders.unreachable(studio, 'closed', instant(evening + after));
      expect([await told(evening + after)].filter(Boolean)).toHaveLength(times);
    }
  });
});
