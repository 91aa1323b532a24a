import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

const by = z.string().min(1);
const line = z.string().startsWith('/');

/** A line that somebody typed: on a day so long before the first start, or minutes before it. */
const typed = z.union([
  z.strictObject({
    daysAgo: z.int().min(1).max(366),
    clock: z.string().regex(/^(?:[01]\d|20):[0-5]\d$/),
    by,
    line,
  }),
  z.strictObject({ minutesAgo: z.int().min(0).max(180), by, line }),
]);
export type SeedLine = z.infer<typeof typed>;

const studioFile = z.strictObject({
  name: z.string().min(1),
  zone: z.string().min(1),
  keepers: z.array(by).min(1),
  members: z.array(by).min(1),
  /** In the order in which they were set up: their numbers follow. */
  buckets: z.array(z.string().regex(/^[a-z-]+$/)),
  log: z.array(typed),
});

const bucketFile = z.strictObject({ story: z.string().min(1), log: z.array(typed) });

export interface Seed extends Omit<z.infer<typeof studioFile>, 'buckets'> {
  /** What came out of the kiln. */
  results: z.infer<typeof bucketFile>;
  buckets: (z.infer<typeof bucketFile> & { file: string })[];
}

const read = (name: string): unknown =>
  JSON.parse(readFileSync(fileURLToPath(import.meta.resolve(`#seed/${name}`)), 'utf8'));

/** The invented studio as its files have it. Throws when one is not as it should be. */
export const loadSeed = (): Seed => {
  const studio = studioFile.parse(read('studio.json'));
  const buckets = studio.buckets.map((file) => ({
    file,
    ...bucketFile.parse(read(`buckets/${file}.json`)),
  }));
  return { ...studio, buckets, results: bucketFile.parse(read('results.json')) };
};
