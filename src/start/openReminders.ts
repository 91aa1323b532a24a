import type { App } from './app.ts';
import type { Voice } from '../contract/desk.ts';
import type { Log } from '../contract/log.ts';
import { definedOnly } from '../definedOnly.ts';
import type { ReminderPorts } from '../reminders/ports.ts';
import { startReminders, type Reminders } from '../reminders/startReminders.ts';

/** Sends this file's reminders through the connected platforms. */
export const openReminders = (
  { store, words, handbook, clock }: App,
  voices: readonly Voice[],
  log: Log,
  count?: ReminderPorts['count'],
): Promise<Reminders> =>
  startReminders({
    queue: store.reminders,
    books: store.books,
    words,
    handbook,
    clock,
    log,
    voices,
    ...definedOnly({ count }),
  });
