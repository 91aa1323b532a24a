import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import pg from 'pg';
import { systemClock } from '../../src/clock.ts';
import { speak } from '../../src/desk/speak.ts';
import { openApp, type App } from '../../src/start/app.ts';
import { backUp } from '../../src/store/backup/backUp.ts';
import { openEngine } from '../../src/store/engine/either/openEngine.ts';
import { isAddress } from '../../src/store/engine/isAddress.ts';
import { dropExpired } from '../../src/store/lines/dropExpired.ts';
import { migrations } from '../../src/store/migrations/migrations.ts';
import { percentile } from './load.ts';
import { copyStudios } from './scale/copyStudios.ts';
import { oneDay, tellTimes, visitOne } from './scale/oneDay.ts';
import { buckets, entriesEach, makeTemplate } from './scale/templateStudio.ts';

/**
 * Many studios in one file or one database: how large it gets, how fast it answers under a day's load, what a backup
 * takes. `--studios 10000 --at big.db` (or `--at postgres://…`) keeps it, and goes on with it when it is there;
 * `--load-only` ends after that.
 */
const { values } = parseArgs({
  args: process.argv.slice(2),
  allowPositionals: true,
  options: {
    studios: { type: 'string', default: '200' },
    at: { type: 'string' },
    visits: { type: 'string', default: '2000' },
    'load-only': { type: 'boolean', default: false },
  },
});
const [studios, visits] = [Number(values.studios), Number(values.visits)];
const folder = mkdtempSync(join(tmpdir(), 'bench-scale-'));
const at = values.at ?? join(folder, 'studios.db');
const onServer = isAddress(at);
const mebibytes = (bytes: number): string => `${(bytes / 2 ** 20).toFixed(0)} MiB`;
const took = async <T>(what: string, work: () => Promise<T> | T): Promise<T> => {
  const began = performance.now();
  const done = await work();
  console.log(`${what}: ${((performance.now() - began) / 1_000).toFixed(2)} s`);
  return done;
};
const tellMemory = (when: string) => console.log(`memory ${when}: ${mebibytes(process.memoryUsage().rss)}`);

const query = async <Row extends object>(statement: string): Promise<Row | undefined> => {
  const client = new pg.Client(at);
  await client.connect();
  const { rows } = await client.query<Row>(statement);
  await client.end();
  return rows[0];
};
const sizeOf = async (): Promise<number> => {
  if (!onServer) return statSync(at).size;
  const row = await query<{ size: string }>('select pg_database_size(current_database()) as size');
  return Number(row?.size);
};
const isThere = async (): Promise<boolean> => {
  if (!onServer) return existsSync(at);
  return (await query<{ made: boolean }>("select to_regclass('studios') is not null as made"))?.made === true;
};

if (!(await isThere())) await makeTemplate(at, systemClock);
let told = 0;
await took(`${studios} studios of ${buckets} buckets with ${entriesEach} entries each`, () =>
  copyStudios(at, 1 + studios, (made, rate) => {
    told += 1;
    if (told % 5 === 0) console.log(`  ${made} studios, ${rate.toFixed(0)} rows a second`);
  }),
);
console.log(`its size: ${mebibytes(await sizeOf())}`);
if (values['load-only']) process.exit();

/** The system forgets what it keeps of the file. What it keeps of a server's is dropped by hand, before. */
const chill = () => {
  if (!onServer)
    spawnSync('dd', [`of=${at}`, 'oflag=nocache', 'conv=notrunc,fdatasync', 'count=0'], { stdio: 'ignore' });
};

const day = async (app: App, title: string, name: string, most: number, together: number) => {
  const { visits: made, seconds, processor } = await oneDay(app, name, { studios, visits: most, together });
  console.log(
    `${title}: ${(most / seconds).toFixed(0)} visits a second, ${processor.toFixed(1)} ms of the processor each`,
  );
  tellTimes(title, made);
};

chill();
const app = await took('opened', () => openApp({ file: at, clock: systemClock, onBug: console.error }));
tellMemory('when open');
await took('the first answer', () => visitOne(app, studios, 0));
await day(app, 'cold', 'morning', visits / 4, 1);
await day(app, 'warm, one at a time', 'day', visits, 1);
await day(app, 'warm, 16 at a time', 'evening', visits, 16);
tellMemory('after the day');
await took('every studio listed', () => app.store.people.studios());
await took('sessions and mornings planned for every studio', () =>
  app.store.reminders.plan(systemClock.now()),
);

if (!onServer) {
  const copy = join(folder, 'copy.db');
  await took('a backup while it runs', () => backUp(at, copy));
  console.log(`the backup: ${mebibytes(statSync(copy).size)}`);
  rmSync(copy);
}

const neighbours = Math.min(50, studios - 2);
/** What others wait for each answer until `over`, in studios that the store remembers. */
const waitsUntil = async (over: () => boolean): Promise<number[]> => {
  const waits: number[] = [];
  for (let n = 0; !over(); n += 1) waits.push((await visitOne(app, 1 + (n % neighbours), n)).took);
  return waits;
};
const tellWaits = (when: string, waits: readonly number[]) =>
  console.log(
    `what others wait ${when}: p50 ${percentile(waits, 0.5).toFixed(1)} ms, p99 ${percentile(waits, 0.99).toFixed(1)} ms, at most ${Math.max(...waits).toFixed(0)} ms`,
  );
const forget = async (external: string, name: string) => {
  const studio = await app.store.people.studioOf('bench', String(studios - 1), '');
  const member = await app.store.people.memberOf(studio, 'bench', external, name);
  const speaker = { studio, member, role: 'member', now: systemClock.now() } as const;
  const reply = await speak('/forget-me sure:yes', `bench:${process.pid}:${external}`, speaker, app);
  if (reply.kind !== 'answer') throw new Error(JSON.stringify(reply));
  let over = false;
  const erased = app.store.erased().then(() => (over = true));
  tellWaits(`while ${name} is forgotten`, await waitsUntil(() => over));
  await erased;
};
for (let n = 0; n < neighbours; n += 1) await visitOne(app, 1 + n, 0);
const quietUntil = performance.now() + 3_000;
tellWaits('otherwise', await waitsUntil(() => performance.now() >= quietUntil));
await took('the first forgotten', () => forget('tern', 'Tern'));
await took('another forgotten', () => forget('plover', 'Plover'));
tellMemory('at the end');
await app.store.close();

const engine = await openEngine(at, { waitMs: 5_000, migrations });
await took('what has expired, dropped', () => dropExpired(engine.turns, systemClock.now()));
await engine.close();
rmSync(folder, { recursive: true });
