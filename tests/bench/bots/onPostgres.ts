import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import pg from 'pg';
import { BenchBot } from '../benchBot.ts';
import { median, throughput } from '../load.ts';
import { Report } from '../report.ts';
import { fillStudio, question, reading } from './scripts.ts';

/**
 * Our bot on PostgreSQL against the minimal bot with one durable insert there, and two processes against one, each with
 * a studio of its own. `--server postgres://…` is a server on this machine, with `fsync` on, where databases may be made.
 */
const { values } = parseArgs({
  args: process.argv.slice(2),
  allowPositionals: true,
  options: { server: { type: 'string' }, quick: { type: 'boolean', default: false } },
});
if (values.server === undefined) throw new Error('say where: --server postgres://…');
const server = values.server;
const ROUNDS = values.quick ? 3 : 9;
const SECONDS = 1;
const TOGETHER = 16;

const admin = new pg.Client(server);
await admin.connect();
const [ourDatabase, bareDatabase] = ['glaze_bench_ours', 'glaze_bench_bare'];
const drop = async () => {
  for (const name of [ourDatabase, bareDatabase])
    await admin.query(`drop database if exists ${name} with (force)`);
};
await drop();
for (const name of [ourDatabase, bareDatabase]) await admin.query(`create database ${name}`);
const address = (database: string): string => {
  const url = new URL(server);
  url.pathname = `/${database}`;
  return url.href;
};

const ours = (more: Record<string, string>) =>
  BenchBot.start('../../dist/run/main.js', {
    DATABASE_URL: address(ourDatabase),
    LOG_LEVEL: 'error',
    ROOM: 'off',
    MONITOR_PORT: 'off',
    ...more,
  });
const one = await ours({ SHARDS: '0/2' });
const other = await ours({ SHARDS: '1/2', REMINDERS: 'off' });
const bare = await BenchBot.start('./bareBot.ts', { BARE_DATABASE: address(bareDatabase) });
for (const bot of [one, other]) await fillStudio(bot);
for (const bot of [one, other, bare]) await throughput(bot, reading, TOGETHER, 2 * SECONDS);

const report = new Report();
for (let round = 0; round < ROUNDS; round += 1)
  for (const inFlight of [1, 16, 64])
    for (const [what, script] of [
      ['/reading', reading],
      ['/water-or-stir', question],
    ] as const) {
      const mine = await throughput(one, script, inFlight, SECONDS);
      const theirs = await throughput(bare, script, inFlight, SECONDS);
      report.add(`${what}, ${inFlight} in flight`, '/s', mine.rate, theirs.rate, '');
      report.add(
        `${what}, ${inFlight} in flight, processor`,
        'ms each',
        mine.processor,
        theirs.processor,
        '',
      );
    }
console.log(report.table());

/** Milliseconds of the processor that the server’s processes have used. */
const serverTime = async (): Promise<number> => {
  const { rows } = await admin.query<{ pid: number }>('select pid from pg_stat_activity');
  return rows
    .map(({ pid }) => {
      const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
        .replace(/^.*\) /s, '')
        .split(' ');
      return 10 * (Number(fields[11]) + Number(fields[12]));
    })
    .reduce((sum, each) => sum + each, 0);
};

/** How many a second these bots answer together, and the processor’s milliseconds each in bots, server and driver. */
const together = async (bots: readonly BenchBot[]) => {
  const spent = async () => ({
    bots: bots.reduce((sum, bot) => sum + bot.processorTime, 0),
    server: await serverTime(),
    driver: process.cpuUsage().user / 1_000 + process.cpuUsage().system / 1_000,
  });
  const before = await spent();
  const rates = await Promise.all(bots.map((bot) => throughput(bot, reading, TOGETHER, 2 * SECONDS)));
  const after = await spent();
  const rate = rates.reduce((sum, each) => sum + each.rate, 0);
  const each = (part: keyof typeof before) => (after[part] - before[part]) / (rate * 2 * SECONDS);
  return { rate, bots: each('bots'), server: each('server'), driver: each('driver') };
};

const singly: Awaited<ReturnType<typeof together>>[] = [];
const both: typeof singly = [];
for (let round = 0; round < ROUNDS; round += 1) {
  singly.push(await together([one]));
  both.push(await together([one, other]));
}
for (const [what, rounds] of [
  ['one process', singly],
  ['two processes', both],
] as const) {
  const of = (part: keyof (typeof rounds)[number]) => median(rounds.map((round) => round[part]));
  const parts = (['bots', 'server', 'driver'] as const).map((part) => `${part} ${of(part).toFixed(2)}`);
  console.log(
    `${what}, /reading: ${of('rate').toFixed(0)} a second; milliseconds of the processor each: ${parts.join(', ')}`,
  );
}
const ratio = median(both.map((round, i) => round.rate / (singly[i]?.rate ?? Number.NaN)));
console.log(`two processes answer ${ratio.toFixed(2)} times as many as one`);

for (const bot of [one, other, bare]) await bot.stop();
await drop();
await admin.end();
