import { startBelief } from '../../src/studio/belief/startBelief.ts';
import { aged } from '../../src/studio/belief/aged.ts';
import { chancesOf } from '../../src/studio/belief/chances.ts';
import type { Belief } from '../../src/studio/belief/mixture.ts';
import { applyToBelief } from '../../src/studio/bucket/applyToBelief.ts';
import { foldBelief } from '../../src/studio/bucket/foldBelief.ts';
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

const whole = Array.from({ length: 9 }, () => timed(() => void foldBelief(no, entries)));
const plain = Array.from({ length: 9 }, () => timed(() => void foldBucket(no, entries)));

const each: number[] = [];
const chances: Record<'hour' | 'month', number[]> = { hour: [], month: [] };
for (let round = 0; round < 3; round++) {
  const bySeq = new Map(entries.map((entry) => [entry.seq, entry]));
  let [belief, before]: [Belief | undefined, ReturnType<typeof foldBucket>] = [undefined, undefined];
  for (const after of bucketStates(no, entries)) {
    const entry = bySeq.get(after.seq);
    if (!entry) continue;
    if (!belief || !before) belief = startBelief(entry.at, after.settings);
    else {
      const was: Belief = belief;
      const from = before;
      let now: Belief = was;
      const spent = timed(() => void (now = applyToBelief(was, { entry, before: from, after, cups: [] })));
      if (round > 0 && now !== was) each.push(spent);
      belief = now;
      for (const [name, gone] of [
        ['hour', 1 / 24],
        ['month', 30],
      ] as const) {
        const last = now;
        const cost = timed(
          () => void chancesOf(aged(last, later(entry.at, days(gone)), after.settings), after.settings),
        );
        if (round > 0) chances[name].push(cost);
      }
    }
    before = after;
  }
}

const micro = (ms: number) => `${(1000 * ms).toFixed(0)} µs`;
console.log(
  `an entry that bears on the contents: median ${micro(percentile(each, 0.5))}, 99 % ${micro(percentile(each, 0.99))}, most ${micro(percentile(each, 1))} (aim: 200 µs)`,
);
console.log(
  `${entries.length} entries: ${percentile(whole, 0.5).toFixed(0)} ms with the state, ${percentile(plain, 0.5).toFixed(0)} ms the state alone (aim: 100 ms)`,
);
for (const name of ['hour', 'month'] as const)
  console.log(
    `chances a ${name} later: median ${micro(percentile(chances[name], 0.5))}, 99 % ${micro(percentile(chances[name], 0.99))}`,
  );
