import fc from 'fast-check';
import { expect, test } from 'vitest';
import { instant } from '../../src/studio/ids.ts';
import { type DayHours, type OpeningHours } from '../../src/studio/time/openingHours.ts';
import { dryReady, type DryingCoat } from '../../src/studio/resist/overnight.ts';
import { openAt, readyByTemporal, type Week } from '../helpers/overnightByTemporal.ts';
import { zonedInstants } from '../helpers/zones.ts';

const dayHours = fc
  .record({ opens: fc.integer({ min: 0, max: 1439 }), long: fc.integer({ min: 1, max: 1440 }) })
  .map(({ opens, long }) => ({ opens, closes: opens + long }));
const days = fc.array(fc.option(fc.oneof(fc.constant({ opens: 480, closes: 1320 }), dayHours), { freq: 3 }), {
  minLength: 7,
  maxLength: 7,
});

const week = (monday: readonly (DayHours | null)[], closures: string[]): OpeningHours => {
  const on = (n: number) => monday[n] ?? 'closed';
  return {
    week: {
      monday: on(0),
      tuesday: on(1),
      wednesday: on(2),
      thursday: on(3),
      friday: on(4),
      saturday: on(5),
      sunday: on(6),
    },
    closures,
  };
};

/** Some of the days after an instant. */
const closures = (at: number) =>
  fc
    .array(fc.integer({ min: 0, max: 10 }), { maxLength: 5 })
    .map((after) => after.map((n) => new Intl.DateTimeFormat('en-CA').format(at + n * 86_400_000)));

const coats = zonedInstants.chain(({ zone, at }) =>
  fc.record({
    zone: fc.constant(zone),
    at: fc.constant(at),
    days,
    closed: closures(at),
    minimumHours: fc.oneof(fc.constant(12), fc.integer({ min: 0, max: 36 })),
    factor: fc.oneof(fc.constant(1), fc.double({ min: 1, max: 3, noNaN: true })),
    kind: fc.constantFrom('wax' as const, 'latex' as const),
  }),
);
type Given = typeof coats extends fc.Arbitrary<infer T> ? T : never;

const coatOf = (given: Given): DryingCoat => ({
  kind: given.kind,
  onAt: instant(given.at),
  zone: given.zone,
  hours: week(given.days, given.closed),
  minimumHours: given.minimumHours,
  dryingFactor: given.factor,
});
const told = (given: Given) => {
  const opening: Week = { days: given.days, closures: given.closed };
  return { onAt: given.at, zone: given.zone, week: opening, dryHours: given.minimumHours * given.factor };
};

test('a coat is ready at the time that a second implementation, on another library, gives', () => {
  fc.assert(
    fc.property(coats, (given) => {
      const answer = dryReady(coatOf(given));
      const expected = readyByTemporal(told(given), 80);
      expect(answer === 'never' ? undefined : answer.readyAt).toBe(expected);
    }),
    { numRuns: 3000 },
  );
});

test('a coat is ready in opening hours, after its hours, and at no instant before', () => {
  fc.assert(
    fc.property(
      coats,
      fc.array(fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), { minLength: 20 }),
      (given, parts) => {
        const answer = dryReady(coatOf(given));
        if (answer === 'never' || !('hoursEnd' in answer.why)) return fc.pre(false);
        const { readyAt, why } = answer;
        const opening: Week = { days: given.days, closures: given.closed };
        expect(openAt(readyAt, opening, given.zone)).toBe(true);
        expect(readyAt - given.at).toBeGreaterThanOrEqual(given.minimumHours * given.factor * 3_600_000);
        const dry = Math.max(why.hoursEnd, why.nightEnds);
        expect(readyAt).toBeGreaterThanOrEqual(dry);
        for (const part of [...parts, (readyAt - dry - 1) / Math.max(1, readyAt - dry)]) {
          const before = Math.floor(dry + part * (readyAt - dry));
          if (before < readyAt && before >= dry) expect(openAt(before, opening, given.zone)).toBe(false);
        }
      },
    ),
    { numRuns: 500 },
  );
});

test('a colder or damper room never makes a coat ready sooner', () => {
  fc.assert(
    fc.property(coats, fc.double({ min: 1, max: 3, noNaN: true }), (given, factor) => {
      const [less, more] = [given.factor, factor].sort((one, other) => one - other);
      const sooner = dryReady({ ...coatOf(given), dryingFactor: less ?? 1 });
      const later = dryReady({ ...coatOf(given), dryingFactor: more ?? 1 });
      if (sooner === 'never' || later === 'never') expect(sooner).toBe(later);
      else expect(later.readyAt).toBeGreaterThanOrEqual(sooner.readyAt);
    }),
    { numRuns: 2000 },
  );
});
