import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

const memberName = z.string().min(1);
const line = z.string().startsWith('/');

/** A line that a member typed, so many days or minutes before the demo's first start. */
const typed = z.union([
  z.strictObject({
    daysAgo: z.int().min(1).max(366),
    clock: z.string().regex(/^(?:[01]\d|20):[0-5]\d$/),
    by: memberName,
    line,
  }),
  z.strictObject({ minutesAgo: z.int().min(0).max(180), by: memberName, line }),
]);
export type SeedLine = z.infer<typeof typed>;

const studioFile = z.strictObject({
  name: z.string().min(1),
  zone: z.string().min(1),
  keepers: z.array(memberName).min(1),
  members: z.array(memberName).min(1),
  /** In order of setup, which gives them their numbers. */
  buckets: z.array(z.string().regex(/^[a-z-]+$/)),
  log: z.array(typed),
});

const bucketFile = z.strictObject({ story: z.string().min(1), log: z.array(typed) });

export interface Seed extends Omit<z.infer<typeof studioFile>, 'buckets'> {
  /** Firing results. */
  results: z.infer<typeof bucketFile>;
  buckets: (z.infer<typeof bucketFile> & { file: string })[];
}

/** A file of the folder seed. */
export const readSeedFile = (name: string): unknown =>
  JSON.parse(readFileSync(fileURLToPath(import.meta.resolve(`#seed/${name}`)), 'utf8'));

/** Reads the demo studio's files. Throws if one is invalid. */
export const loadSeed = (): Seed => {
  const studio = studioFile.parse(readSeedFile('studio.json'));
  const buckets = studio.buckets.map((file) => ({
    file,
    ...bucketFile.parse(readSeedFile(`buckets/${file}.json`)),
  }));
  return { ...studio, buckets, results: bucketFile.parse(readSeedFile('results.json')) };
};
