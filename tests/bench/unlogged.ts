import { gravity, millilitres } from '../../src/glaze/units.ts';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';
import { bucketStates } from '../../src/studio/bucket/fold/foldBucket.ts';
import { days, streamNo, type Instant } from '../../src/studio/ids.ts';
import { glazeRoomLife, ordinaryFaults } from '../helpers/glazeRoomLife.ts';

/** What is found of the water that nobody logged, in simulated buckets whose strangers are known. */
const years = 40;
const visitsAYear = 330;

interface Poured {
  at: number;
  /** Of what was in the pail. */
  part: number;
}

interface Life {
  states: BucketState[];
  poured: Poured[];
  days: number;
}

/** People come about daily, weigh and time a cup, weigh again when it is off, and put it right. */
const lived = (seed: number): Life => {
  const life = glazeRoomLife(seed, { ...ordinaryFaults, waterPerDay: 0, hydrometer: 0 });
  const poured: Poured[] = [];
  let day = 0;
  for (let visit = 0; visit < visitsAYear; visit++) {
    const gone = 0.5 + life.uniform();
    life.wait(gone);
    day += gone;
    if (life.uniform() < 0.05 * gone) {
      const litres = 0.3 + 2.2 * life.uniform();
      poured.push({ at: life.minute(), part: litres / life.litres() });
      life.pour(litres, false);
    }
    life.stir();
    life.weigh('weight', true);
    if (Math.abs(life.gravityNow() - 1.44) > 0.01) {
      life.wait(3 / 1440);
      life.weigh('weight', true);
    }
    life.wait(3 / 1440);
    const off = life.gravityNow() - 1.44;
    if (off > 0.012) life.pour((life.litres() * off) / 0.42, true);
    if (off < -0.012) life.tip((life.litres() * -off) / 1.16);
    // Used up and made up again, so that the pail stays a pail.
    const whole = 15 / life.litres();
    life.log({
      kind: 'addition',
      added:
        whole > 1
          ? {
              what: 'glaze',
              own: true,
              volume: millilitres(1000 * (15 - life.litres())),
              gravity: gravity(life.gravityNow()),
            }
          : { what: 'taken', volume: millilitres(1000 * (life.litres() - 15)) },
    });
    life.pail.water *= whole;
    life.pail.powder *= whole;
  }
  return { states: [...bucketStates(streamNo(1), life.entries())], poured, days: day };
};

const toldAt = (states: readonly BucketState[]): Instant[] => {
  const seen = new Set<number>();
  return states.flatMap(({ unlogged }) =>
    (unlogged ?? []).flatMap(({ what, to, found }) => {
      if (seen.has(to.seq)) return [];
      seen.add(to.seq);
      return what === 'water-in' ? [found.at] : [];
    }),
  );
};

const week = days(7);
const sum = { large: 0, largeFound: 0, some: 0, someFound: 0, false: 0, days: 0 };
for (let year = 1; year <= years; year++) {
  const { states, poured, days: gone } = lived(year);
  const start = states[0]?.foldedTo ?? 0;
  const reports = toldAt(states).map((at) => at - start);
  sum.days += gone;
  const events = poured.map(({ at, part }) => ({ at: at * 60_000, part }));
  for (const { at, part } of events) {
    const found = reports.some((report) => report >= at && report - at <= week);
    if (part >= 0.1) [sum.large, sum.largeFound] = [sum.large + 1, sum.largeFound + Number(found)];
    if (part >= 0.03) [sum.some, sum.someFound] = [sum.some + 1, sum.someFound + Number(found)];
  }
  sum.false += reports.filter(
    (report) => !events.some(({ at, part }) => part >= 0.02 && report >= at && report - at <= week),
  ).length;
}
const percent = (part: number, of: number) => `${((100 * part) / of).toFixed(1)} % of ${of}`;
console.log(
  `found ${percent(sum.largeFound, sum.large)} of 10 % and more (aim: 95 %), ${percent(sum.someFound, sum.some)} of 3 % and more; ${((365 * sum.false) / sum.days).toFixed(2)} false alarms a bucket-year (aim: 0.5)`,
);
