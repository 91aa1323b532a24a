import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fisherExact } from '../../src/glaze/statistics/fisherExact.ts';
import { compareFaults, isLead } from '../../src/studio/firing/compareFaults.ts';
import type { Dip } from '../../src/studio/firing/dip.ts';
import { bucketConditions, conditionKey, type Conditions } from '../../src/studio/firing/dipCondition.ts';
import { faultFinding } from '../../src/studio/firing/faultFinding.ts';
import { faults, type Fault } from '../../src/studio/firing/firedEvent.ts';
import { days, entryId, firedStream, instant, memberId, seq, streamNo } from '../../src/studio/ids.ts';
import { must } from '../helpers/glaze/must.ts';

const start = Date.UTC(2026, 0, 1, 21);
const zone = 'America/St_Johns';

const dip = (place: number, evening: number, bucket: number, found: Fault[], conditions: Conditions): Dip => {
  const at = instant(start + evening * days(1));
  return {
    result: {
      id: entryId(firedStream, seq(place + 1)),
      seq: seq(place + 1),
      by: memberId(`m${place % 7}`),
      at,
      said: { bucket: streamNo(bucket), faults: found },
    },
    dipped: { from: at, to: at },
    buckets: [],
    conditions,
  };
};

/** Seeded random numbers, so that a run can be repeated (Marsaglia 2003, xorshift32, from memory). */
const dice = (seed: number) => {
  let x = seed | 0 || 1;
  return () => {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    return (x >>> 0) / 2 ** 32;
  };
};

/**
 * A season in which no condition causes any fault, but pots of one evening have the same luck: on some evenings nearly
 * everything is bad, on most hardly anything.
 */
const season = (roll: () => number, evenings: number, pots: number): Dip[] =>
  Array.from({ length: evenings }, (_, evening) => {
    const conditions: Conditions = Object.fromEntries(
      bucketConditions.map((name, i) => [name, roll() < 0.15 + 0.05 * i]),
    );
    const luck = new Map(faults.map((fault) => [fault, roll() < 0.15 ? 0.8 : 0.02]));
    return Array.from({ length: 1 + Math.floor(roll() * pots) }, (_each, pot) =>
      dip(
        evening * 100 + pot,
        evening,
        1 + (evening % 3),
        faults.filter((fault) => roll() < (luck.get(fault) ?? 0)),
        conditions,
      ),
    );
  }).flat();

const anyDip = fc
  .record({
    evening: fc.integer({ min: 0, max: 30 }),
    bucket: fc.integer({ min: 1, max: 3 }),
    found: fc.uniqueArray(fc.constantFrom(...faults), { maxLength: 3 }),
    conditions: fc.dictionary(fc.constantFrom(...bucketConditions, 'layered', 'carved'), fc.boolean()),
    body: fc.option(fc.constantFrom('buff', 'Buff ', 'white'), { nil: undefined }),
  })
  .map(({ evening, bucket, found, conditions, body }) => ({
    ...dip(0, evening, bucket, found, conditions),
    ...(body !== undefined && { body }),
  }));

describe('without any habit behind the faults', () => {
  it('a lead is called in no more seasons than one in twenty, though pots of an evening come out alike', () => {
    const seasons = 3000;
    const roll = dice(20260301);
    let called = 0;
    for (let i = 0; i < seasons; i++) {
      const { pairs } = compareFaults(season(roll, 12 + Math.floor(roll() * 60), 6), zone);
      if (pairs.some((pair) => pair.q !== undefined && pair.q <= 0.05)) called++;
    }
    // Every lead is false here, so the share of seasons with a lead is the false discovery rate: 0.05, plus three
    // standard deviations.
    expect(called / seasons).toBeLessThanOrEqual(0.05 + 3 * Math.sqrt((0.05 * 0.95) / seasons));
  });

  it('pots counted one by one would make leads of nothing: why days are counted', () => {
    const seasons = 200;
    const roll = dice(7);
    let called = 0;
    for (let i = 0; i < seasons; i++) {
      // The same pots, each on its own day.
      const alone = season(roll, 40, 6).map((one, place) =>
        dip(place, place, 1, one.result.said.faults, one.conditions),
      );
      if (compareFaults(alone, zone).pairs.some((pair) => pair.q !== undefined && pair.q <= 0.05)) called++;
    }
    expect(called / seasons).toBeGreaterThan(0.2);
  });
});

describe('with a habit behind a fault', () => {
  it('is found in most seasons, and is the first that is named', () => {
    const seasons = 200;
    const roll = dice(11);
    let named = 0;
    for (let i = 0; i < seasons; i++) {
      const dips = season(roll, 40, 1).map((one, place) => {
        const wet = one.conditions['on-hold'] === true;
        const found: Fault[] = roll() < (wet ? 0.75 : 0.05) ? ['crawling'] : [];
        return dip(place, place, 1, found, one.conditions);
      });
      const finding = faultFinding(compareFaults(dips, zone));
      if (finding.is === 'lead' && conditionKey(finding.pair.condition) === 'on-hold') named++;
    }
    expect(named / seasons).toBeGreaterThan(0.9);
  });
});

describe('whatever was told', () => {
  it('counts no more than there are days, ranks by p, and says of a pair what its own counts say', () => {
    fc.assert(
      fc.property(fc.array(anyDip, { maxLength: 60 }), (dips) => {
        const { days: all, faulty, pairs } = compareFaults(dips, zone);
        expect(faulty).toBeLessThanOrEqual(all);
        expect(all).toBeLessThanOrEqual(dips.length);
        for (const { rates, p, q } of pairs) {
          // An evening may be on both sides, but only once on each.
          expect(rates.of).toBeLessThanOrEqual(all);
          expect(rates.otherOf).toBeLessThanOrEqual(all);
          expect(p).toBe(must(fisherExact(rates)));
          if (q !== undefined) expect(q).toBeGreaterThanOrEqual(p);
        }
        const ps = pairs.map(({ p }) => p);
        expect(ps).toEqual([...ps].sort((a, b) => a - b));
        const { is } = faultFinding({ days: all, faulty, pairs });
        expect(is === 'lead').toBe(pairs.some(isLead));
      }),
    );
  });

  it('does not depend on the order in which it was told, nor on who told it', () => {
    fc.assert(
      fc.property(fc.array(anyDip, { maxLength: 40 }), (dips) => {
        const summed = (all: Dip[]) =>
          compareFaults(all, zone)
            .pairs.map(({ fault, condition, rates, q }) =>
              JSON.stringify([fault, conditionKey(condition).trim().toLowerCase(), rates, q?.toFixed(12)]),
            )
            .sort();
        expect(summed([...dips].reverse())).toEqual(summed(dips));
      }),
    );
  });

  it('a result told twice changes nothing', () => {
    fc.assert(
      fc.property(fc.array(anyDip, { maxLength: 40 }), (dips) => {
        expect(compareFaults([...dips, ...dips], zone)).toEqual(compareFaults(dips, zone));
      }),
    );
  });
});
