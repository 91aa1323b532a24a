import { expect, it } from 'vitest';
import { learnAtNight } from '../../../src/start/whileRunning.ts';
import { checkStates } from '../../../src/store/states/checkStates.ts';
import type { Store } from '../../../src/store/openStore.ts';
import { gravity } from '../../../src/glaze/units.ts';
import type { BucketEvent } from '../../../src/studio/bucket/bucketEvent.ts';
import {
  seq,
  streamNo,
  theProgram,
  type MemberId,
  type StreamNo,
  type StudioId,
} from '../../../src/studio/ids.ts';
import type { Logbook, LoggedEvent } from '../../../src/studio/logbook/ports.ts';
import { afterOf, gullGreyLine, openGlazeRoom } from '../../helpers/room/glazeRoom.ts';
import { exportText } from '../../helpers/store/exportText.ts';
import { isStored } from '../../helpers/store/isStored.ts';
import { sqlIn } from '../../helpers/store/sqlIn.ts';
import { gullGrey, loggedAt, noonPlus } from '../../helpers/store/storeEvents.ts';
import { openTestStore, settableClock } from '../../helpers/store/storeFile.ts';

const day = 24 * 60;
const all = { after: seq(0), most: 1_000 };
const always = () => new AbortController().signal;

const weighing = (value: number, vessel = 'steel cup'): BucketEvent => ({
  kind: 'reading',
  gravity: { value: gravity(value), u95: 0.02, by: 'weight', vessel },
  stirred: true,
  seen: [],
});

/** A studio with three buckets; in the first two, strangers poured water in every few days. */
const openWatered = async (external = 'here') => {
  const clock = settableClock();
  const store = await openTestStore({ clock });
  const studio = await store.people.studioOf('terminal', external, 'Wrackline Clay Co-op');
  const ana = await store.people.memberOf(studio, 'terminal', 'Ana', 'Ana');
  await fill(store, studio, ana);
  clock.set(noonPlus(30 * day));
  await touch(store, studio, ana, 30 * day);
  return { store, clock, studio, ana };
};

const fill = (store: Store, studio: StudioId, ana: MemberId) =>
  store.books.writeOnce(studio, 'fill', async (book) => {
    for (const name of ['Gull Grey', 'Tern White', 'Kelp Rope'])
      await book.open({ ...gullGrey, name }, loggedAt(ana, 0));
    for (let visit = 1; visit < 28; visit += 1)
      for (const no of [1, 2]) {
        // Every fourth time it has become thinner, and powder brings it back.
        const thin = visit % 4 === 0;
        for (const later of [0, 4])
          await book.log(
            streamNo(no),
            weighing((thin ? 1.41 : 1.44) + 0.002 * (later ? 1 : -1)),
            loggedAt(ana, visit * day + later),
          );
        if (thin)
          await book.log(
            streamNo(no),
            { kind: 'addition', added: { what: 'dry' } },
            loggedAt(ana, visit * day + 9),
          );
      }
    return { keep: true, value: 'filled' };
  });

let touches = 0;
const touch = (store: Store, studio: StudioId, ana: MemberId, minute: number, no = 1) =>
  store.books.writeOnce(studio, `terminal:${(touches += 1)}`, async (book) => {
    await book.log(streamNo(no), weighing(1.44), loggedAt(ana, minute));
    return { keep: true, value: 'done' };
  });

const learnedIn = (store: Store, studio: StudioId) =>
  store.books.read(studio, async (book) => {
    const found: { stream: StreamNo; at: number; by: MemberId; event: LoggedEvent }[] = [];
    for (const stream of await book.streams())
      for (const { event, at, by } of await book.history(stream, all))
        if (event.kind === 'learned') found.push({ stream, at, by, event });
    return found;
  });

const isRight = async (store: Store & { file: string }) =>
  expect(await checkStates(store.file)).toMatchObject({ outdated: 0, differing: [] });

it('once a day each bucket learns what the others have shown, and the states follow from the entries', async () => {
  const { store, clock, studio, ana } = await openWatered();
  // Two at once, as several processes may be.
  const [one, other] = await Promise.all([store.learnAcross(always()), store.learnAcross(always())]);
  expect(one + other).toBe(3);
  const learned = await learnedIn(store, studio);
  expect(learned.map(({ stream, by }) => [stream, by])).toEqual([
    [1, theProgram],
    [2, theProgram],
    [3, theProgram],
  ]);
  const [, , kelp] = learned;
  // Kelp Rope was only set up: what it expects is the others' water, and how well their cup repeats.
  if (kelp?.event.kind !== 'learned') throw new Error('nothing was learned');
  expect(kelp.event.days).toBe(20);
  expect(kelp.event.counts.water / kelp.event.days).toBeGreaterThan(0.1);
  expect(kelp.event.vessels).toMatchObject([{ vessel: 'steel cup', count: 20 }]);
  expect(kelp.at).toBe(noonPlus(0));
  await isRight(store);
  // On the same day nothing is done again, nor on the next without news to speak of.
  expect(await store.learnAcross(always())).toBe(0);
  await touch(store, studio, ana, 30 * day + 90);
  clock.set(noonPlus(31 * day));
  expect(await store.learnAcross(always())).toBe(0);
  expect(await learnedIn(store, studio)).toHaveLength(3);
  await isRight(store);
});

it('what is logged, backdated or undone afterwards comes to the same as folded anew', async () => {
  const { store, studio, ana } = await openWatered();
  await store.learnAcross(always());
  await touch(store, studio, ana, 30 * day + 20);
  await touch(store, studio, ana, 29 * day, 2);
  await store.books.writeOnce(studio, 'terminal:undo', async (book) => {
    // The last that was read before it learned, and what it learned itself.
    const [learned] = (await book.history(streamNo(1), all)).filter(({ event }) => event.kind === 'learned');
    if (!learned) throw new Error('nothing was learned');
    await book.log(streamNo(1), { kind: 'undo', of: seq(learned.seq - 1) }, loggedAt(ana, 30 * day + 30));
    await book.log(streamNo(3), { kind: 'undo', of: seq(2) }, loggedAt(ana, 30 * day + 30));
    return { keep: true, value: 'done' };
  });
  await touch(store, studio, ana, 30 * day - 5);
  await touch(store, studio, ana, 30 * day + 40, 3);
  await isRight(store);
  const states = (book: Logbook) => book.buckets();
  const live = await store.books.read(studio, states);
  await store.rebuildStates();
  expect(await store.books.read(studio, states)).toEqual(live);
  expect(live[2]?.belief).not.toHaveProperty('others');
  expect(live[0]?.belief).toHaveProperty('others');
});

it('a studio in which nobody wrote anything since the day before is not looked at', async () => {
  const { store, clock, studio, ana } = await openWatered();
  const idle = await store.people.studioOf('terminal', 'idle', 'Idle');
  const bo = await store.people.memberOf(idle, 'terminal', 'Bo', 'Bo');
  await fill(store, idle, bo);
  clock.set(noonPlus(32 * day));
  await touch(store, studio, ana, 32 * day);
  const asked = async (of: StudioId) =>
    (await sqlIn(store.file, `select key from replies where studio_id = ? and key like 'learned %'`, of))
      .length;
  await store.learnAcross(always());
  expect([await asked(studio), await asked(idle)]).toEqual([1, 0]);
  // That it learned is no news of its own.
  clock.set(noonPlus(34 * day));
  await store.learnAcross(always());
  expect(await asked(studio)).toBe(1);
});

it('lists show only what members logged, and an export holds all of it', async () => {
  const { store, studio } = await openWatered();
  const lists = () =>
    store.books.read(studio, async (book) => ({
      entries: await book.entries(streamNo(1), { most: 500 }),
      last: await book.entries(streamNo(3), { most: 1 }),
      latest: await book.latest({ most: 500 }),
    }));
  const before = await lists();
  await store.learnAcross(always());
  expect(await lists()).toEqual(before);
  const text = await exportText(store, studio);
  expect(text).toContain('"kind":"learned"');
});

it('an action that was offered before the night can still be pressed after it', async () => {
  const room = await openGlazeRoom();
  await room.keeper(0, '/studio vessel name:"steel cup" tare:140g water:250g');
  for (const name of ['Gull Grey', 'Tern White', 'Kelp Rope'])
    await room.keeper(0, gullGreyLine({ name, nick: name.slice(0, 4).toLowerCase() }));
  for (let again = 0; again < 8; again += 1)
    for (const bucket of [1, 2])
      await room.say(1 + again, `/reading bucket:${bucket} weight:${500.5 + (again % 3)}g stirred:yes`);
  const said = await room.say(10, '/water-or-stir bucket:3');
  const stirred = said.actions.find(({ line }) => line.startsWith('/stirred'));
  if (!stirred) throw new Error('no stir is offered');
  const offered = afterOf(stirred.line);
  expect(await room.store.learnAcross(always())).toBeGreaterThan(0);
  const state = await room.store.books.read(room.studio, (book) => book.bucket(streamNo(3)));
  expect(state?.seq).toBeGreaterThan(offered);
  expect(await room.say(12, stirred.line)).toMatchObject({ kind: 'answer' });
  // But not once a member logged something.
  expect((await room.say(13, stirred.line)).kind).toBe('refusal');
  expect(room.bugs).toEqual([]);
});

it('a name that is taken out of a vessel’s is taken out of what was learned of it', async () => {
  const { store, studio, ana } = await openWatered();
  await store.books.writeOnce(studio, 'terminal:named', async (book) => {
    for (let minute = 1; minute < 12; minute += 1)
      await book.log(
        streamNo(1),
        weighing(1.44 + 0.001 * (minute % 3), 'Wrenna cup'),
        loggedAt(ana, 30 * day + minute),
      );
    return { keep: true, value: 'done' };
  });
  await store.learnAcross(always());
  expect(JSON.stringify(await learnedIn(store, studio))).toContain('Wrenna cup');
  await store.books.writeOnce(studio, 'terminal:redact', async (book) => {
    await book.redactName('Wrenna');
    return { keep: true, value: 'done' };
  });
  await store.erased();
  expect(JSON.stringify(await learnedIn(store, studio))).not.toContain('Wrenna');
  expect(await isStored(store.file, 'Wrenna')).toBe(false);
  await isRight(store);
});

it('the program does it when its day begins, and once more each day', async () => {
  const { store, clock, studio, ana } = await openWatered();
  const errors: object[] = [];
  const log = { info: () => undefined, warn: () => undefined, error: (about: object) => errors.push(about) };
  const stop = learnAtNight(store, { clock, log }, { after: 0, every: 5 });
  await expect.poll(() => learnedIn(store, studio)).toHaveLength(3);
  clock.set(noonPlus(31 * day));
  await store.books.writeOnce(studio, 'terminal:new', async (book) => {
    await book.open({ ...gullGrey, name: 'Fog Bell' }, loggedAt(ana, 30 * day + 50));
    return { keep: true, value: 'done' };
  });
  clock.set(noonPlus(32 * day));
  await expect
    .poll(async () => (await learnedIn(store, studio)).map(({ stream }) => stream))
    .toEqual([1, 2, 3, 4]);
  await stop();
  expect(errors).toEqual([]);
});
