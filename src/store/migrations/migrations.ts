import type { Migration } from './migration.ts';
import { laterEntries } from './laterEntries.ts';
import { logbook } from './logbook.ts';
import { manyProcesses } from './manyProcesses.ts';
import { openQuestions } from './openQuestions.ts';
import { people } from './people.ts';
import { reminders } from './reminders.ts';
import { room } from './room.ts';
import { severalRooms } from './severalRooms.ts';
import { shownOnce } from './shownOnce.ts';
import { studioNotes } from './studioNotes.ts';

/** In order, numbered from 1. A released step never changes: the next step corrects it. */
export const migrations: readonly Migration[] = [
  logbook,
  room,
  reminders,
  people,
  studioNotes,
  openQuestions,
  manyProcesses,
  severalRooms,
  laterEntries,
  shownOnce,
];
