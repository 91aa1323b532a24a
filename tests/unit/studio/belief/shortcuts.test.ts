import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addedByTie } from '../../../../src/glaze/statistics/bivariateNormal.ts';
import { normalCdf } from '../../../../src/glaze/statistics/normal.ts';
import { gravity } from '../../../../src/glaze/units.ts';
import { aged, agedView } from '../../../../src/studio/belief/aged.ts';
import { chancesOf } from '../../../../src/studio/belief/chances.ts';
import {
  nothingCounted,
  onlyContents,
  together,
  type Component,
} from '../../../../src/studio/belief/mixture.ts';
import { margin } from '../../../../src/studio/belief/priors.ts';
import { reduced } from '../../../../src/studio/belief/reduced.ts';
import { foldBucket } from '../../../../src/studio/bucket/fold/foldBucket.ts';
import { days, later, streamNo } from '../../../../src/studio/ids.ts';
import { widerThanWindow } from '../../../../src/studio/verdict/gravityBand.ts';
import { story } from '../../../helpers/bucketArbitraries.ts';
import { dippingBucket } from '../../../helpers/glazeRoomLife.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** An account with any spread, some of it next to nothing, and any correlation, some of them next to 1. */
const account = (least: number): fc.Arbitrary<Component> =>
  fc
    .tuple(
      fc.oneof(between(0.1, 1), between(2e-3, 2e-2)),
      fc.tuple(between(1.2, 1.7), between(1.5, 3.2), between(2, 3.3)),
      fc.tuple(
        ...[0.1, 0.7, 0.7].map((most) => fc.oneof(between(least, 10 * least), between(0.02 * most, most))),
      ),
      fc.tuple(...[0, 1, 2].map(() => fc.oneof(between(-1, 1), between(0.99, 1)))),
    )
    .map(([weight, mean, [a = 0, b = 0, c = 0], [r = 0, s = 0, t = 0]]) => {
      // L·Lᵀ is a spread that can be, whatever is in L.
      const rows = [
        [a, 0, 0],
        [b * r, b * Math.sqrt(1 - r * r), 0],
        [c * s, c * t * Math.sqrt(1 - s * s), c * Math.sqrt((1 - s * s) * (1 - t * t))],
      ];
      const covariance = rows.flatMap((one) =>
        rows.map((other) => one.reduce((sum, value, k) => sum + value * (other[k] ?? 0), 0)),
      );
      return { weight, mean, covariance, counts: nothingCounted };
    });
const accounts = fc.array(account(1e-7), { minLength: 1, maxLength: 9 }).map((all) => {
  const whole = all.reduce((sum, { weight }) => sum + weight, 0);
  return all.map((one) => ({ ...one, weight: one.weight / whole }));
});

/** The chances by the plain formulas, account by account. */
const plainly = (components: readonly Component[]) => {
  const { gravity: g, efflux } = dippingBucket;
  if (!g || !efflux) throw new Error('no windows');
  const f = { low: Math.log(efflux.low), high: Math.log(efflux.high) };
  const sums = { low: 0, in: 0, high: 0, thin: 0, flows: 0, thick: 0, both: 0 };
  for (const { weight, mean, covariance } of components) {
    const [meanG = NaN, , meanF = NaN] = mean;
    const sdG = Math.sqrt(Math.max(1e-12, covariance[0] ?? NaN));
    const sdF = Math.sqrt(Math.max(1e-12, covariance[8] ?? NaN));
    const r = Math.min(1, Math.max(-1, (covariance[2] ?? NaN) / (sdG * sdF)));
    const [byG, byF] = [(mark: number) => (mark - meanG) / sdG, (mark: number) => (mark - meanF) / sdF];
    const first = { low: byG(g.low - margin.gravity), high: byG(g.high + margin.gravity) };
    const second = { low: byF(f.low - margin.flow), high: byF(f.high + margin.flow) };
    const inG = normalCdf(first.high) - normalCdf(first.low);
    const inF = normalCdf(second.high) - normalCdf(second.low);
    sums.low += weight * normalCdf(byG(g.low));
    sums.high += weight * normalCdf(-byG(g.high));
    sums.thin += weight * normalCdf(byF(f.low));
    sums.thick += weight * normalCdf(-byF(f.high));
    sums.in += weight * inG;
    sums.flows += weight * inF;
    sums.both += weight * (inG * inF + addedByTie(first, second, r));
  }
  return sums;
};

/** By how much merging loses, every pair tried again at every step (Runnalls 2007, eq. 21, from memory). */
const mergedPlainly = (components: readonly Component[]): Component[] => {
  const logOf = ({ covariance: [a = 0, b = 0, c = 0, , e = 0, f = 0, , , i = 0] }: Component) =>
    Math.log(Math.max(1e-30, a * (e * i - f * f) - b * (b * i - f * c) + c * (b * f - e * c)));
  let left = [...components];
  while (left.length > 3) {
    let best = { loss: Infinity, i: 0, j: 0, merged: left[0] };
    left.forEach((one, i) =>
      left.slice(i + 1).forEach((other, k) => {
        const merged = together([one, other]);
        const loss =
          (merged.weight * logOf(merged) - one.weight * logOf(one) - other.weight * logOf(other)) / 2;
        if (loss < best.loss) best = { loss, i, j: i + 1 + k, merged };
      }),
    );
    const { i, j, merged } = best;
    left = left.flatMap((one, at) => (at === j ? [] : at === i && merged ? [merged] : [one]));
  }
  return left;
};

describe('what is reckoned by a shortcut', () => {
  it('chances are those of the plain formulas, however wide, narrow or tied an account is', () => {
    fc.assert(
      fc.property(accounts, (components) => {
        const plain = plainly(components);
        const { gravity: g, flow, both } = chancesOf({ components }, dippingBucket);
        const pairs = [
          [g?.low, plain.low],
          [g?.in, plain.in],
          [g?.high, plain.high],
          [flow?.thin, plain.thin],
          [flow?.in, plain.flows],
          [flow?.thick, plain.thick],
          [both ?? NaN, plain.both],
        ];
        for (const [quick = NaN, slow = NaN] of pairs)
          expect(Math.abs(quick - slow)).toBeLessThan(1e-12 * (1 + components.length));
      }),
      { numRuns: 500, endOnFailure: true },
    );
  });

  it('merges are those of every pair tried again at every step', () => {
    const many = fc.array(account(1e-3), { minLength: 4, maxLength: 9 });
    fc.assert(
      fc.property(many, (all) => {
        const whole = all.reduce((sum, { weight }) => sum + weight, 0);
        const components = all.map((one) => ({ ...one, weight: one.weight / whole }));
        const [quick, slow] = [reduced(components, dippingBucket), mergedPlainly(components)];
        expect(quick.length).toBe(3);
        quick.forEach((one, i) => {
          const other = slow[i];
          expect(one.weight).toBeCloseTo(other?.weight ?? NaN, 9);
          one.mean.forEach((value, at) => expect(value).toBeCloseTo(other?.mean[at] ?? NaN, 9));
          one.covariance.forEach((value, at) => expect(value).toBeCloseTo(other?.covariance[at] ?? NaN, 9));
        });
      }),
      { numRuns: 200, endOnFailure: true },
    );
  });

  it('a view tells of the contents what the belief tells that ages with its instruments, and changes nothing', () => {
    fc.assert(
      fc.property(story, between(0, 500), ({ entries, now }, gone) => {
        const state = foldBucket(streamNo(1), entries);
        if (!state) throw new Error('no setup');
        const before = structuredClone(state.belief);
        const then = later(now, days(gone));
        const whole = aged(state.belief, then, state.settings).components.map(onlyContents);
        expect(agedView(state.belief, then, state.settings).components).toStrictEqual(whole);
        expect(state.belief).toStrictEqual(before);
      }),
      { numRuns: 100, endOnFailure: true },
    );
  });

  it('an interval is wider than a window when it is shown so', () => {
    fc.assert(
      fc.property(between(0, 0.2), between(1.1, 1.6), between(0.001, 0.2), (u95, low, width) => {
        const shown = Number(u95.toFixed(u95 < 0.0095 ? 3 : 2));
        const window = { low: gravity(low), high: gravity(low + width) };
        expect(widerThanWindow(u95, window)).toBe(2 * shown > window.high - window.low + 1e-9);
      }),
      { numRuns: 2000, endOnFailure: true },
    );
  });
});
