import { aged } from '../../src/studio/belief/aged.ts';
import { chancesOf } from '../../src/studio/belief/chances.ts';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';
import { withStir } from '../../src/studio/bucket/fold/applyObservations.ts';
import { applyToBelief } from '../../src/studio/bucket/fold/applyToBelief.ts';
import { bucketStates, foldBucket } from '../../src/studio/bucket/fold/foldBucket.ts';
import { days, later, streamNo } from '../../src/studio/ids.ts';
import { decide } from '../../src/studio/verdict/decide.ts';
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

/** Of the processor, in milliseconds: what else runs on the machine hardly counts. */
const spent = (work: () => void): number => {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
};

const whole = Array.from({ length: 9 }, () => spent(() => void foldBucket(no, entries)));

const bySeq = new Map(entries.map((entry) => [entry.seq, entry]));
/** The least of some rounds for each entry: another program's turn in one of them is no cost of ours. */
const least = {
  entry: new Map<number, number>(),
  hour: new Map<number, number>(),
  month: new Map<number, number>(),
};
const note = (times: Map<number, number>, seq: number, took: number) =>
  times.set(seq, Math.min(took, times.get(seq) ?? Infinity));
for (let round = 0; round < 7; round++) {
  let before: BucketState | undefined;
  for (const after of bucketStates(no, entries)) {
    const entry = bySeq.get(after.seq);
    const from = before;
    before = after;
    if (!entry || !from) continue;
    const took = timed(() => void applyToBelief(from.belief, { entry, before: from, after }));
    if (after.belief !== from.belief) note(least.entry, after.seq, took);
    for (const [name, gone] of [
      ['hour', 1 / 24],
      ['month', 30],
    ] as const) {
      const then = later(entry.at, days(gone));
      note(
        least[name],
        after.seq,
        timed(() => void chancesOf(aged(after.belief, then, after.settings), after.settings)),
      );
    }
  }
}
const each = [...least.entry.values()];
const chances = { hour: [...least.hour.values()], month: [...least.month.values()] };

/** Stirred just now: what is asked a hundred times as often as anything is logged. */
const stirredStates = [...bucketStates(no, entries)].slice(-200);
const perSecond = (gone: number): number => {
  const asked = stirredStates.map((state) => {
    const now = later(state.foldedTo, days(gone));
    return { state: withStir(state, { at: now }), now };
  });
  const took = Array.from({ length: 9 }, () =>
    spent(() => {
      for (let again = 0; again < 20; again++)
        for (const { state, now } of asked) decide(state, { now, role: 'member' });
    }),
  );
  return (1000 * 20 * asked.length) / percentile(took, 0.5);
};

const micro = (ms: number) => `${(1000 * ms).toFixed(0)} µs`;
console.log(
  `an entry that bears on the contents: median ${micro(percentile(each, 0.5))}, 99 % ${micro(percentile(each, 0.99))}, most ${micro(percentile(each, 1))} (aim: 200 µs)`,
);
console.log(`${entries.length} entries: ${percentile(whole, 0.5).toFixed(0)} ms (aim: 100 ms)`);
for (const [name, gone] of [
  ['an hour', 1 / 24],
  ['a day', 1],
  ['a month', 30],
] as const)
  console.log(`decisions ${name} later: ${Math.round(perSecond(gone))} a second (aim within a day: 100000)`);
for (const name of ['hour', 'month'] as const)
  console.log(
    `chances a ${name} later: median ${micro(percentile(chances[name], 0.5))}, 99 % ${micro(percentile(chances[name], 0.99))}`,
  );
