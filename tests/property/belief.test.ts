import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grams, gravity, millilitres, seconds } from '../../src/glaze/units.ts';
import { aged, agedView } from '../../src/studio/belief/aged.ts';
import { chancesOf, insOf } from '../../src/studio/belief/chances.ts';
import { withInstrument } from '../../src/studio/belief/instruments.ts';
import { place, type Belief, type Component } from '../../src/studio/belief/mixture.ts';
import { withGlance, withReading } from '../../src/studio/belief/observed.ts';
import { reduced } from '../../src/studio/belief/reduced.ts';
import { noise } from '../../src/studio/belief/priors.ts';
import { middleFlow, startBelief } from '../../src/studio/belief/startBelief.ts';
import { withAdded } from '../../src/studio/belief/withAdded.ts';
import { wouldBeRight } from '../../src/studio/belief/wouldBeRight.ts';
import type { BucketEntry } from '../../src/studio/bucket/bucketEvent.ts';
import { foldBucket } from '../../src/studio/bucket/fold/foldBucket.ts';
import { days, instant, later, seq, streamNo } from '../../src/studio/ids.ts';
import { entriesOf, story } from '../helpers/bucketArbitraries.ts';
import { dippingBucket } from '../helpers/glazeRoomLife.ts';

const no = streamNo(1);
const start = instant(Date.UTC(2026, 2, 1));
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const beliefOf = (entries: readonly BucketEntry[]): Belief => {
  const state = foldBucket(no, entries);
  if (!state) throw new Error('no setup');
  return state.belief;
};

const rank3 = ({ mean, covariance }: Component) => {
  const size = mean.length;
  const p = (i: number, j: number) => covariance[i * size + j] ?? NaN;
  return (
    p(0, 0) * (p(1, 1) * p(2, 2) - p(1, 2) ** 2) -
    p(0, 1) * (p(0, 1) * p(2, 2) - p(1, 2) * p(0, 2)) +
    p(0, 2) * (p(0, 1) * p(1, 2) - p(1, 1) * p(0, 2))
  );
};

/** What must hold of a belief, whatever was logged. */
const sane = ({ components }: Pick<Belief, 'components'>) => {
  expect(components.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
  for (const one of components) {
    const { mean, covariance, counts, weight } = one;
    const size = mean.length;
    const p = (i: number, j: number) => covariance[i * size + j] ?? NaN;
    expect([weight, ...mean, ...covariance, ...counts].every(Number.isFinite)).toBe(true);
    expect(weight).toBeGreaterThan(0);
    for (let i = 0; i < size; i++) {
      expect(covariance[i * (size + 1)]).toBeGreaterThanOrEqual(0);
      for (let j = 0; j < size; j++)
        expect(Math.abs(p(i, j) - p(j, i))).toBeLessThanOrEqual(1e-9 * Math.sqrt(1 + p(i, i) * p(j, j)));
    }
    expect(rank3(one)).toBeGreaterThan(-1e-9 * (1e-9 + p(0, 0) * p(1, 1) * p(2, 2)));
    expect(counts.every((count) => count >= 0)).toBe(true);
  }
};

describe('a belief', () => {
  it('stays one whatever is logged: finite, few accounts, weights that sum to 1, spreads that can be', () => {
    fc.assert(
      fc.property(story, ({ entries, now }) => {
        const state = foldBucket(no, entries);
        if (!state) throw new Error('no setup');
        const { belief } = state;
        sane(belief);
        expect(belief.components.length).toBeLessThanOrEqual(3);
        const viewed = aged(belief, later(now, days(3)), state.settings);
        sane(viewed);
        const { gravity, flow, both } = chancesOf(viewed, state.settings);
        for (const chance of [...Object.values(gravity ?? {}), ...Object.values(flow ?? {}), both ?? 0]) {
          expect(chance).toBeGreaterThanOrEqual(0);
          expect(chance).toBeLessThanOrEqual(1 + 1e-9);
        }
      }),
      { numRuns: 120 },
    );
  });

  it('stays one under contradictions without end', () => {
    const odd = Array.from({ length: 300 }, (_, i) => [
      {
        kind: 'reading' as const,
        stirred: true,
        seen: [],
        gravity: { value: gravity(i % 2 ? 1.01 : 2.4), u95: 0.0005, by: 'weight' as const },
        flow: { cup: 'ford4', kind: 'ford4' as const, seconds: seconds(i % 2 ? 600 : 0.5) },
        look: i % 3 ? ('thin' as const) : ('thick' as const),
      },
      { kind: 'addition' as const, added: { what: 'draw-off' as const, volume: millilitres(200_000) } },
      { kind: 'addition' as const, added: { what: 'dry' as const, mass: grams(200_000) } },
    ]).flat();
    const belief = beliefOf(
      entriesOf([
        { event: { kind: 'setup', settings: dippingBucket }, minute: 0 },
        ...odd.map((event, i) => ({ event, minute: i })),
      ]),
    );
    sane(belief);
  });

  it('is the same when it is folded again, and in whatever order its entries are handed over', () => {
    fc.assert(
      fc.property(story, fc.integer({ min: 1, max: 1000 }), ({ entries }, shift) => {
        const turned = entries.map((_, i) => entries[(i + shift) % entries.length]).filter((one) => !!one);
        expect(beliefOf(entries)).toStrictEqual(beliefOf(entries));
        expect(beliefOf(turned)).toStrictEqual(beliefOf(entries));
      }),
      { numRuns: 60 },
    );
  });

  it('knows nothing of what was undone', () => {
    fc.assert(
      fc.property(story, fc.integer({ min: 1, max: 20 }), ({ entries }, pick) => {
        const undone = entries[1 + (pick % Math.max(1, entries.length - 1))];
        const last = entries.at(-1);
        fc.pre(undone !== undefined && last !== undefined && undone.event.kind !== 'setup');
        if (!undone || !last) return;
        const undo = { ...last, seq: seq(last.seq + 1), event: { kind: 'undo' as const, of: undone.seq } };
        expect(beliefOf([...entries, undo])).toStrictEqual(beliefOf(entries.filter((one) => one !== undone)));
      }),
      { numRuns: 60 },
    );
  });

  it('comes to the same whichever of two readings of one entry is reckoned first', () => {
    fc.assert(
      fc.property(between(1.38, 1.5), between(9, 20), between(0, 20), (g, s, gone) => {
        const from = aged(startBelief(start, dippingBucket, 15_000), later(start, days(gone)), dippingBucket);
        const weight = { at: place.gravity, value: g, sd: 0.0045 };
        const time = { at: place.flow, value: Math.log(s), sd: 0.05 };
        const one = {
          components: reduced(withReading(withReading(from.components, weight), time), dippingBucket),
        };
        const other = {
          components: reduced(withReading(withReading(from.components, time), weight), dippingBucket),
        };
        const [p, q] = [chancesOf(one, dippingBucket), chancesOf(other, dippingBucket)];
        expect(Math.abs((p.both ?? NaN) - (q.both ?? NaN))).toBeLessThan(2e-3);
      }),
      { numRuns: 60 },
    );
  });

  it('is carried by an addition as plain arithmetic carries it, and its spread as small differences do', () => {
    fc.assert(
      fc.property(
        between(1.3, 1.6),
        between(2, 30),
        between(-1, 3),
        between(1, 2.6),
        (g, litres, a, gamma) => {
          const [one] = startBelief(start, dippingBucket, 15_000).components;
          if (!one) throw new Error('no component');
          const at = (mean: number[]) =>
            withAdded({ ...one, mean }, { gravity: gamma, litres: a, sd: 0 }).mean;
          const mean = [g, Math.log(litres), 2.6];
          // Mass and volume add up; ten to a unit of gravity.
          const after = (litres * g + a * gamma) / (litres + a);
          const expected = [after, Math.log(litres + a), 2.6 + 10 * (after - g)];
          at(mean)
            .slice(0, 3)
            .forEach((value, i) => expect(value).toBeCloseTo(expected[i] ?? NaN, 10));
          const h = 1e-5;
          const slopes = [0, 1, 2].map((j) => {
            const moved = (by: number) => at(mean.map((value, i) => (i === j ? value + by : value)));
            const [up, down] = [moved(h), moved(-h)];
            return [0, 1, 2].map((i) => ((up[i] ?? 0) - (down[i] ?? 0)) / (2 * h));
          });
          const spread = [0.004, 0.03, 0.05];
          const covariance = mean.flatMap((_, i) =>
            mean.map((__, j) => (i === j ? (spread[i] ?? 0) ** 2 : 0)),
          );
          const p = withAdded({ ...one, mean, covariance }, { gravity: gamma, litres: a, sd: 0 }).covariance;
          for (const i of [0, 1, 2])
            for (const j of [0, 1, 2]) {
              const sum = [0, 1, 2].reduce(
                (all, k) => all + (slopes[k]?.[i] ?? 0) * (slopes[k]?.[j] ?? 0) * (spread[k] ?? 0) ** 2,
                0,
              );
              const ofSlope = i === 2 && j === 2 ? ((after - g) * 3) ** 2 : 0;
              expect(p[i * 3 + j]).toBeCloseTo(sum + ofSlope, 7);
            }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('keeps its mean and spread when accounts are taken together', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(between(1.3, 1.6), between(2.2, 3)), { minLength: 4, maxLength: 9 }),
        (ways) => {
          const [one] = startBelief(start, dippingBucket, 15_000).components;
          if (!one) throw new Error('no component');
          const many = ways.map(([g, z], i) => ({
            ...one,
            weight: (i + 1) / ((ways.length * (ways.length + 1)) / 2),
            mean: [g, 2.7, z],
          }));
          const moments = (components: readonly Component[]) => {
            const mean = components.reduce((sum, { weight, mean: [g = 0] }) => sum + weight * g, 0);
            return [
              mean,
              components.reduce(
                (sum, { weight, mean: [g = 0], covariance: [gg = 0] }) =>
                  sum + weight * (gg + (g - mean) ** 2),
                0,
              ),
            ];
          };
          const few = reduced(many, dippingBucket);
          expect(few.length).toBe(3);
          moments(few).forEach((value, i) => expect(value).toBeCloseTo(moments(many)[i] ?? NaN, 10));
        },
      ),
    );
  });

  it('is narrowed by a look and by a reading of any instrument, never widened in every account', () => {
    const { belief, at } = withInstrument(startBelief(start, dippingBucket, 15_000), 'hydrometer', 0.005);
    sane(belief);
    sane({
      components: withReading(belief.components, { at: place.gravity, value: 1.43, sd: 0.015, bias: at }),
    });
    for (const look of ['thin', 'right', 'thick'] as const)
      sane({ components: withGlance(belief.components, look, { low: 12, high: 16 }) });
  });

  it('is held against a bar as if what a look or seconds would leave of it were reckoned in full', () => {
    fc.assert(
      fc.property(story, between(0, 60), between(0, 1), ({ entries, now }, gone, bar) => {
        const state = foldBucket(no, entries);
        fc.pre(state?.settings.gravity !== undefined && state.settings.efflux !== undefined);
        if (!state?.settings.efflux) return;
        const { belief, settings } = state;
        const { components } = agedView(belief, later(now, days(gone)), settings);
        const seconds = { at: place.flow, value: middleFlow(settings), sd: noise.flow };
        const left = {
          look: withGlance(components, 'right', state.settings.efflux),
          seconds: withReading(components, seconds),
        };
        for (const by of ['look', 'seconds'] as const) {
          const { both } = chancesOf({ components: left[by] }, settings);
          if (both === null) throw new Error('no chance of both');
          const view = { components, ins: insOf(components, settings) };
          for (const sure of [bar, both - 1e-10, both + 1e-10])
            if (Math.abs(both - sure) > 5e-11)
              expect(wouldBeRight(view, by, settings, sure)).toBe(both >= sure);
        }
      }),
      { numRuns: 200 },
    );
  });
});
