import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TokenBucket } from '../../../src/room/access/tokenBucket.ts';

describe('a pace', () => {
  it('lets so many through at once, then so many a second, and says how long to wait', () => {
    const pace = new TokenBucket(2, 3);
    const taken = Array.from({ length: 4 }, () => pace.take('a', 0));
    expect(taken.map(({ ok }) => ok)).toEqual([true, true, true, false]);
    expect(taken[3]).toEqual({ ok: false, seconds: 1 });
    expect(pace.take('a', 500).ok).toBe(true);
    expect(pace.take('a', 600).ok).toBe(false);
    expect(pace.take('b', 600).ok).toBe(true);
  });

  it('never lets more through than it had at once and gained since, whenever they come', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 2_000 }), { maxLength: 200 }), (gaps) => {
        const pace = new TokenBucket(5, 10);
        let now = 0;
        let through = 0;
        for (const gap of gaps) {
          now += gap;
          if (pace.take('a', now).ok) through += 1;
        }
        expect(through).toBeLessThanOrEqual(10 + (5 * now) / 1000 + 1e-6);
      }),
    );
  });

  it('gains nothing from a clock that runs backwards', () => {
    const pace = new TokenBucket(1, 1);
    expect(pace.take('a', 10_000).ok).toBe(true);
    expect(pace.take('a', 0).ok).toBe(false);
  });
});
