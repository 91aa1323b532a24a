import { setTimeout as sleep } from 'node:timers/promises';
import { parseArgs } from 'node:util';
import { systemClock } from '../../src/clock.ts';
import { openStore } from '../../src/store/openStore.ts';
import { slash } from '../helpers/discord/discordInteraction.ts';
import { BenchBot } from './benchBot.ts';
import { decisionsPerSecond } from './decisions.ts';
import { latencies, median, throughput, type Script } from './load.ts';
import { makePlaces } from './bots/places.ts';
import { Report } from './report.ts';

/**
 * Our bot against the minimal bot: each in its own process, alternating every second, in one run on one machine. Only
 * the ratios mean anything. With `--server postgres://…` each has a PostgreSQL database there, and two processes of ours are
 * set against one as well.
 */
const {
  values: { quick, server },
} = parseArgs({
  args: process.argv.slice(2),
  allowPositionals: true,
  options: { quick: { type: 'boolean', default: false }, server: { type: 'string' } },
});
const ROUNDS = quick ? 3 : 11;
const STARTS = quick ? 3 : 8;
const SECONDS = 1;

const bucketName = (n: number): string => `Bench Glaze ${(n % 10) + 1}`;
const reading: Script = (member, n) =>
  slash(member, ['reading'], {
    bucket: bucketName(n),
    gravity: (1.42 + (n % 7) / 100).toFixed(2),
    seconds: String(12 + (n % 5)),
    stirred: true,
  });
const question: Script = (member, n) => slash(member, ['water-or-stir'], { bucket: bucketName(n) });

const places = await makePlaces(server, ['ours', 'start-ours', 'inserting', 'start-inserting']);
const kinds = {
  ours: (name = 'ours', shard = 0) =>
    BenchBot.start('../../dist/run/main.js', {
      ...(server === undefined
        ? { DATABASE_FILE: places.of(name) }
        : { DATABASE_URL: places.of(name), SHARDS: `${shard}/2`, MONITOR_PORT: '0' }),
      LOG_LEVEL: 'error',
      ROOM: 'off',
    }),
  inserting: (name = 'inserting') => BenchBot.start('./bareBot.ts', { BARE_DATABASE: places.of(name) }),
  bare: () => BenchBot.start('./bareBot.ts', {}),
};

const report = new Report();

for (let round = 0; round < STARTS; round += 1) {
  const mine = await kinds.ours('start-ours');
  await mine.stop();
  const theirs = await kinds.inserting('start-inserting');
  await theirs.stop();
  // The first start creates the file and registers the commands, so it is not a typical restart.
  if (round === 0) continue;
  report.add('start to connected', 'ms', mine.started.connected, theirs.started.connected, '≤ 1.5');
  report.add('start to first answer', 'ms', mine.started.answered, theirs.started.answered, '');
  report.add('memory when ready', 'MiB', mine.memory, theirs.memory, '≤ 1.5');
}

const ours = await kinds.ours();
const inserting = await kinds.inserting();
const bare = await kinds.bare();

const must = async (what: string, used: ReturnType<BenchBot['use']>): Promise<void> => {
  const { interaction } = await used;
  const answered = JSON.stringify(interaction.acknowledged ?? 'nothing');
  if (!answered.includes('"flags":4,')) throw new Error(`${what} was refused: ${answered}`);
};
const addBuckets = async (bot: BenchBot): Promise<void> => {
  const keeper = { by: bot.discord.person('keeper', { manages: true }), channel: bot.discord.channel() };
  for (let n = 0; n < 10; n += 1) {
    const typed = { name: bucketName(n), pail: '19l', volume: '15l', gravity: '1.42-1.46', seconds: '12-16' };
    await must('a bucket', bot.use(slash(keeper, ['bucket', 'add'], { ...typed, cup: 'ford4' })));
  }
  await must('a reading', bot.use(reading(keeper, 0)));
};
// Ten seconds after its start the bot loads ahead what it answers questions from.
await sleep(12_000);
await addBuckets(ours);

const contests = [
  { what: '/reading', script: reading, floor: inserting, aim: { one: '≥ 0.75', many: '≥ 0.85' } },
  { what: '/water-or-stir', script: question, floor: bare, aim: { one: '', many: '' } },
];
for (const { script, floor } of contests)
  for (const bot of [ours, floor]) await throughput(bot, script, 16, 2 * SECONDS);

for (let round = 0; round < ROUNDS; round += 1)
  for (const { what, script, floor, aim } of contests)
    for (const inFlight of [1, 16, 64]) {
      const mine = await throughput(ours, script, inFlight, SECONDS);
      const theirs = await throughput(floor, script, inFlight, SECONDS);
      report.add(
        `${what}, ${inFlight} in flight`,
        '/s',
        mine.rate,
        theirs.rate,
        inFlight === 1 ? aim.one : aim.many,
      );
      report.add(
        `${what}, ${inFlight} in flight, processor`,
        'ms each',
        mine.processor,
        theirs.processor,
        '',
      );
    }

for (let round = 0; round < ROUNDS; round += 1)
  for (const { what, script, floor } of contests)
    for (const rate of [20, 100, 400]) {
      report.pool(`${what} at ${rate}/s`, 'ours', await latencies(ours, script, rate, SECONDS));
      report.pool(`${what} at ${rate}/s`, 'floor', await latencies(floor, script, rate, SECONDS));
    }

report.add('memory after all this', 'MiB', ours.memoryNow, inserting.memoryNow, '≤ 1.5');
const guild = ours.discord.world.guildId;
for (const bot of [inserting, bare]) await bot.stop();

/** Two processes on one database, each with a studio of its own, by how many times as many as one they answer. */
const twoProcesses = async (): Promise<number> => {
  const other = await kinds.ours('ours', 1);
  await addBuckets(other);
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const alone = await throughput(ours, reading, 16, SECONDS);
    const both = await Promise.all([ours, other].map((bot) => throughput(bot, reading, 16, SECONDS)));
    times.push(both.reduce((sum, { rate }) => sum + rate, 0) / alone.rate);
  }
  await other.stop();
  return median(times);
};
const more = server === undefined ? {} : { twoProcesses: await twoProcesses() };
await ours.stop();

const store = await openStore(places.of('ours'), { clock: systemClock });
const studio = await store.people.studioOf('discord', guild, '');
const buckets = await store.books.read(studio, (book) => book.buckets());
const decisions = decisionsPerSecond(buckets, systemClock.now(), 3 * SECONDS);
await store.close();
await places.clear();

console.log(report.table());
console.log(`the decision alone: ${Math.round(decisions)} for each second of the processor (aim: 100000)`);
console.log(
  '/reading is set against a bot with one durable insert, /water-or-stir against one without a database.',
);
if (more.twoProcesses !== undefined)
  console.log(
    `two processes, 16 in flight in a studio each, answer ${more.twoProcesses.toFixed(2)} times as many as one (aim: 1.7)`,
  );
report.write('bench-results.json', { decisions, ...more });
