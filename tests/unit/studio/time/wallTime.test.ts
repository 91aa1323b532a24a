import { describe, expect, it, test } from 'vitest';
import { instant, type Instant } from '../../../../src/studio/ids.ts';
import {
  addLocalDays,
  instantOf,
  isZone,
  offsetAt,
  startOfDay,
  startOfLocalDay,
  wallOf,
  type WallTime,
} from '../../../../src/studio/time/wallTime.ts';
import rows from '../../../reference/timezone.json' with { type: 'json' };

const HOUR = 3_600_000;

const wall = (iso: string): WallTime => {
  const [year, month, day, hour = 0, minute = 0] = iso.split(/[-T:]/).map(Number);
  if (year === undefined || month === undefined || day === undefined) throw new Error(iso);
  return { year, month, day, hour, minute };
};
const two = (n: number) => String(n).padStart(2, '0');
const printed = (at: Instant, zone: string): string => {
  const { year, month, day, hour, minute } = wallOf(at, zone);
  const offset = offsetAt(at, zone) / 60_000;
  const sign = offset < 0 ? '-' : '+';
  const [hours, minutes] = [Math.floor(Math.abs(offset) / 60), Math.abs(offset) % 60];
  return `${year}-${two(month)}-${two(day)}T${two(hour)}:${two(minute)}${sign}${two(hours)}:${two(minutes)}`;
};
const utc = (iso: string): number => instantOf(wall(iso.replace('Z', '')), 'UTC');

/** Worked out with @js-temporal/polyfill 0.5.1 (tzdata 2025c), the nights cross-checked with Python zoneinfo. */
describe('published wall times', () => {
  test.each(rows)('$id: $quantity', (row) => {
    const { inputs, expected } = row;
    const zone = 'zone' in inputs ? inputs.zone.value : '';
    if ('end_local' in inputs && inputs.end_local && 'start_local' in inputs && inputs.start_local) {
      const start = instantOf(wall(inputs.start_local.value), zone);
      const end = instantOf(wall(inputs.end_local.value), zone);
      expect((end - start) / HOUR).toBe(expected.value);
      if (row.start_utc !== undefined) expect(start).toBe(utc(row.start_utc));
      if (row.end_utc !== undefined) expect(end).toBe(utc(row.end_utc));
    } else if ('hours' in inputs && inputs.hours && 'start_local' in inputs && inputs.start_local) {
      const start = instantOf(wall(inputs.start_local.value), zone);
      expect(printed(instant(start + inputs.hours.value * HOUR), zone)).toBe(expected.value);
    } else if ('date' in inputs && inputs.date) {
      const { year, month, day } = wall(inputs.date.value);
      const length = startOfDay({ year, month, day: day + 1 }, zone) - startOfDay({ year, month, day }, zone);
      expect(length / HOUR).toBe(expected.value);
    } else if ('local' in inputs && inputs.local) {
      const at = instantOf(wall(inputs.local.value), zone);
      if (String(expected.value).endsWith('Z')) expect(at).toBe(utc(String(expected.value)));
      else expect(printed(at, zone)).toBe(expected.value);
    } else throw new Error(`a row of an unknown shape: ${row.id}`);
  });
});

describe('a zone’s clocks', () => {
  it('means the earlier of two instants that show the same time', () => {
    const first = instantOf(wall('2026-11-01T01:30'), 'America/New_York');
    expect(printed(first, 'America/New_York')).toBe('2026-11-01T01:30-04:00');
  });

  it('moves a time that is never shown on by as much as the clocks skip', () => {
    const half = instantOf(wall('2026-10-04T02:10'), 'Australia/Lord_Howe');
    expect(printed(half, 'Australia/Lord_Howe')).toBe('2026-10-04T02:40+11:00');
  });

  it('starts a day that has no midnight when the gap ends', () => {
    const start = startOfDay({ year: 2018, month: 11, day: 4 }, 'America/Sao_Paulo');
    expect(printed(start, 'America/Sao_Paulo')).toBe('2018-11-04T01:00-02:00');
    expect(startOfLocalDay(instant(start + 5 * HOUR), 'America/Sao_Paulo')).toBe(start);
  });

  it('starts the day that Samoa skipped where the next one starts', () => {
    const start = startOfDay({ year: 2011, month: 12, day: 30 }, 'Pacific/Apia');
    expect(printed(start, 'Pacific/Apia')).toBe('2011-12-31T00:00+14:00');
  });

  it('keeps the wall time, and the seconds, from one day to the next', () => {
    const evening = instantOf(wall('2026-03-07T21:00'), 'America/St_Johns');
    const next = addLocalDays(instant(evening + 33_000), 1, 'America/St_Johns');
    expect(printed(next, 'America/St_Johns')).toBe('2026-03-08T21:00-02:30');
    expect(next - evening).toBe(23 * HOUR + 33_000);
  });
});

describe('names of zones', () => {
  test.each(['America/St_Johns', 'america/st_johns', 'Asia/Kathmandu', 'UTC', 'Etc/GMT+3'])(
    '%s is one',
    (name) => {
      expect(isZone(name)).toBe(true);
    },
  );

  test.each(['', 'Wrackline', 'America/Wrackline', '+05:30', '-03:30', 'UTC+3', 'St John’s', 'foo+05:30'])(
    '%s is none',
    (name) => {
      expect(isZone(name)).toBe(false);
    },
  );

  it('takes a wrong name for a bug and not for UTC', () => {
    expect(() => wallOf(instant(0), 'America/Wrackline')).toThrow(RangeError);
  });
});
