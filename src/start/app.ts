import { randomUUID } from 'node:crypto';
import { systemClock, type Clock } from '../clock.ts';
import type { Desk } from '../contract/desk.ts';
import { openDesk } from '../desk/dispatch.ts';
import { commands } from './registry.ts';
import { openHandbook } from '../search/openHandbook.ts';
import { countingBooks, countingDesk } from '../monitor/countParts.ts';
import type { Counts } from '../monitor/counts.ts';
import type { Handbook } from '../studio/handbook.ts';
import { loadNotes } from '../seed/loadNotes.ts';
import type { StudioId } from '../studio/ids.ts';
import { openStore, type Store } from '../store/openStore.ts';
import { en } from '../words/en.ts';
import type { Words } from '../words/words.ts';

export interface App {
  store: Store;
  desk: Desk;
  words: Words;
  handbook: Handbook;
  clock: Clock;
  /** Where each studio’s room is opened, of those that have one. */
  rooms: Map<StudioId, string>;
}

export interface AppOptions {
  /** A file, or the address of a PostgreSQL database. */
  file: string;
  /** The system's, unless it is said. */
  clock?: Clock;
  /** Counts what happens at the desk and at the logbook. */
  counts?: Counts;
  /** Logs a bug under the id that the member sees; otherwise it is printed. */
  onBug?(error: unknown, id: string, path: string[]): void;
}

/** Opens the logbook, and a desk on it. */
export const openApp = async ({
  file,
  clock = systemClock,
  onBug = (error, id) => console.error(id, error),
  counts,
}: AppOptions): Promise<App> => {
  const opened = await openStore(file, { clock });
  const store = counts ? { ...opened, books: countingBooks(opened.books, counts) } : opened;
  const rooms: App['rooms'] = new Map();
  const handbook = openHandbook(loadNotes);
  const desk = openDesk({
    commands,
    books: store.books,
    words: en,
    handbook,
    labels: {
      roomOf: (studio) => rooms.get(studio),
      print: async (sheet) => (await import('../labels/labelsPdf.ts')).labelsPdf(sheet),
    },
    report: (error, { path }) => {
      const id = randomUUID().slice(0, 8);
      onBug(error, id, path);
      return id;
    },
  });
  return { store, desk: counts ? countingDesk(desk, counts) : desk, words: en, handbook, clock, rooms };
};
