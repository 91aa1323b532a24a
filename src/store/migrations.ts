import type { Migration } from './migration.ts';
import { logbook } from './migrations/logbook.ts';
import { people } from './migrations/people.ts';
import { reminders } from './migrations/reminders.ts';
import { room } from './migrations/room.ts';
import { studioNotes } from './migrations/studioNotes.ts';

/** In order, numbered from 1. Released ones never change: a mistake is put right by the next. */
export const migrations: readonly Migration[] = [logbook, room, reminders, people, studioNotes];
