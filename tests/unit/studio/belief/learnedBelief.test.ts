import { describe, expect, it } from 'vitest';
import { aged } from '../../../../src/studio/belief/aged.ts';
import { chancesOf } from '../../../../src/studio/belief/chances.ts';
import { counted, ownPlaces, together, type Belief } from '../../../../src/studio/belief/mixture.ts';
import { blindPress, priorDays, unlogged } from '../../../../src/studio/belief/priors.ts';
import { foldBucket } from '../../../../src/studio/bucket/fold/foldBucket.ts';
import { later, minutes, streamNo } from '../../../../src/studio/ids.ts';
import {
  dippingBucket,
  glazeRoomLife,
  keptLife,
  ordinaryFaults,
  quiet,
} from '../../../helpers/glazeRoomLife.ts';

const fold = (life: ReturnType<typeof glazeRoomLife>): Belief => {
  const state = foldBucket(streamNo(1), life.entries());
  if (!state) throw new Error('no setup');
  return state.belief;
};

const counts = (belief: Belief) => together(belief.components).counts;
describe('what a bucket teaches of its room', () => {
  it.each([0.02, 0.15])('finds how often strangers pour water in, %f a day', (waterPerDay) => {
    const lives = [1, 2, 3, 4].map((seed) => keptLife(seed, { ...quiet, waterPerDay, water: [0.5, 1] }, 120));
    const [found, came, days] = lives.reduce(
      (sums, life) => [
        sums[0] + (counts(fold(life))[counted.water] ?? 0),
        sums[1] + life.happened.water,
        sums[2] + life.happened.days,
      ],
      [0, 0, 0] as [number, number, number],
    );
    // What really came, within a quarter of it and an event or so a bucket.
    expect(Math.abs(found - came)).toBeLessThan(0.25 * came + 4);
    const rate = (4 * priorDays * unlogged.water.perDay + found) / (4 * priorDays + days);
    expect(rate).toBeGreaterThan(waterPerDay / 1.6);
    expect(rate).toBeLessThan(waterPerDay * 1.6);
  });

  it('finds how far a hydrometer is off, once it has stood beside the scale', () => {
    for (const hydrometer of [-0.008, 0.008]) {
      const life = glazeRoomLife(5, { ...quiet, hydrometer });
      for (let visit = 0; visit < 60; visit++) {
        life.wait(0.3);
        life.stir();
        life.weigh('weight');
        life.weigh('hydrometer');
      }
      const belief = fold(life);
      expect(belief.instruments).toEqual(['hydrometer']);
      expect(together(belief.components).mean[ownPlaces]).toBeCloseTo(hydrometer, 2);
    }
  });

  it('finds how many press “right” without a look', () => {
    const share = (blind: number) => {
      const all = [11, 12, 13].map((seed) =>
        counts(fold(keptLife(seed, { ...quiet, saltPerDay: 0.5, waterPerDay: 0.3, blind }, 100, 'one'))),
      );
      const sum = (at: number) => all.reduce((total, one) => total + (one[at] ?? 0), 0);
      return (3 * blindPress.blind + sum(counted.blind)) / (3 * blindPress.looks + sum(counted.looks));
    };
    const [few, many] = [share(0.05), share(0.7)];
    expect(few).toBeLessThan(0.25);
    expect(many).toBeGreaterThan(0.5);
  });

  it('is right as often as it says, over simulated buckets whose truth is known', () => {
    const bins = Array.from({ length: 5 }, () => ({ said: 0, true: 0, count: 0 }));
    for (let seed = 100; seed < 120; seed++) {
      const life = keptLife(seed, ordinaryFaults, 8);
      for (let visit = 0; visit < 12; visit++) {
        life.wait(0.2 + 4 * life.uniform());
        life.stir();
        if (life.uniform() < 0.6) life.look();
        if (life.uniform() < 0.4) life.weigh('weight', life.uniform() < 0.5);
        const belief = fold(life);
        const last = life.entries().at(-1);
        if (!last) throw new Error('no entry');
        const said =
          chancesOf(aged(belief, later(last.at, minutes(1)), dippingBucket), dippingBucket).both ?? NaN;
        const [g, s] = [life.gravityNow(), life.flowNow()];
        const right = g >= 1.415 && g <= 1.465 && s >= Math.log(12) - 0.07 && s <= Math.log(16) + 0.07;
        const bin = bins[Math.min(4, Math.floor(5 * said))];
        if (!bin) throw new Error('no bin');
        bin.said += said;
        bin.true += Number(right);
        bin.count++;
      }
    }
    for (const { said, true: right, count } of bins) {
      if (count < 20) continue;
      const share = said / count;
      // Three standard deviations of a share counted so often, and a tenth for what the model leaves out.
      expect(Math.abs(right / count - share)).toBeLessThan(
        0.1 + 3 * Math.sqrt((share * (1 - share)) / count),
      );
    }
  });
});
