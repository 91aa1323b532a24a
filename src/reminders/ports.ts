import type { Request, Voice } from '../contract/contract.ts';
import type { Log } from '../contract/log.ts';
import type { LogbookStore, ReminderQueue } from '../studio/logbook/ports.ts';
import type { Words } from '../words/words.ts';

/** What reminders need of the rest of the house. */
export interface ReminderPorts {
  queue: ReminderQueue;
  books: LogbookStore;
  words: Words;
  clock: { now(): Request['now'] };
  log: Log;
  /** Those who may speak here, the likeliest first. */
  voices: readonly Voice[];
}
