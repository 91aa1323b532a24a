import { Temporal } from '@js-temporal/polyfill';
import fc from 'fast-check';

/**
 * Half-hour and quarter-hour zones, half-hour summer time, a skipped day, "negative" summer time, two-hour steps, and
 * none.
 */
export const zones = [
  'America/St_Johns',
  'America/New_York',
  'America/Sao_Paulo',
  'America/Havana',
  'Europe/London',
  'Europe/Dublin',
  'Africa/Casablanca',
  'Africa/Cairo',
  'Asia/Tehran',
  'Asia/Kathmandu',
  'Asia/Gaza',
  'Australia/Lord_Howe',
  'Pacific/Apia',
  'Pacific/Chatham',
  'Antarctica/Troll',
  'UTC',
] as const;

const FIRST = Temporal.Instant.from('1975-01-01T00:00Z').epochMilliseconds;
const LAST = Temporal.Instant.from('2037-01-01T00:00Z').epochMilliseconds;

/** Each zone's clock changes, from another library. */
const transitions = new Map(
  zones.map((zone) => {
    const found: number[] = [];
    let at = Temporal.Instant.fromEpochMilliseconds(FIRST)
      .toZonedDateTimeISO(zone)
      .getTimeZoneTransition('next');
    while (at && at.epochMilliseconds < LAST) {
      found.push(at.epochMilliseconds);
      at = at.getTimeZoneTransition('next');
    }
    return [zone, found];
  }),
);

const HOUR = 3_600_000;

/** A zone and an instant in epoch milliseconds; half of them are within two days of a clock change. */
export const zonedInstants = fc.constantFrom(...zones).chain((zone) => {
  const anywhere = fc.integer({ min: FIRST, max: LAST });
  const changes = transitions.get(zone) ?? [];
  const nearby = fc.integer({ min: -48 * HOUR, max: 48 * HOUR });
  if (changes.length === 0) return fc.record({ zone: fc.constant(zone), at: anywhere });
  const near = fc.tuple(fc.constantFrom(...changes), nearby).map(([change, by]) => change + by);
  return fc.record({ zone: fc.constant(zone), at: fc.oneof(anywhere, near) });
});
