import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { z } from 'zod';
import { systemClock } from '../../../src/clock.ts';
import { speak } from '../../../src/desk/speak.ts';
import { openApp } from '../../../src/start/app.ts';
import type { Role } from '../../../src/studio/ids.ts';

/** A process of its own with one studio, which logs readings or inserts rows for a second whenever it is asked to. */
const [address = '', external = ''] = process.argv.slice(2);
const buckets = 10;
const milliseconds = 1_000;

const app = await openApp({ file: address, clock: systemClock, onBug: console.error });
const studio = await app.store.people.studioOf('bench', external, external);
const member = await app.store.people.memberOf(studio, 'bench', 'wren', 'Wren');
const say = async (line: string, role: Role = 'member') => {
  const who = { studio, member, role, now: systemClock.now() };
  const reply = await speak(line, randomUUID(), who, app);
  if (reply.kind !== 'answer') throw new Error(`${line}: ${JSON.stringify(reply.title)}`);
};
for (let n = 1; n <= buckets; n += 1)
  await say(`/bucket add name:"Bench ${n}" pail:19l volume:15l gravity:1.42-1.46 seconds:12-16`, 'keeper');

const pool = new pg.Pool({ connectionString: address, max: 10 });
await pool.query('create table if not exists used (id text primary key, typed text not null)');

const works = {
  reading: (n: number) =>
    say(
      `/reading bucket:${1 + (n % buckets)} gravity:${(1.42 + (n % 7) / 100).toFixed(2)} seconds:${12 + (n % 5)} stirred:yes`,
    ),
  insert: async (n: number) => {
    const text = 'insert into used (id, typed) values ($1, $2)';
    await pool.query({ name: 'insert', text, values: [randomUUID(), `a reading as it was typed, ${n}`] });
  },
};

const asked = z.object({ what: z.enum(['reading', 'insert']), inFlight: z.number() });
const measure = async (message: unknown): Promise<void> => {
  const { what, inFlight } = asked.parse(message);
  const [began, busy] = [performance.now(), process.cpuUsage()];
  let done = 0;
  const worker = async () => {
    while (performance.now() < began + milliseconds) {
      await works[what](done);
      done += 1;
    }
  };
  await Promise.all(Array.from({ length: inFlight }, worker));
  const { user, system } = process.cpuUsage(busy);
  const rate = (done * 1_000) / (performance.now() - began);
  process.send?.({ rate, processor: (user + system) / 1_000 / done });
};
for (let n = 0; n < 100; n += 1) await works.reading(n);
process.on('message', (message) => void measure(message));
process.send?.('ready');
