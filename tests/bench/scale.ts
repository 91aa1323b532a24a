import { existsSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { systemClock } from '../../src/clock.ts';
import { speak } from '../../src/desk/speak.ts';
import { openApp } from '../../src/start/app.ts';
import { backUp } from '../../src/store/backup/backUp.ts';
import { percentile } from './load.ts';
import { copyStudios } from './scale/copyStudios.ts';
import { buckets, entriesEach, makeTemplate } from './scale/templateStudio.ts';

/**
 * Many studios in one file: how large it gets, how fast it answers under a day's load, what a backup takes.
 * `--studios 10000 --file big.db` keeps the file, and goes on with it when it is there.
 */
const { values } = parseArgs({
  args: process.argv.slice(2),
  allowPositionals: true,
  options: {
    studios: { type: 'string', default: '200' },
    file: { type: 'string' },
    visits: { type: 'string', default: '2000' },
  },
});
const [studios, visits] = [Number(values.studios), Number(values.visits)];
const folder = mkdtempSync(join(tmpdir(), 'bench-scale-'));
const file = values.file ?? join(folder, 'studios.db');
const mebibytes = (bytes: number): string => `${(bytes / 2 ** 20).toFixed(0)} MiB`;
const took = async <T>(what: string, work: () => Promise<T> | T): Promise<T> => {
  const began = performance.now();
  const done = await work();
  console.log(`${what}: ${((performance.now() - began) / 1_000).toFixed(1)} s`);
  return done;
};

if (!existsSync(file)) await makeTemplate(file, systemClock);
await took(`${studios} studios of ${buckets} buckets with ${entriesEach} entries each`, () =>
  copyStudios(file, studios, (made, rate) => {
    if (made % 500 === 0) console.log(`  ${made} studios, ${rate.toFixed(0)} rows a second`);
  }),
);
console.log(`the file: ${mebibytes(statSync(file).size)}`);

const app = await took('opened', () => openApp({ file, clock: systemClock, onBug: console.error }));
console.log(`memory when open: ${mebibytes(process.memoryUsage().rss)}`);

/** One question to three readings’ worth of asking: a member asks, and every fourth logs what was read. */
const times = {
  'water-or-stir': [] as number[],
  reading: [] as number[],
  'either, of a studio used before': [] as number[],
};
const visitStudio = async (n: number, external: string): Promise<number> => {
  const studio = await app.store.people.studioOf('bench', external, '');
  const member = await app.store.people.memberOf(studio, 'bench', 'wren', 'Wren');
  const bucket = 1 + (n % buckets);
  const line =
    n % 4 === 3
      ? `/reading bucket:${bucket} gravity:1.44 seconds:14 stirred:yes`
      : `/water-or-stir bucket:${bucket}`;
  const began = performance.now();
  const reply = await speak(
    line,
    `bench:${process.pid}:${n}:${external}`,
    { studio, member, role: 'member', now: systemClock.now() },
    app,
  );
  if (reply.kind !== 'answer') throw new Error(JSON.stringify(reply));
  return performance.now() - began;
};
await took(`${visits} visits to studios at random, one after another`, async () => {
  for (let n = 0; n < visits; n += 1) {
    const external = String(1 + Math.floor(Math.random() * (studios - 1)));
    times[n % 4 === 3 ? 'reading' : 'water-or-stir'].push(await visitStudio(n, external));
    times['either, of a studio used before'].push(await visitStudio(n, external));
  }
});
for (const [what, all] of Object.entries(times))
  console.log(
    `${what}: p50 ${percentile(all, 0.5).toFixed(2)} ms, p99 ${percentile(all, 0.99).toFixed(2)} ms`,
  );
await took('sessions and mornings planned for every studio', () =>
  app.store.reminders.plan(systemClock.now()),
);
console.log(`memory after all this: ${mebibytes(process.memoryUsage().rss)}`);
const copy = join(folder, 'copy.db');
await took('a backup while it runs', () => backUp(file, copy));
await app.store.close();
rmSync(folder, { recursive: true });
