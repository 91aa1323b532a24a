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

/** Commands that a note can offer as a button. */
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

/** Questions that are answered by a command, from the logbook. */
export const noteSums = ['verdict', 'coats', 'dip-time', 'history'] as const;
export type NoteSum = (typeof noteSums)[number];

/** Emergencies, each with the note that says what to do now. Dangers to a helper come first. */
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

/** A note of the handbook, which comes with the program and is the same in every studio. */
export interface HandbookNote {
  id: string;
  title: string;
  /** Other words for its subject. */
  words: string[];
  /** One sentence that can be read alone. */
  answer: string;
  facts: { label: string; text: string }[];
  dont: string[];
  cautions: NoteCaution[];
  /** Related notes, by id. */
  see: string[];
  commands: NoteCommand[];
  /** A published source by name, or common practice. */
  basis: string;
  computes?: NoteSum;
}

/** A studio's own note, written by a keeper. */
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

/** A note found for a question, and how much of the question it covers, from 0 to 1. */
export interface FoundNote {
  found: Note;
  score: number;
}

export interface NotesFound {
  /** Notes that answer the question, the best first; empty when none does. */
  answers: FoundNote[];
  /** The nearest notes when none answers. */
  near: FoundNote[];
}

/** The handbook and a studio's own notes, searched by question. */
export interface Handbook {
  /** Reads and learns a little more of the notes; false when all is ready. The first question does what is left. */
  prepare(): boolean;
  find(question: string, own: readonly StudioNote[]): NotesFound;
  note(id: string): HandbookNote | undefined;
  /** Emergencies that a question says are happening now, the most urgent first. */
  emergencies(question: string): Emergency[];
  /** Whether a word is an everyday word or a trade word; if so, it does not by itself name a bucket. */
  knows(word: string): boolean;
}
