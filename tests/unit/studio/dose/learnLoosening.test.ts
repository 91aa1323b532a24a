import { describe, expect, it } from 'vitest';
import { gravity, seconds } from '../../../../src/glaze/units.ts';
import type { LoosenPoint } from '../../../../src/studio/bucket/bucketState.ts';
import { learnLoosening, stillThickAfter } from '../../../../src/studio/dose/learnLoosening.ts';
import { chance } from '../../../bench/pots/physics/chance.ts';

const point = (doses: number, steps: number, read: number | 'wont-run', at = 1.44): LoosenPoint => ({
  cup: 'hall cup',
  kind: 'own',
  doses,
  steps,
  gravity: gravity(at),
  seconds: read === 'wont-run' ? read : seconds(read),
});
const learn = (points: LoosenPoint[]) => learnLoosening({ points, cup: 'hall cup', gravity: gravity(1.44) });
const learned = (points: LoosenPoint[]) => {
  const found = learn(points);
  if (found.kind !== 'learned') throw new Error(found.kind);
  return found;
};

describe('what a drop of deflocculant does, by a bucket’s own readings', () => {
  it('is not known before a dose has a reading on each side, by one cup', () => {
    expect(learn([])).toEqual({ kind: 'not-enough' });
    expect(learn([point(0, 0, 24), point(0, 0, 25)])).toEqual({ kind: 'not-enough' });
    expect(learn([{ ...point(0, 0, 24), cup: 'other' }, point(1, 1, 18)])).toEqual({ kind: 'not-enough' });
  });

  it('is near the line when the readings lie on it, and the interval holds it', () => {
    // 30, 24, 19.2 s: each drop takes a fifth off, ln 0.8 = −0.223
    const { value, low, high } = learned([point(0, 0, 30), point(1, 1, 24), point(2, 2, 19.2)]);
    expect(low).toBeLessThan(Math.log(0.8));
    expect(high).toBeGreaterThan(Math.log(0.8));
    expect(Math.abs(value - Math.log(0.8))).toBeLessThan(0.02);
  });

  it('grows surer with more doses', () => {
    const width = (points: LoosenPoint[]) => {
      const { low, high } = learned(points);
      return high - low;
    };
    const few = [point(0, 0, 30), point(1, 1, 24)];
    expect(width([...few, point(2, 2, 19.2), point(3, 3, 15.4)])).toBeLessThan(width(few));
  });

  it('takes a cup that would not run for a time beyond its clock', () => {
    const { value } = learned([point(0, 0, 'wont-run'), point(1, 1, 20)]);
    // at least from 100 to 20 s: ln 0.2 = −1.61, and the prior, −0.3 ± 0.25, holds back
    expect(value).toBeLessThan(-0.3);
  });

  it.each([0.05, 0.15, 0.3, 0.5])(
    'states intervals that hold a known effect of −%s 85 to 97 times in a hundred',
    (effect) => {
      const luck = chance('loosening', effect);
      const buckets = 400;
      let held = 0;
      for (let i = 0; i < buckets; i++) {
        const start = 3 + luck.normal(0.3);
        const points = [0, 1, 2, 3].map((steps) =>
          // Two cup times repeat within 10 %, 19 times in 20: 3.6 % each (common practice).
          point(steps, steps, Math.exp(start - effect * steps + luck.normal(0.036))),
        );
        const { low, high } = learned(points);
        if (low <= -effect && -effect <= high) held++;
      }
      expect(held / buckets).toBeGreaterThanOrEqual(0.85);
      expect(held / buckets).toBeLessThanOrEqual(0.97);
    },
  );

  it('is to stop when two drops left it as thick as it was', () => {
    const thick = { cup: 'hall cup', window: { low: seconds(12), high: seconds(16) } };
    expect(stillThickAfter([point(0, 0, 24), point(1, 1, 24.5), point(2, 2, 23.5)], thick)).toBe(true);
    expect(stillThickAfter([point(0, 0, 24), point(1, 1, 22), point(2, 2, 20)], thick)).toBe(false);
    expect(stillThickAfter([point(0, 0, 16.5), point(1, 1, 16), point(2, 2, 15.9)], thick)).toBe(false);
  });

  it('goes on where drops helped, and it grew thick again between them', () => {
    const thick = { cup: 'hall cup', window: { low: seconds(12), high: seconds(16) } };
    // 24 to 18, then thick by itself, 25 to 19: each dose takes a quarter off
    const points = [point(0, 0, 24), point(1, 1, 18), point(1, 1, 25), point(2, 2, 19), point(2, 2, 26)];
    expect(stillThickAfter(points, thick)).toBe(false);
    expect(stillThickAfter([point(0, 0, 24), point(1, 1, 24), point(1, 1, 30), point(2, 2, 30)], thick)).toBe(
      true,
    );
  });

  it('takes one slow cup for a clogged one', () => {
    const thick = { cup: 'hall cup', window: { low: seconds(12), high: seconds(16) } };
    expect(stillThickAfter([point(0, 0, 24), point(2, 2, 19), point(2, 2, 26)], thick)).toBe(false);
  });
});
