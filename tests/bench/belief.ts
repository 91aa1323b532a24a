import { aged } from '../../src/studio/belief/aged.ts';
import { chancesOf } from '../../src/studio/belief/chances.ts';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';
import { applyToBelief } from '../../src/studio/bucket/applyToBelief.ts';
import { bucketStates, foldBucket } from '../../src/studio/bucket/foldBucket.ts';
import { days, later, streamNo } from '../../src/studio/ids.ts';
import { glazeRoomLife } from '../helpers/glazeRoomLife.ts';

/** What a belief costs: one entry's fold, a whole bucket's, and a verdict's chances. */
const life = glazeRoomLife(7);
while (life.entries().length < 2000) {
  for (let visits = 0; visits < 100; visits++) {
    life.wait(0.05 + 1.5 * life.uniform() ** 2);
    life.stir();
    life.look(life.uniform() < 0.5 ? 'wren' : 'odile');
    if (life.uniform() < 0.5)
      life.weigh(life.uniform() < 0.3 ? 'hydrometer' : 'weight', life.uniform() < 0.6);
    const off = life.gravityNow() - 1.44;
    if (off > 0.02) life.pour((life.litres() * (off / 0.42)) / 1, true);
    if (off < -0.02) life.tip((life.litres() * -off) / 1.18);
    // Used up and made up again, so that the pail stays a pail.
    const whole = 15 / life.litres();
    life.pail.water *= whole;
    life.pail.powder *= whole;
  }
}
const entries = life.entries().slice(0, 2000);
const no = streamNo(1);

const percentile = (values: readonly number[], part: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(part * (values.length - 1))] ?? NaN;

const timed = (work: () => void): number => {
  const began = performance.now();
  work();
  return performance.now() - began;
};

const whole = Array.from({ length: 9 }, () => timed(() => void foldBucket(no, entries)));

const each: number[] = [];
const chances: Record<'hour' | 'month', number[]> = { hour: [], month: [] };
const bySeq = new Map(entries.map((entry) => [entry.seq, entry]));
for (let round = 0; round < 3; round++) {
  let before: BucketState | undefined;
  for (const after of bucketStates(no, entries)) {
    const entry = bySeq.get(after.seq);
    const from = before;
    before = after;
    if (!entry || !from) continue;
    const spent = timed(() => void applyToBelief(from.belief, { entry, before: from, after }));
    if (round === 0) continue;
    if (after.belief !== from.belief) each.push(spent);
    for (const [name, gone] of [
      ['hour', 1 / 24],
      ['month', 30],
    ] as const)
      chances[name].push(
        timed(
          () =>
            void chancesOf(aged(after.belief, later(entry.at, days(gone)), after.settings), after.settings),
        ),
      );
  }
}

const micro = (ms: number) => `${(1000 * ms).toFixed(0)} µs`;
console.log(
  `an entry that bears on the contents: median ${micro(percentile(each, 0.5))}, 99 % ${micro(percentile(each, 0.99))}, most ${micro(percentile(each, 1))} (aim: 200 µs)`,
);
console.log(`${entries.length} entries: ${percentile(whole, 0.5).toFixed(0)} ms (aim: 100 ms)`);
for (const name of ['hour', 'month'] as const)
  console.log(
    `chances a ${name} later: median ${micro(percentile(chances[name], 0.5))}, 99 % ${micro(percentile(chances[name], 0.99))}`,
  );
