import { fork, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import pg from 'pg';
import { z } from 'zod';
import { median } from '../load.ts';

/**
 * `/reading` at the desk on PostgreSQL against one durable insert there, and two processes against one, each with a
 * studio of its own. `--server postgres://…` is a server with `fsync` on where databases may be made.
 */
const { values } = parseArgs({
  args: process.argv.slice(2),
  allowPositionals: true,
  options: { server: { type: 'string' }, quick: { type: 'boolean', default: false } },
});
if (values.server === undefined) throw new Error('say where: --server postgres://…');
const ROUNDS = values.quick ? 3 : 9;
const database = 'glaze_bench';
const admin = new pg.Client(values.server);
await admin.connect();
await admin.query(`drop database if exists ${database} with (force)`);
await admin.query(`create database ${database}`);
const address = new URL(values.server);
address.pathname = `/${database}`;

const measured = z.object({ rate: z.number(), processor: z.number() });
const start = async (studio: string): Promise<ChildProcess> => {
  const child = fork(fileURLToPath(new URL('./deskOnPostgres.ts', import.meta.url)), [address.href, studio]);
  await once(child, 'message');
  return child;
};
const measure = async (child: ChildProcess, what: 'reading' | 'insert', inFlight: number) => {
  const told = once(child, 'message');
  child.send({ what, inFlight });
  return measured.parse((await told)[0]);
};
const one = await start('one');
const other = await start('other');

for (const inFlight of [1, 16, 64]) {
  const rounds: { ours: number; bare: number; processor: number; bareProcessor: number }[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const [ours, bare] = [await measure(one, 'reading', inFlight), await measure(one, 'insert', inFlight)];
    rounds.push({
      ours: ours.rate,
      bare: bare.rate,
      processor: ours.processor,
      bareProcessor: bare.processor,
    });
  }
  const of = (work: (round: (typeof rounds)[number]) => number) => median(rounds.map(work));
  console.log(
    `${inFlight} in flight: /reading ${of(({ ours }) => ours).toFixed(0)} a second (${of(({ processor }) => processor).toFixed(2)} ms of its processor each), one insert ${of(({ bare }) => bare).toFixed(0)} (${of(({ bareProcessor }) => bareProcessor).toFixed(2)} ms), ratio ${of(({ ours, bare }) => ours / bare).toFixed(2)}`,
  );
}

const ratios: number[] = [];
for (let round = 0; round < ROUNDS; round += 1) {
  const alone = await measure(one, 'reading', 16);
  const both = await Promise.all([measure(one, 'reading', 16), measure(other, 'reading', 16)]);
  ratios.push(both.reduce((sum, { rate }) => sum + rate, 0) / alone.rate);
}
console.log(`two processes, 16 in flight each, answer ${median(ratios).toFixed(2)} times as many as one`);

for (const child of [one, other]) child.kill();
await admin.query(`drop database if exists ${database} with (force)`);
await admin.end();
