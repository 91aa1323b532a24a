import { rooms, walkBuckets } from './learnedBuckets.ts';

/**
 * How reliable the learned dose is: simulated buckets with known truth, each dosed by both methods with the same random
 * errors.
 */
const buckets = process.argv.includes('--quick') ? 300 : 3000;

const percent = (part: number) => `${(100 * part).toFixed(1)} %`;
const began = performance.now();
const walked = rooms.map((room, i) => ({ room, ...walkBuckets(buckets, room, i + 1) }));
const proposals = walked.reduce((sum, one) => sum + one.proposals, 0);
const held = walked.reduce((sum, one) => sum + one.coverage * one.proposals, 0);

const table = [
  [
    '',
    'proposals',
    'coverage',
    'doses',
    'by ladder',
    'too thick',
    'by ladder',
    'more',
    'fewer',
    'rungs',
    '% of dry',
  ],
  ...walked.map(({ room, ...one }) => [
    room.name,
    String(one.proposals),
    percent(one.coverage),
    one.learned.doses.toFixed(2),
    one.ladder.doses.toFixed(2),
    percent(one.learned.tooThick),
    percent(one.ladder.tooThick),
    String(one.more),
    String(one.fewer),
    one.largestRungs.toFixed(2),
    one.mostPercent.toFixed(3),
  ]),
];
const widths = table[0]?.map((_, i) => Math.max(...table.map((row) => (row[i] ?? '').length))) ?? [];
for (const row of table)
  console.log(
    row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0))).join('  '),
  );
console.log(
  `\nall rooms: the 90 % interval held what was needed in ${percent(held / proposals)} of ${proposals} learned proposals (aim: 85 to 95 %)`,
);
console.log(
  `${buckets} buckets a room; more, fewer: doses beside the ladder's, of buckets that both brought into the window;`,
);
console.log('rungs: the most at once (limit 2); % of dry: the most since the remake (limit 0.2).');
console.log(`${((performance.now() - began) / 1000).toFixed(1)} s`);
