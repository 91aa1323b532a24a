import { z } from 'zod';
import { noteCautions, noteCommands, noteSums, type HandbookNote } from '../studio/handbook.ts';
import { readSeedFile } from './loadSeed.ts';

const line = z.string().min(1);

const notes = z.array(
  z.strictObject({
    id: z.string().regex(/^[a-z]+(?:-[a-z]+)*$/),
    title: z.string().min(1).max(60),
    words: z.array(line),
    answer: z.string().min(1).max(220),
    facts: z.array(z.strictObject({ label: line, text: line })).max(3),
    dont: z.array(line).max(2),
    cautions: z.array(z.enum(noteCautions)).max(3),
    see: z.array(line).max(3),
    commands: z.array(z.enum(noteCommands)).max(3),
    basis: line,
    computes: z.enum(noteSums).exactOptional(),
  }),
);

const topics = 'bucket measuring resist preparing dipping faults safety emergency house'.split(' ');

/** Reads the handbook's files. Throws if one is invalid. */
export const loadNotes = (): HandbookNote[] =>
  topics.flatMap((topic) => notes.parse(readSeedFile(`notes/${topic}.json`)));
