import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TokenBucket } from '../../../src/room/access/tokenBucket.ts';

describe('a token bucket', () => {
  it('allows a burst, then its refill rate, and says how long to wait', () => {
    const bucket = new TokenBucket(2, 3);
    const taken = Array.from({ length: 4 }, () => bucket.take('a', 0));
    expect(taken.map(({ ok }) => ok)).toEqual([true, true, true, false]);
    expect(taken[3]).toEqual({ ok: false, seconds: 1 });
    expect(bucket.take('a', 500).ok).toBe(true);
    expect(bucket.take('a', 600).ok).toBe(false);
    expect(bucket.take('b', 600).ok).toBe(true);
  });

  it('never allows more than its burst plus what was refilled', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 2_000 }), { maxLength: 200 }), (gaps) => {
        const bucket = new TokenBucket(5, 10);
        let now = 0;
        let through = 0;
        for (const gap of gaps) {
          now += gap;
          if (bucket.take('a', now).ok) through += 1;
        }
        expect(through).toBeLessThanOrEqual(10 + (5 * now) / 1000 + 1e-6);
      }),
    );
  });

  it('gains nothing from a clock that runs backwards', () => {
    const bucket = new TokenBucket(1, 1);
    expect(bucket.take('a', 10_000).ok).toBe(true);
    expect(bucket.take('a', 0).ok).toBe(false);
  });
});
