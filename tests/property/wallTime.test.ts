import { Temporal } from '@js-temporal/polyfill';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, dayNumber, isCivilDay, weekdayOf } from '../../src/studio/time/civilDay.ts';
import { instant } from '../../src/studio/ids.ts';
import { addLocalDays, instantOf, startOfLocalDay, wallOf } from '../../src/studio/time/wallTime.ts';
import { zonedInstants, zones } from '../helpers/zones.ts';

const RUNS = { numRuns: 5000 };
const zoned = (at: number, zone: string) =>
  Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone);

test('a wall time is what another library says', () => {
  fc.assert(
    fc.property(zonedInstants, ({ zone, at }) => {
      const { year, month, day, hour, minute } = zoned(at, zone);
      expect(wallOf(instant(at), zone)).toEqual({ year, month, day, hour, minute });
    }),
    RUNS,
  );
});

test('the instant of a wall time is what another library says, in gaps and folds too', () => {
  fc.assert(
    fc.property(zonedInstants, fc.constantFrom(...zones), ({ zone, at }, shownIn) => {
      const wall = wallOf(instant(at), shownIn); // a local time in one zone may be skipped in another
      for (const shown of [wall, wallOf(instant(at), zone)])
        expect(instantOf(shown, zone)).toBe(
          Temporal.PlainDateTime.from({ ...shown }).toZonedDateTime(zone, { disambiguation: 'compatible' })
            .epochMilliseconds,
        );
    }),
    RUNS,
  );
});

test('wall times within a gap and around it move on as another library moves them', () => {
  fc.assert(
    fc.property(zonedInstants, fc.integer({ min: -180, max: 180 }), ({ zone, at }, minutes) => {
      const plain = zoned(at, zone).toPlainDateTime().add({ minutes }).round('minute');
      const { year, month, day, hour, minute } = plain;
      expect(instantOf({ year, month, day, hour, minute }, zone)).toBe(
        plain.toZonedDateTime(zone).epochMilliseconds,
      );
    }),
    RUNS,
  );
});

test('a day starts when another library says', () => {
  fc.assert(
    fc.property(zonedInstants, ({ zone, at }) => {
      expect(startOfLocalDay(instant(at), zone)).toBe(zoned(at, zone).startOfDay().epochMilliseconds);
    }),
    RUNS,
  );
});

test('adding days keeps the wall time as another library keeps it', () => {
  fc.assert(
    fc.property(zonedInstants, fc.integer({ min: -400, max: 400 }), ({ zone, at }, days) => {
      const { year, month, day, hour, minute } = zoned(at, zone);
      const plain = Temporal.PlainDateTime.from({ year, month, day, hour, minute }).add({ days });
      const withinMinute = at - Math.floor(at / 60_000) * 60_000;
      expect(addLocalDays(instant(at), days, zone)).toBe(
        plain.toZonedDateTime(zone).epochMilliseconds + withinMinute,
      );
    }),
    RUNS,
  );
});

test('days of the calendar count as another library counts them, leap years and all', () => {
  fc.assert(
    fc.property(fc.integer({ min: -1_000_000, max: 1_000_000 }), (days) => {
      const { year, month, day, dayOfWeek } = Temporal.PlainDate.from('1970-01-01').add({ days });
      expect(addDays({ year: 1970, month: 1, day: 1 }, days)).toEqual({ year, month, day });
      expect(dayNumber({ year, month, day })).toBe(days);
      expect(weekdayOf({ year, month, day })).toBe(dayOfWeek % 7);
    }),
    RUNS,
  );
});

test('a day that the calendar lacks is told apart', () => {
  const any = fc.record({
    year: fc.integer({ min: 1900, max: 2100 }),
    month: fc.integer({ min: 0, max: 14 }),
    day: fc.integer({ min: 0, max: 33 }),
  });
  const exists = (day: { year: number; month: number; day: number }): boolean => {
    try {
      Temporal.PlainDate.from(day, { overflow: 'reject' });
      return true;
    } catch {
      return false;
    }
  };
  fc.assert(
    fc.property(any, (day) => {
      expect(isCivilDay(day)).toBe(exists(day));
    }),
    RUNS,
  );
});
