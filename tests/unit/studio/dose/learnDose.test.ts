import { describe, expect, it } from 'vitest';
import { grams, gravity, seconds } from '../../../../src/glaze/units.ts';
import type { FlowPoint } from '../../../../src/studio/bucket/bucketState.ts';
import { learnDose } from '../../../../src/studio/dose/learnDose.ts';
import { rooms, walkBuckets } from '../../../bench/learnedBuckets.ts';

const window = { low: seconds(12), high: seconds(16) };
const point = (doses: number, read: number | 'wont-run', at = 1.44): FlowPoint => ({
  cup: 'ford4',
  kind: 'ford4',
  doses,
  salt: grams(doses * 3.2),
  percent: doses * 0.03,
  gravity: gravity(at),
  seconds: read === 'wont-run' ? read : seconds(read),
});
const learn = (points: FlowPoint[], at = 1.44) =>
  learnDose({
    points,
    cup: 'ford4',
    window,
    gravity: gravity(at),
    percent: points.at(-1)?.percent ?? 0,
  });
const learned = (points: FlowPoint[], at = 1.44) => {
  const found = learn(points, at);
  if (found.kind !== 'learned') throw new Error(found.kind);
  return found;
};

describe('what a bucket’s readings say of its next dose', () => {
  it('is nothing until two doses have a reading on each side', () => {
    expect(learn([])).toEqual({ kind: 'not-enough' });
    expect(learn([point(0, 7), point(1, 8)])).toEqual({ kind: 'not-enough' });
    expect(learn([point(0, 7), point(1, 8), point(1, 8.1)])).toEqual({ kind: 'not-enough' });
  });

  it('leaves readings by another cup out', () => {
    const other = { ...point(0, 7), cup: 'zahn2', kind: 'zahn2' } as const;
    expect(learn([other, point(1, 8), point(2, 9)])).toEqual({ kind: 'not-enough' });
  });

  it('is the straight line’s own crossing when the readings lie on it', () => {
    // ln(t − 4.75) = 0.8 + 0.4 a rung: 6.98, 8.07, 9.70 s; mid-window, ln(14 − 4.75) = 2.2246, is at 3.56 rungs: 1.56 more
    const { interval, doseSteps: rungs } = learned([point(0, 6.98), point(1, 8.07), point(2, 9.7)]);
    expect(interval.low).toBeLessThan(1.56);
    expect(interval.high).toBeGreaterThan(1.56);
    expect(rungs).toBeGreaterThan(1);
    expect(rungs).toBeLessThanOrEqual(2);
  });

  it('grows surer with more readings', () => {
    const few = learned([point(0, 6.98), point(1, 8.07), point(2, 9.7)]);
    const many = learned([
      point(0, 6.98),
      point(0, 7),
      point(1, 8.07),
      point(1, 8.1),
      point(2, 9.7),
      point(2, 9.68),
    ]);
    expect((many.interval.high ?? Infinity) - many.interval.low).toBeLessThan(
      (few.interval.high ?? Infinity) - few.interval.low,
    );
  });

  it('asks for less in a bucket whose gravity has risen since', () => {
    const points = [point(0, 6.98), point(1, 8.07), point(2, 9.7)];
    const same = learned(points).interval;
    const risen = learned(points, 1.455).interval;
    expect(risen.low).toBeLessThan(same.low);
    expect(risen.high ?? Infinity).toBeLessThan(same.high ?? Infinity);
  });

  it('is open above when the readings hardly rise', () => {
    expect(learned([point(0, 8), point(1, 8.3), point(2, 9)]).interval.high ?? Infinity).toBeGreaterThan(4);
  });

  it('is to stop when two rungs left the flow as it was', () => {
    expect(learn([point(0, 8), point(1, 8.1), point(2, 8)])).toEqual({ kind: 'no-change' });
    // 10 % more is a change
    expect(learn([point(0, 8), point(1, 8.5), point(2, 8.9)]).kind).toBe('learned');
  });

  it('takes a cup that would not run for a time beyond its clock', () => {
    const gelled = learned([point(0, 6.98), point(1, 8.07), point(2, 9.7), point(3, 'wont-run')]);
    const plain = learned([point(0, 6.98), point(1, 8.07), point(2, 9.7)]);
    // 3 dose steps are far past mid-window, so nothing more is needed
    expect(gelled.interval.low).toBe(0);
    expect(gelled.doseSteps).toBeLessThanOrEqual(plain.doseSteps);
  });
});

describe('the learned dose on simulated buckets', () => {
  const walked = rooms.map((room, i) => walkBuckets(400, room, i + 11));
  const proposals = walked.reduce((sum, one) => sum + one.proposals, 0);

  it('states intervals that hold what is needed 85 to 95 times in a hundred', () => {
    const held = walked.reduce((sum, one) => sum + one.coverage * one.proposals, 0) / proposals;
    expect(proposals).toBeGreaterThan(500);
    expect(held).toBeGreaterThanOrEqual(0.85);
    expect(held).toBeLessThanOrEqual(0.95);
  });

  it('brings buckets into their window in no more doses than the ladder, and not less often', () => {
    for (const { ladder, learned: own, more, buckets } of walked) {
      expect(own.doses).toBeLessThanOrEqual(ladder.doses);
      expect(own.reached).toBeGreaterThanOrEqual(ladder.reached);
      // Just below its window a bucket gets half a step, and a few need the other half.
      expect(more / buckets).toBeLessThanOrEqual(0.05);
    }
  });

  it('never goes past two rungs at once, nor past 0.2 % since the remake', () => {
    for (const { largestRungs, mostPercent } of walked) {
      expect(largestRungs).toBeLessThanOrEqual(2 + 1e-9);
      expect(mostPercent).toBeLessThanOrEqual(0.2 + 1e-9);
    }
  });
});
