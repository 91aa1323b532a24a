import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Voice } from '../../src/contract/desk.ts';
import { startReminders, type ReminderSettings } from '../../src/reminders/startReminders.ts';
import { duration, hours, instant, later, minutes, type Instant } from '../../src/studio/ids.ts';
import { en } from '../../src/words/en.ts';
import { handbook } from '../helpers/handbook.ts';
import { endLeases, newDatabase, queryAt } from '../helpers/postgres/databases.ts';
import { openTestStore } from '../helpers/store/storeFile.ts';

/** 19:00 UTC on 1 March 2026; a coat of wax is ready at eight next morning. */
const evening = instant(Date.UTC(2026, 2, 1, 19));
const morning = instant(Date.UTC(2026, 2, 2, 8));
const many = 12;

type Sender = (nonce: string) => Promise<void>;
const atOnce: Sender = () => Promise.resolve();

/** A process of its own clock that sends reminders, on a database that others use too. */
const openProcess = async (address: string, ahead = 0, sends = atOnce, settings: ReminderSettings = {}) => {
  let at: Instant = evening;
  const clock = { now: () => later(at, duration(ahead)) };
  const store = await openTestStore({ file: address, clock });
  const said: string[] = [];
  const voice: Voice = {
    speak: async (_studio, _to, _reply, nonce) => {
      await sends(nonce);
      said.push(nonce);
      return 'said';
    },
  };
  const troubles: object[] = [];
  const log = {
    info: () => undefined,
    warn: () => undefined,
    error: (about: object) => void troubles.push(about),
  };
  const reminders = await startReminders(
    { queue: store.reminders, books: store.books, words: en, handbook, clock, log, voices: [voice] },
    { every: 1e8, ...settings },
  );
  onTestFinished(() => reminders.stop());
  return {
    store,
    said,
    troubles,
    /** Looks for reminders at a true time, of which this process’s clock may differ. */
    tick: (now: Instant) => {
      at = now;
      return reminders.tick();
    },
  };
};

const planned = async ({ store }: Awaited<ReturnType<typeof openProcess>>) => {
  const studio = await store.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
  const wren = await store.people.memberOf(studio, 'terminal', 'Wren', 'Wren');
  await store.books.writeOnce(studio, 'coats', async (book) => {
    const logged = { at: evening, loggedAt: evening, by: wren };
    await book.logStudio({ kind: 'reminders', quiet: 'none' }, logged);
    for (let i = 0; i < many; i += 1)
      await book.logCoat({ kind: 'on', resist: 'wax', pieces: `bowl ${i}` }, logged);
    return { keep: true, value: null };
  });
};

/** Something that happens when it is let happen. */
const gate = () => {
  let open: () => void = () => undefined;
  const opened = new Promise<void>((resolve) => (open = resolve));
  return { open, opened };
};

describe('reminders of processes whose clocks differ by minutes', () => {
  it.each([7, -7, 45])('are told once each, the other %i minutes ahead', async (ahead) => {
    const address = await newDatabase('empty_logbook');
    const sending = gate();
    const slow = await openProcess(address, 0, () => sending.opened);
    const other = await openProcess(address, minutes(ahead));
    await planned(slow);
    // The first has claimed all and is still sending; by the other's clock two minutes may be over long ago.
    const first = slow.tick(morning);
    await expect.poll(() => claimed(address)).toBe(many);
    for (const after of [0, 1, 5, 10]) await other.tick(later(morning, minutes(after)));
    expect(other.said).toEqual([]);
    sending.open();
    await first;
    for (const one of [other, slow]) await one.tick(later(morning, hours(3)));
    expect(new Set(slow.said).size).toBe(many);
    expect([slow.said.length, other.said.length]).toEqual([many, 0]);
    expect([slow.troubles, other.troubles]).toEqual([[], []]);
  });

  it('are shared and told once each when both look all the time, and one of them dies while it sends', async () => {
    const address = await newDatabase('empty_logbook');
    const never = gate();
    onTestFinished(() => never.open());
    const dying = await openProcess(address, 0, () => never.opened, { together: 5 });
    const others = [await openProcess(address, minutes(6)), await openProcess(address, -minutes(6))] as const;
    await planned(dying);
    void dying.tick(morning);
    await expect.poll(() => claimed(address)).toBe(5);
    for (const after of [0, 2, 4, 8, 16])
      await Promise.all(others.map((one) => one.tick(later(morning, minutes(after)))));
    const told = () => others.flatMap(({ said }) => said);
    expect(told()).toHaveLength(many - 5);
    await endLeases(address);
    await Promise.all(others.map((one) => one.tick(later(morning, minutes(17)))));
    expect(told()).toHaveLength(many);
    expect(new Set(told()).size).toBe(many);
  });
});

const claimed = async (address: string) =>
  Number(
    (await queryAt(address, 'select count(*) as all from reminders where leased_until is not null'))[0]?.[
      'all'
    ],
  );

describe('a process that sends for longer than its lease', () => {
  it('holds what it has claimed meanwhile', async () => {
    const address = await newDatabase('empty_logbook');
    const sending = gate();
    // A lease of 400 milliseconds, lengthened every 100.
    const slow = await openProcess(address, 0, () => sending.opened, { lease: 400 });
    const other = await openProcess(address);
    await planned(slow);
    const first = slow.tick(morning);
    await expect.poll(() => claimed(address)).toBe(many);
    await pause(1_500);
    await other.tick(morning);
    sending.open();
    await first;
    expect([slow.said.length, other.said.length]).toEqual([many, 0]);
  });

  it('that stood still before it sent leaves to the other what the other has claimed', async () => {
    const address = await newDatabase('empty_logbook');
    const one = await openProcess(address);
    const other = await openProcess(address);
    await planned(one);
    const claims = await one.store.reminders.claim(morning, later(morning, minutes(2)), many);
    expect(await Promise.all(claims.map((claim) => one.store.reminders.isHeld(claim)))).not.toContain(false);
    await endLeases(address);
    await other.tick(morning);
    expect(other.said).toHaveLength(many);
    expect(await Promise.all(claims.map((claim) => one.store.reminders.isHeld(claim)))).not.toContain(true);
    await one.store.reminders.hold(claims, minutes(2));
    expect(await one.tick(later(morning, hours(1)))).toBe(0);
  });
});
