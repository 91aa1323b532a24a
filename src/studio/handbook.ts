import type { Instant, MemberId } from './ids.ts';

export const noteCautions = [
  'gloves',
  'caustic',
  'drawn-water',
  'dust',
  'mixer',
  'lifting',
  'deflocculant',
  'fire',
  'latex',
  'burn-out',
  'bleach',
  'food',
  'metals',
  'first-aid',
] as const;
export type NoteCaution = (typeof noteCautions)[number];

/** Commands that a note can hand over as a button. */
export const noteCommands = [
  'water-or-stir',
  'reading',
  'added',
  'stirred',
  'sieved',
  'dose',
  'dose-solution',
  'dose-deflocculant',
  'dip-time',
  'dip-tile',
  'dip-absorption',
  'prep',
  'coat-on',
  'coat-list',
  'coat-off',
  'bucket-list',
  'bucket-show',
  'bucket-log',
  'bucket-hold',
  'batch-correct',
  'batch-blend',
  'batch-plan',
  'batch-recipes',
  'studio-vessel',
  'studio-water',
  'fired',
  'faults',
  'remind-list',
  'remind-by',
  'undo',
  'help',
] as const;
export type NoteCommand = (typeof noteCommands)[number];

/** What the logbook can work out, when that is what was asked. */
export const noteSums = ['verdict', 'coats', 'dip-time', 'history'] as const;
export type NoteSum = (typeof noteSums)[number];

/** What cannot wait, each by the note that says what to do now; what endangers whoever helps comes first. */
export const emergencies = [
  'shock',
  'fire',
  'gas-leak',
  'bleach-gas',
  'alarm',
  'caught',
  'collapsed',
  'breathing',
  'swallowed',
  'eye',
  'burns',
  'cuts',
  'hurt',
] as const;
export type Emergency = (typeof emergencies)[number];

/** A note of the handbook that comes with the program, in every studio. */
export interface HandbookNote {
  id: string;
  title: string;
  /** Other words that people use for it. */
  words: string[];
  /** One sentence that stands alone. */
  answer: string;
  facts: { label: string; text: string }[];
  dont: string[];
  cautions: NoteCaution[];
  /** Other notes, by id. */
  see: string[];
  commands: NoteCommand[];
  /** A published source by name, or common practice. */
  basis: string;
  computes?: NoteSum;
}

/** A note of the studio's own, in a keeper's words. */
export interface StudioNote {
  no: number;
  title: string;
  text: string;
  words: string;
  by: MemberId;
  at: Instant;
}

export const studioNoteId = (no: number): string => `n-${no}`;

export type Note = { from: 'handbook'; note: HandbookNote } | { from: 'studio'; note: StudioNote };

/** A note that a question found, and how much of the question it covers, from 0 to 1. */
export interface FoundNote {
  found: Note;
  score: number;
}

export interface Found {
  /** Notes that answer, the best first; none when nothing does. */
  answers: FoundNote[];
  /** Notes that came nearest when none answers. */
  near: FoundNote[];
}

/** The handbook and a studio's own notes, searched by question. */
export interface Handbook {
  find(question: string, own: readonly StudioNote[]): Found;
  note(id: string): HandbookNote | undefined;
  /** What happens right now to somebody, as far as a question says so; the most pressing first. */
  emergencies(question: string): Emergency[];
  /** Whether a word is one of everyday or of the trade, and so no sign of a bucket's name by itself. */
  knows(word: string): boolean;
}
