import { speak } from '../../src/desk/speak.ts';
import { readPlainLine } from '../../src/parse/plain/readPlainLine.ts';
import { demoStudio } from '../helpers/demoStudio.ts';
import { median, percentile } from './load.ts';

/** How long a line in plain words takes: to be read, and to be answered among the demo's twelve buckets. */
const lines = [
  'gull grey',
  'gul gray 1,46 13s',
  'gull grey 1.46 13 sec stirred',
  '4 1.46 after stir 10 min',
  'bucket 4 229.9g cup A 14sec',
  '4: stirred 5 min',
  'added 500ml water to 4',
  'sieved 4',
  'added 500 ml water and a splash of bleach to 4',
  'the reading on gull grey was 1.44 and it ran out in 14 seconds after I stirred it',
  'why is my glaze pinholing',
  'glaze '.repeat(95),
  Array.from({ length: 90 }, (_, i) => `wrd${i}x`).join(' '),
  'x'.repeat(4000),
  '9'.repeat(4000),
  'gull grey 1.46 '.repeat(260),
];
const demo = await demoStudio('2026-05-20T21:00:00Z');
const who = { ...(await demo.as('Wren')), now: demo.now };
const buckets = await demo.app.store.books.read(demo.studio, (book) => book.buckets());
const world = { buckets, units: 'metric', vessels: ['steel cup'], cups: ['hall cup'] } as const;

const timed = async (work: (line: string) => unknown, line: string) => {
  const start = performance.now();
  await work(line);
  return performance.now() - start;
};
const answer = (line: string) => speak(line, `plain-${Math.random()}`, who, demo.app);
for (let round = 0; round < 3; round += 1) for (const line of lines) await answer(line);
const rows = [];
for (const line of lines) {
  const [reads, answers]: [number[], number[]] = [[], []];
  for (let round = 0; round < 40; round += 1) {
    reads.push(await timed((one) => readPlainLine(one, world), line));
    answers.push(await timed(answer, line));
  }
  rows.push({ line, reads, answers });
}
const ms = (value: number) => `${value.toFixed(2)} ms`.padStart(10);
for (const { line, reads, answers } of rows)
  console.log(
    `read ${ms(median(reads))} ${ms(percentile(reads, 0.95))}  answered ${ms(median(answers))} ${ms(percentile(answers, 0.95))}  ${line.slice(0, 60)}`,
  );
console.log('in the middle, and for 95 in 100; aim: read in 20 ms');
await demo.close();
