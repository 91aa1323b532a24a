import { z } from 'zod';

/** The export as docs/data.md describes it, format 1: what other readers may rely on. */
const iso = z.iso.datetime();
const id = z.string().min(1);
const no = z.int().positive();

const entry = z.strictObject({
  entry: z.string().regex(/^(?:[a-z]|\d+)-\d+$/),
  at: iso,
  loggedAt: iso,
  stream: z.int(),
  seq: no,
  by: id,
  event: z.looseObject({ kind: z.string() }),
  note: z.string().optional(),
  noteRemoved: z.literal(true).optional(),
  undoneBy: no.optional(),
});

export const exportSchema = z.strictObject({
  format: z.literal(1),
  exportedAt: iso,
  since: iso.optional(),
  studio: z.looseObject({
    zone: z.string(),
    units: z.enum(['metric', 'us', 'imperial']),
    vessels: z.array(z.looseObject({ name: z.string(), tare: z.number(), water: z.number() })),
    cups: z.array(z.looseObject({ name: z.string(), kind: z.string() })),
    recipes: z.array(z.looseObject({ name: z.string(), lines: z.array(z.looseObject({})) })),
    keepers: z.array(id),
    hours: z.looseObject({}),
    sessions: z.array(z.looseObject({ name: z.string() })),
    reminders: z.looseObject({ lead: z.number() }),
  }),
  members: z.array(z.strictObject({ id, name: z.string() })),
  buckets: z.array(z.looseObject({ no, settings: z.looseObject({ name: z.string() }) })),
  coats: z.array(z.looseObject({ id, by: id })),
  pieces: z.array(z.looseObject({ id, by: id })),
  notes: z.array(
    z.strictObject({ no, title: z.string(), text: z.string(), words: z.string(), by: id, at: z.int() }),
  ),
  entries: z.array(entry),
});
export type Exported = z.infer<typeof exportSchema>;
