import { expect, it } from 'vitest';
import type { Voice } from '../../../src/contract/desk.ts';
import { startReminders } from '../../../src/reminders/startReminders.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { en } from '../../../src/words/en.ts';
import { handbook } from '../../helpers/handbook.ts';
import { openReminderStudio } from '../../helpers/room/reminderStudio.ts';
import { settableClock, storeFile } from '../../helpers/store/storeFile.ts';

const minute = 60_000;

it('each reminder is counted: told in time, told late, tried again', async () => {
  const clock = settableClock();
  const store = await openStore(storeFile(), { clock });
  const { say, studio } = await openReminderStudio(store, '700000000000000001');
  const mara = await store.people.memberOf(studio, 'discord', '700000000000000002', 'Mara');
  const start = clock.now();
  for (const [i, span] of ['10 min', '30 min', '60 min'].entries()) {
    await say(mara, start, `/bucket add name:"Pail ${i + 1}"`, 'keeper');
    await say(mara, start, `/remind me bucket:${i + 1} in:"${span}"`);
  }
  const counted: string[] = [];
  let answer: Awaited<ReturnType<Voice['speak']>> = 'said';
  const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const reminders = await startReminders(
    {
      queue: store.reminders,
      books: store.books,
      words: en,
      handbook,
      clock,
      log: quiet,
      count: (outcome) => void counted.push(outcome),
      voices: [{ speak: () => Promise.resolve(answer) }],
    },
    { every: 1e8 },
  );
  const tickAt = (minutes: number) => {
    clock.set(start + minutes * minute);
    return reminders.tick();
  };
  await tickAt(11);
  expect(counted).toEqual(['told']);
  await tickAt(36);
  expect(counted).toEqual(['told', 'told-late']);
  answer = 'later';
  await tickAt(60);
  expect(counted).toEqual(['told', 'told-late', 'again']);
  await reminders.stop();
  await store.close();
});
