import { Temporal } from '@js-temporal/polyfill';
import { describe, expect, it } from 'vitest';
import { instant } from '../../../../src/studio/ids.ts';
import { nextOpenInstant, usualHours, type OpeningHours } from '../../../../src/studio/time/openingHours.ts';

const ZONE = 'America/St_Johns';
const at = (local: string) =>
  instant(Temporal.PlainDateTime.from(local).toZonedDateTime(ZONE).epochMilliseconds);
const opens = (from: string, hours: OpeningHours): string => {
  const next = nextOpenInstant(at(from), hours, ZONE);
  return next === 'never'
    ? next
    : Temporal.Instant.fromEpochMilliseconds(next).toZonedDateTimeISO(ZONE).toPlainDateTime().toString();
};

const shut: OpeningHours['week'] = {
  sunday: 'closed',
  monday: 'closed',
  tuesday: 'closed',
  wednesday: 'closed',
  thursday: 'closed',
  friday: 'closed',
  saturday: 'closed',
};
const late = { opens: 18 * 60, closes: 26 * 60 };

describe('the next instant that a studio is open', () => {
  it('is now while it is open, and the next opening from the minute that it closes', () => {
    expect(opens('2026-07-15T08:00', usualHours)).toBe('2026-07-15T08:00:00');
    expect(opens('2026-07-15T21:59:59.999', usualHours)).toBe('2026-07-15T21:59:59.999');
    expect(opens('2026-07-15T22:00', usualHours)).toBe('2026-07-16T08:00:00');
    expect(opens('2026-07-15T07:59', usualHours)).toBe('2026-07-15T08:00:00');
  });

  it('is the small hours of an evening that runs past midnight', () => {
    const hours = { week: { ...shut, wednesday: late }, closures: [] };
    expect(opens('2026-07-16T01:30', hours)).toBe('2026-07-16T01:30:00');
    expect(opens('2026-07-16T02:00', hours)).toBe('2026-07-22T18:00:00');
    expect(opens('2026-07-15T01:30', hours)).toBe('2026-07-15T18:00:00');
  });

  it('passes over closed days, and lets an evening before one run out', () => {
    const hours = { week: { ...usualHours.week, thursday: late }, closures: ['2026-12-25', '2026-12-26'] };
    expect(opens('2026-12-25T01:00', hours)).toBe('2026-12-25T01:00:00');
    expect(opens('2026-12-25T03:00', hours)).toBe('2026-12-27T08:00:00');
  });

  it('is found behind a year of closures of the one day that it opens', () => {
    const sundays = Array.from({ length: 53 }, (_, week) =>
      Temporal.PlainDate.from('2026-07-19').add({ weeks: week }).toString(),
    );
    const hours = { week: { ...shut, sunday: late }, closures: sundays };
    expect(opens('2026-07-15T12:00', hours)).toBe('2027-07-25T18:00:00');
  });

  it('is never for a studio that opens on no day', () => {
    expect(opens('2026-07-15T12:00', { week: shut, closures: [] })).toBe('never');
    expect(opens('2026-07-15T12:00', { week: shut, closures: ['2026-12-25'] })).toBe('never');
  });

  it('is found when the clocks skip the only opening of the week', () => {
    const hours = { week: { ...shut, sunday: { opens: 125, closes: 125 } }, closures: [] };
    expect(opens('2026-07-15T12:00', hours)).toBe('never');
    const early = { week: { ...shut, sunday: { opens: 120, closes: 180 } }, closures: [] };
    expect(opens('2026-03-07T12:00', early)).toBe('2026-03-15T02:00:00');
  });

  it('is not on a day that the zone skips, whatever its hours', () => {
    // Samoa went from Thursday 29 December 2011 straight to Saturday 31 December
    const hours = { week: { ...usualHours.week, saturday: 'closed' as const }, closures: [] };
    const thursday = Temporal.PlainDateTime.from('2011-12-29T23:00').toZonedDateTime('Pacific/Apia');
    const sunday = Temporal.PlainDateTime.from('2012-01-01T08:00').toZonedDateTime('Pacific/Apia');
    expect(nextOpenInstant(instant(thursday.epochMilliseconds), hours, 'Pacific/Apia')).toBe(
      sunday.epochMilliseconds,
    );
  });
});
