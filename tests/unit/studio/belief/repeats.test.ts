import { describe, expect, it } from 'vitest';
import { coverage95 } from '../../../../src/glaze/statistics/normal.ts';
import { repeatability } from '../../../../src/glaze/statistics/repeatability.ts';
import { gravity, grams, millilitres, seconds } from '../../../../src/glaze/units.ts';
import { repeatsWorth, usualSeconds } from '../../../../src/studio/belief/priors.ts';
import type { BucketEvent } from '../../../../src/studio/bucket/bucketEvent.ts';
import { foldBucket } from '../../../../src/studio/bucket/fold/foldBucket.ts';
import { instant, streamNo } from '../../../../src/studio/ids.ts';
import { decide } from '../../../../src/studio/verdict/decide.ts';
import { entriesOf } from '../../../helpers/bucketArbitraries.ts';
import { dippingBucket } from '../../../helpers/glazeRoomLife.ts';
import { must } from '../../../helpers/glaze/must.ts';
import { seeded } from '../../../helpers/simulatedLogbook.ts';

const day = 24 * 60;
/** A brim-full 100 ml cup of glaze, ± 0.02 before it was repeated. */
const cup = { u95: 0.02, sd: 0.02 / 1.959964 };

const reading = (value: number, timed: number): BucketEvent => ({
  kind: 'reading',
  stirred: true,
  seen: [],
  gravity: { value: gravity(value), u95: cup.u95, by: 'weight' },
  flow: { cup: 'hall cup', kind: 'ford4', seconds: seconds(timed) },
});

/** Visits of two or three readings, minutes apart, of a bucket whose noise is known. */
const visits = (
  seed: number,
  noise: { weight: number; flow: number },
  between?: BucketEvent,
): { event: BucketEvent; minute: number }[] => {
  const { normal } = seeded(seed);
  const story: { event: BucketEvent; minute: number }[] = [
    { event: { kind: 'setup', settings: dippingBucket, volume: millilitres(15_000) }, minute: 0 },
  ];
  for (let visit = 1; visit <= 40; visit++)
    for (let again = 0; again < 2 + (visit % 2); again++) {
      const minute = visit * day + again * 4;
      if (between && again > 0) story.push({ event: between, minute: minute - 1 });
      story.push({
        event: reading(1.44 + noise.weight * normal(), 14 * Math.exp(noise.flow * normal())),
        minute,
      });
    }
  return story;
};

const folded = (story: { event: BucketEvent; minute: number }[]) => {
  const state = foldBucket(streamNo(1), entriesOf(story));
  if (!state) throw new Error('no setup');
  return state;
};

describe('how well readings of a bucket repeat', () => {
  it.each([
    { weight: 0.006, flow: 0.018 },
    { weight: 0.01, flow: 0.0255 },
    { weight: 0.015, flow: 0.05 },
  ])('comes back within its uncertainty: $weight in gravity, $flow in ln seconds', (noise) => {
    const inside = { weight: 0, flow: 0 };
    for (let seed = 1; seed <= 20; seed++) {
      const { repeats } = folded(visits(seed, noise)).belief;
      const isNear = (kind: string, usual: number, truth: number) => {
        const known = repeats?.[kind] ?? { count: 0, squares: 0 };
        const sd = must(repeatability({ sd: usual, worth: repeatsWorth, ...known }));
        // A standard deviation of n readings is known within itself/√(2n). JCGM 100:2008, E.4.3 (from memory)
        const within = (coverage95 * sd) / Math.sqrt(2 * (repeatsWorth + known.count));
        return Math.abs(sd - truth) <= within;
      };
      inside.weight += Number(isNear('weight', cup.sd, noise.weight));
      inside.flow += Number(isNear('cup hall cup', usualSeconds, noise.flow));
    }
    // 19 of 20 on the average; the belief from before pulls a little.
    expect(inside.weight).toBeGreaterThanOrEqual(16);
    expect(inside.flow).toBeGreaterThanOrEqual(16);
  });

  it('is what a weighing is shown with: a cup that repeats well is more exact, and never less than it said', () => {
    const careful = folded(visits(1, { weight: 0.003, flow: 0.02 })).believed;
    const rough = folded(visits(1, { weight: 0.018, flow: 0.02 })).believed;
    expect(careful?.u95).toBeLessThan(0.012);
    expect(rough?.u95).toBe(cup.u95);
  });

  it('is what seconds are shown with, once they were repeated', () => {
    const state = folded(visits(1, { weight: 0.003, flow: 0.02 }));
    const once = folded(visits(1, { weight: 0.003, flow: 0.02 }).slice(0, 2));
    const timed = ({ foldedTo }: { foldedTo: number }, of: typeof state) =>
      decide(of, { now: instant(foldedTo + 60_000), role: 'member' }).reasons.find(
        ({ because }) => because === 'efflux',
      );
    expect(timed(state, state)).toMatchObject({ u95: expect.closeTo(14 * 1.96 * 0.02, 0) });
    expect(timed(once, once)).not.toHaveProperty('u95');
  });

  it('is not learned across a change, nor from a slip of the hand', () => {
    const poured: BucketEvent = {
      kind: 'addition',
      added: { what: 'dry', mass: grams(10) },
    };
    expect(folded(visits(1, { weight: 0.003, flow: 0.02 }, poured)).belief.repeats).toBeUndefined();
    const slipped = [
      ...visits(1, { weight: 0.003, flow: 0.02 }).slice(0, 2),
      { event: reading(1.74, 41), minute: day + 3 },
    ];
    expect(folded(slipped).belief.repeats).toBeUndefined();
  });
});
