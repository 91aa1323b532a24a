import type { Request, Voice } from '../contract/desk.ts';
import type { Log } from '../contract/log.ts';
import type { LogbookStore, ReminderQueue } from '../studio/logbook/ports.ts';
import type { Handbook } from '../studio/handbook.ts';
import type { Words } from '../words/words.ts';

/** What reminders need from the rest of the program. */
export interface ReminderPorts {
  queue: ReminderQueue;
  books: LogbookStore;
  words: Words;
  handbook: Handbook;
  clock: { now(): Request['now'] };
  log: Log;
  /** Called with what became of each reminder. */
  count?(outcome: 'told' | 'told-late' | 'again' | 'dropped'): void;
  /** The platforms that can send, in order of preference. */
  voices: readonly Voice[];
}
