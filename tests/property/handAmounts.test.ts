import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { grams } from '../../src/glaze/units.ts';
import { instant, streamNo } from '../../src/studio/ids.ts';
import { foldBucket } from '../../src/studio/bucket/fold/foldBucket.ts';
import { volumeNow } from '../../src/studio/bucket/volumeNow.ts';
import type { UnitSystem } from '../../src/studio/settings/studio.ts';
import { decide } from '../../src/studio/verdict/decide.ts';
import { plainText } from '../../src/contract/plainText.ts';
import { verdictActions } from '../../src/replies/verdict/verdictActions.ts';
import { en } from '../../src/words/en.ts';
import { doseText, handDose } from '../../src/words/text/doseText.ts';
import { handPowder, handWater, powderText, waterText, type Measures } from '../../src/words/text/hand.ts';
import { gridStory } from '../helpers/bucketArbitraries.ts';

const systems = fc.constantFrom<UnitSystem>('metric', 'us', 'imperial');
const amount = fc.double({ min: 0, max: 30_000, noNaN: true });
const scoop = fc.option(fc.double({ min: 50, max: 1500, noNaN: true }), { nil: undefined });
const measures = fc
  .record({ units: systems, scoop, steps: fc.array(fc.constantFrom(0.1, 0.5, 1, 5), { maxLength: 3 }) })
  .map(({ units, scoop: holds, steps }): Measures => ({
    units,
    vessels: steps.map((scaleStep) => ({ scaleStep: grams(scaleStep) })),
    ...(holds !== undefined && { scoop: grams(holds) }),
  }));

describe('an amount in the hand', () => {
  it('is never more than what is safe, and is told and logged alike', () => {
    fc.assert(
      fc.property(amount, systems, measures, (value, units, one) => {
        const poured = handWater(value, units);
        expect(poured).toBeLessThanOrEqual(value);
        expect(waterText(poured, units)).toBe(waterText(value, units));
        expect(handWater(poured, units)).toBeCloseTo(poured, 6);
        const weighed = handPowder(value, one);
        expect(weighed).toBeLessThanOrEqual(value);
        expect(powderText(weighed, one)).toBe(powderText(value, one));
        // A third is the most that rounding takes off, once there is enough to measure.
        if (value >= 20) expect(poured).toBeGreaterThan((value * 2) / 3 - 20);
      }),
      { numRuns: 3000 },
    );
  });

  it('of water is whole hundreds of millilitres, fifties below a litre, tens below 200 ml', () => {
    fc.assert(
      fc.property(amount, (value) => {
        const poured = handWater(value, 'metric');
        const step = value >= 1000 ? 100 : value >= 200 ? 50 : value >= 20 ? 10 : 1;
        // A hair under a step is that step, and no more than the value.
        expect(Math.abs(poured / step - Math.round(poured / step)) * step).toBeLessThanOrEqual(
          step * 1e-3 + 0.1,
        );
        expect(value - poured).toBeLessThan(step);
      }),
    );
    expect([3068, 630, 187, 14.2].map((ml) => waterText(ml, 'metric'))).toEqual([
      '3 l',
      '600 ml',
      '180 ml',
      '14 ml',
    ]);
  });

  it('of water is cups where the studio measures in cups', () => {
    // A US cup is 236.588 ml: 630 ml are 2.66, 3068 ml 12.97, 4500 ml 19.02 cups.
    expect([150, 630, 3068, 4500].map((ml) => waterText(ml, 'us'))).toEqual([
      '0.5 cup',
      '2.5 cups',
      '12.5 cups',
      '1 gal 3 cups',
    ]);
  });

  it('of powder is half scoops where a scoop is set, else to the digit of the scale', () => {
    const vessels = [{ scaleStep: grams(0.1) }, { scaleStep: grams(1) }];
    expect(powderText(433.7, { units: 'metric' })).toBe('433 g');
    expect(powderText(43.77, { units: 'metric', vessels: vessels.slice(0, 1) })).toBe('43.7 g');
    expect(powderText(43.77, { units: 'metric', vessels })).toBe('43 g');
    expect(powderText(433.7, { units: 'metric', scoop: grams(250) })).toBe('1.5 scoops (375 g)');
    // Less than half a scoop is weighed.
    expect(powderText(100, { units: 'metric', scoop: grams(250) })).toBe('100 g');
  });
});

describe('the press that logs what was poured', () => {
  it('logs what the answer says, and never more than is safe', () => {
    const pressed = { water: 0, 'draw-off': 0, dry: 0 };
    fc.assert(
      fc.property(gridStory, measures, ({ entries, now }, studio) => {
        const state = foldBucket(streamNo(1), entries);
        if (!state) return;
        const verdict = decide(state, { now, role: 'keeper' });
        const { waterMl = 0, drawOffMl = 0, dryGrams = 0 } = verdict.amounts;
        const safe = { water: waterMl, 'draw-off': drawOffMl, dry: dryGrams };
        const title = plainText(en.verdict.title(verdict, studio), { now: instant(0), zone: 'UTC' });
        const actions = verdictActions(
          verdict,
          state.settings,
          { words: en, role: 'keeper' },
          { ...studio, vessels: [] },
        );
        for (const { line } of actions) {
          const [, what, typed] = /what:(water|draw-off|dry) amount:([\d.]+)(?:ml|g)/.exec(line) ?? [];
          if (what !== 'water' && what !== 'draw-off' && what !== 'dry') continue;
          pressed[what] += 1;
          expect(Number(typed)).toBeLessThanOrEqual(safe[what]);
          expect(Number(typed)).toBeGreaterThan(0);
          if (what === 'water') expect(title).toContain(waterText(waterMl, studio.units));
        }
      }),
      { numRuns: 800 },
    );
    for (const times of Object.values(pressed)) expect(times).toBeGreaterThan(5);
  });
});

describe('what is asked of a pail', () => {
  it('is how full it is exactly when an amount hangs on that', () => {
    const asked = { level: 0, not: 0 };
    const aged = fc.constantFrom(0, 0, 9 * 24 * 3_600_000);
    fc.assert(
      fc.property(
        gridStory,
        fc.constantFrom('member' as const, 'keeper' as const),
        aged,
        (one, role, late) => {
          // A volume that nobody has said for a week is not known any more; everything else is of just now.
          const entries = one.entries.map((entry, i) =>
            i === 0 && late > 0
              ? { ...entry, at: instant(entry.at - late), loggedAt: instant(entry.loggedAt - late) }
              : entry,
          );
          const state = foldBucket(streamNo(1), entries);
          if (!state) return;
          const verdict = decide(state, { now: one.now, role });
          const hangs = Object.keys(verdict.amounts).some((name) => name.endsWith('PerLitre'));
          expect(verdict.asks.includes('level')).toBe(hangs);
          if (hangs) expect(volumeNow(state, one.now)).toBeUndefined();
          asked[hangs ? 'level' : 'not'] += 1;
        },
      ),
      { numRuns: 1500 },
    );
    for (const times of Object.values(asked)) expect(times).toBeGreaterThan(20);
  });
});

describe('a dose in the hand', () => {
  it('is whole drops, or tenths of a millilitre, and less rather than more', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 40, noNaN: true }), (ml) => {
        const dose = handDose(ml);
        const drop = 0.05;
        // A tenth of a drop is less than drops differ.
        expect(dose).toBeLessThanOrEqual(ml <= 1 ? ml + drop / 10 + 1e-9 : ml + 1e-3);
        expect(ml - dose).toBeLessThan(ml <= 1 ? drop : 0.1);
        expect(doseText(dose)).toContain(`${dose} ml`);
      }),
    );
    // A US teaspoon is 4.93 ml: its quarters are 1.23, 2.46 and 3.70. 1.8 and 3 ml lie too far from each.
    expect([0.0967, 4.835, 0.5, 2.4, 3.7, 6.2, 1.8, 3].map(doseText)).toEqual([
      '2 drops (0.1 ml)',
      '4.8 ml (about 1 tsp)',
      '10 drops (0.5 ml)',
      '2.4 ml (about ½ tsp)',
      '3.7 ml (about ¾ tsp)',
      '6.2 ml (about 1¼ tsp)',
      '1.8 ml',
      '3 ml',
    ]);
  });
});
