import { describe, expect, it } from 'vitest';
import { orderOf, readDay, type DayOrder } from '../../../src/notebook/readDay.ts';
import { instant } from '../../../src/studio/ids.ts';

const now = instant(Date.parse('2026-05-20T21:00:00Z'));
const zone = 'America/St_Johns';
const read = (date: string, time = '', order: DayOrder = 'd/m/y') => {
  const found = readDay({ date, time }, { order, zone, now });
  return typeof found === 'number' ? new Date(found).toISOString() : found;
};
// In March 2024 Newfoundland was at UTC-3:30 before the 10th, at UTC-2:30 from then on (IANA time zone database).
const half = '2024-03-05T18:00:00.000Z';

describe('when a line happened', () => {
  it.each([
    ['2024-03-05 14:30', ''],
    ['2024-03-05T14:30', ''],
    ['2024-03-05T18:00:00Z', ''],
    ['2024/3/5', '14:30'],
    ['5.3.2024', '14.30'],
    ['05.03.24', '2:30 pm'],
    ['5/3/2024 2:30PM', ''],
    ['5-3-24', '14h30'],
    ['5.3.2024, 14:30:59', ''],
  ])('%j %j is half past two on 5 March, in the studio’s zone', (date, time) => {
    expect(read(date, time)).toBe(half);
  });

  it('month first, when the notebook has it so', () => {
    expect(read('3/5/2024', '14:30', 'm/d/y')).toBe(half);
    // A full stop stands after the day.
    expect(read('5.3.2024', '14:30', 'm/d/y')).toBe(half);
  });

  it('without an hour it is noon, or now when noon is still to come', () => {
    expect(read('2024-07-01')).toBe('2024-07-01T14:30:00.000Z');
    expect(
      readDay({ date: '2026-05-21', time: '' }, { order: 'd/m/y', zone, now: instant(now + 7 * 3_600_000) }),
    ).toBe(now + 7 * 3_600_000);
  });

  it.each([
    ['31.2.2024', '', 'no-date'],
    ['5.13.2024', '', 'no-date'],
    ['last week', '', 'no-date'],
    ['', '', 'no-date'],
    ['05.03.0024', '', 'no-date'],
    ['2024-03-05', 'evening', 'no-time'],
    ['2024-03-05', '25:00', 'no-time'],
    ['2024-03-05', '13 pm', 'no-time'],
    ['2024-03-05', '14', 'no-time'],
    ['2027-01-01', '', 'ahead'],
    ['2026-05-20', '23:00', 'ahead'],
  ])('%j %j is refused: %s', (date, time, why) => {
    expect(read(date, time)).toBe(why);
  });
});

it('tells the order of day and month where only one is possible', () => {
  expect(orderOf('13/3/2024')).toBe('d/m/y');
  expect(orderOf('3/13/2024')).toBe('m/d/y');
  expect(orderOf('3/5/2024')).toBe('either');
  for (const plain of ['5/5/2024', '3.5.2024', '2024-03-05']) expect(orderOf(plain)).toBeUndefined();
});
