import { Temporal } from '@js-temporal/polyfill';
import { afterAll, beforeAll, describe, expect, it, test, vi } from 'vitest';
import { readInstant, type ReadInstant } from '../../../src/parse/readInstant.ts';
import { instant } from '../../../src/studio/ids.ts';

const ZONE = 'America/St_Johns';

/** An instant from a local time such as `2026-07-15T10:20:33`, by another library. */
const at = (local: string, zone = ZONE) =>
  instant(Temporal.PlainDateTime.from(local).toZonedDateTime(zone).epochMilliseconds);

const local = (read: ReadInstant, zone = ZONE): string =>
  read.ok
    ? Temporal.Instant.fromEpochMilliseconds(read.value).toZonedDateTimeISO(zone).toPlainDateTime().toString()
    : JSON.stringify(read.why);

/** A Wednesday morning. */
const MORNING = at('2026-07-15T10:20:33');
/** After midnight of that Wednesday, so the date is Thursday. */
const PAST_MIDNIGHT = at('2026-07-16T01:10:00');

const back = (typed: string, now = MORNING, zone = ZONE) => readInstant(typed, { now, zone, looks: 'back' });
const ahead = (typed: string, now = MORNING, zone = ZONE) =>
  readInstant(typed, { now, zone, looks: 'ahead' });

describe.each(['UTC', 'Asia/Kolkata', 'America/New_York', 'Pacific/Apia'])(
  'on a machine set to %s',
  (machine) => {
    beforeAll(() => {
      vi.stubEnv('TZ', machine);
      expect(Intl.DateTimeFormat().resolvedOptions().timeZone.replace('Calcutta', 'Kolkata')).toBe(machine);
    });
    afterAll(() => {
      vi.unstubAllEnvs();
    });

    test.each([
      ['now', '2026-07-15T10:20:33'],
      ['just now', '2026-07-15T10:20:33'],
      ['2h ago', '2026-07-15T08:20:33'],
      ['2 hours ago', '2026-07-15T08:20:33'],
      ['an hour ago', '2026-07-15T09:20:33'],
      ['half an hour ago', '2026-07-15T09:50:33'],
      ['1½ hours ago', '2026-07-15T08:50:33'],
      ['1h30 ago', '2026-07-15T08:50:33'],
      ['10 min ago', '2026-07-15T10:10:33'],
      ['1 day 2 hours ago', '2026-07-14T08:20:33'],
      ['last night 9pm', '2026-07-14T21:00:00'],
      ['9pm last night', '2026-07-14T21:00:00'],
      ['Last Night, 9 P.M.', '2026-07-14T21:00:00'],
      ['last night at 9', '2026-07-14T21:00:00'],
      ['last night 9', '2026-07-14T21:00:00'],
      ['last night 21:30', '2026-07-14T21:30:00'],
      ['last night at 9.30pm', '2026-07-14T21:30:00'],
      ['last night 12:30', '2026-07-15T00:30:00'],
      ['last night 1am', '2026-07-15T01:00:00'],
      ['last night at midnight', '2026-07-15T00:00:00'],
      ['last night', '2026-07-14T21:00:00'],
      ['last evening 7', '2026-07-14T19:00:00'],
      ['yesterday 18:30', '2026-07-14T18:30:00'],
      ['yesterday at 6:30 pm', '2026-07-14T18:30:00'],
      ['yesterday evening 6:30', '2026-07-14T18:30:00'],
      ['yesterday evening 5', '2026-07-14T17:00:00'],
      ['last night 4:30', '2026-07-15T04:30:00'],
      ['yesterday 18h30', '2026-07-14T18:30:00'],
      ['yesterday noon', '2026-07-14T12:00:00'],
      ['yesterday', '2026-07-14T10:20:00'],
      ['yesterday morning', '2026-07-14T09:00:00'],
      ['yest 9pm', '2026-07-14T21:00:00'],
      ['the day before yesterday 9pm', '2026-07-13T21:00:00'],
      ['day before yesterday 9pm', '2026-07-13T21:00:00'],
      ['this morning', '2026-07-15T09:00:00'],
      ['this morning 7:15', '2026-07-15T07:15:00'],
      ['today 8am', '2026-07-15T08:00:00'],
      ['today at 9', '2026-07-15T09:00:00'],
      ['9pm', '2026-07-14T21:00:00'],
      ['09:30', '2026-07-15T09:30:00'],
      ['21:30', '2026-07-14T21:30:00'],
      ['8 in the evening', '2026-07-14T20:00:00'],
      ['3 days ago', '2026-07-12T10:20:00'],
      ['three days ago', '2026-07-12T10:20:00'],
      ['3d ago', '2026-07-12T10:20:00'],
      ['2 days ago at 9pm', '2026-07-13T21:00:00'],
      ['a week ago', '2026-07-08T10:20:00'],
      ['2 weeks ago', '2026-07-01T10:20:00'],
      ['Tue 9pm', '2026-07-14T21:00:00'],
      ['on Tuesday at 9pm', '2026-07-14T21:00:00'],
      ['9pm on tuesday', '2026-07-14T21:00:00'],
      ['tuesday night 9', '2026-07-14T21:00:00'],
      ['Tue night 1am', '2026-07-15T01:00:00'],
      ['Wed 9am', '2026-07-15T09:00:00'],
      ['Wed 9pm', '2026-07-08T21:00:00'],
      ['last friday 9pm', '2026-07-10T21:00:00'],
      ['Monday', '2026-07-13T12:00:00'],
      ['3 July 9pm', '2026-07-03T21:00:00'],
      ['July 3, 2025 9am', '2025-07-03T09:00:00'],
      ['20 December 9pm', '2025-12-20T21:00:00'],
      ['3 july', '2026-07-03T12:00:00'],
      ['14/7 9pm', '2026-07-14T21:00:00'],
      ['7/14/2026 9pm', '2026-07-14T21:00:00'],
      ['2026-07-14', '2026-07-14T12:00:00'],
      ['2026-07-15', '2026-07-15T10:20:33'],
      ['2026-07-14 9pm', '2026-07-14T21:00:00'],
      ['2026-07-14T21:00', '2026-07-14T21:00:00'],
      ['2026-07-14 21:00:15', '2026-07-14T21:00:15'],
      ['2026-07-14T21:00Z', '2026-07-14T18:30:00'],
      ['2026-07-14T21:00:00.250-02:30', '2026-07-14T21:00:00.25'],
      ['2026-07-15T05:15:00+05:45', '2026-07-14T21:00:00'],
      ['2026‑07‑14T21:00', '2026-07-14T21:00:00'],
      ['١٤/٧ 9pm', '2026-07-14T21:00:00'],
    ])('%s, looking back, is %s', (typed, expected) => {
      expect(local(back(typed))).toBe(expected);
    });

    test.each([
      ['now', '2026-07-15T10:20:33'],
      ['tonight 7pm', '2026-07-15T19:00:00'],
      ['tonight at 7', '2026-07-15T19:00:00'],
      ['tonight', '2026-07-15T19:00:00'],
      ['tonight 1am', '2026-07-16T01:00:00'],
      ['this evening', '2026-07-15T19:00:00'],
      ['this morning', '2026-07-15T10:20:33'],
      ['tomorrow morning', '2026-07-16T09:00:00'],
      ['tomorrow', '2026-07-16T10:20:00'],
      ['tomorrow 8am', '2026-07-16T08:00:00'],
      ['tmr 9am', '2026-07-16T09:00:00'],
      ['in 2 hours', '2026-07-15T12:20:33'],
      ['2 hours from now', '2026-07-15T12:20:33'],
      ['in 3 days', '2026-07-18T10:20:00'],
      ['9pm', '2026-07-15T21:00:00'],
      ['9am', '2026-07-16T09:00:00'],
      ['Tue 9pm', '2026-07-21T21:00:00'],
      ['Wed 9pm', '2026-07-15T21:00:00'],
      ['sat afternoon', '2026-07-18T15:00:00'],
      ['next tuesday 9pm', '2026-07-21T21:00:00'],
      ['3 January 9am', '2027-01-03T09:00:00'],
      ['2026-07-15T19:00', '2026-07-15T19:00:00'],
    ])('%s, looking ahead, is %s', (typed, expected) => {
      expect(local(ahead(typed))).toBe(expected);
    });

    test.each([
      ['last night 9pm', '2026-07-15T21:00:00'],
      ['last night', '2026-07-15T21:00:00'],
      ['last night 12:30', '2026-07-16T00:30:00'],
      ['last night 2am', '2026-07-15T02:00:00'],
      ['tonight 9pm', '2026-07-15T21:00:00'],
      ['9pm', '2026-07-15T21:00:00'],
      ['yesterday 9pm', '2026-07-15T21:00:00'],
      ['Wed 9pm', '2026-07-15T21:00:00'],
      ['midnight', '2026-07-16T00:00:00'],
    ])('past midnight %s, looking back, is %s', (typed, expected) => {
      expect(local(back(typed, PAST_MIDNIGHT))).toBe(expected);
    });

    test.each([
      ['tonight 7pm', '2026-07-16T19:00:00'],
      ['tonight 2am', '2026-07-16T02:00:00'],
      ['tomorrow 9am', '2026-07-17T09:00:00'],
    ])('past midnight %s, looking ahead, is %s', (typed, expected) => {
      expect(local(ahead(typed, PAST_MIDNIGHT))).toBe(expected);
    });

    it('reads times that the machine’s own clocks skip', () => {
      // New York skips 02:00 to 03:00 and Samoa skipped 30 December 2011; Kathmandu skips neither.
      const zone = 'Asia/Kathmandu';
      expect(local(back('yesterday 2:30am', at('2026-03-09T10:00', zone), zone), zone)).toBe(
        '2026-03-08T02:30:00',
      );
      expect(local(back('2026-03-08 02:30', at('2026-03-09T10:00', zone), zone), zone)).toBe(
        '2026-03-08T02:30:00',
      );
      expect(local(back('8 march 2:30am', at('2026-03-08T02:45', zone), zone), zone)).toBe(
        '2026-03-08T02:30:00',
      );
      expect(local(back('yesterday 9pm', at('2011-12-31T10:00', zone), zone), zone)).toBe(
        '2011-12-30T21:00:00',
      );
      expect(local(back('fri 9pm', at('2011-12-31T10:00', zone), zone), zone)).toBe('2011-12-30T21:00:00');
    });
  },
);

describe('clocks that change', () => {
  it('counts hours as elapsed time and days by the calendar', () => {
    const now = at('2026-03-08T09:00');
    expect(local(back('12 hours ago', now))).toBe('2026-03-07T20:00:00');
    expect(local(back('yesterday', now))).toBe('2026-03-07T09:00:00');
    expect(local(back('1 day ago', now))).toBe('2026-03-07T09:00:00');
  });

  it('takes the first of two times that the clock shows twice', () => {
    const read = back('1:30am', at('2026-11-01T09:00'));
    expect(read.ok && Temporal.Instant.fromEpochMilliseconds(read.value).toString()).toBe(
      '2026-11-01T04:00:00Z',
    );
  });

  it('moves a time that the clock skips on to when it goes on', () => {
    expect(local(back('2:30am', at('2026-03-08T09:00')))).toBe('2026-03-08T03:30:00');
  });
});

describe('a time is exact or says that it is not', () => {
  test.each([
    ['last night 9pm', true],
    ['2h ago', true],
    ['now', true],
    ['2026-07-14T21:00', true],
    ['last night', false],
    ['yesterday', false],
    ['this morning', false],
    ['2026-07-14', false],
  ])('%s: %s', (typed, exact) => {
    expect(back(typed)).toMatchObject({ ok: true, exact });
  });
});

describe('a wrong time is refused, with what was read', () => {
  it('says that nothing was typed', () => {
    expect(back(' ')).toEqual({ ok: false, why: { kind: 'empty', typed: ' ' } });
  });

  it('refuses a time to come where one gone by is wanted, and the other way round', () => {
    expect(back('today 9pm')).toEqual({
      ok: false,
      why: { kind: 'future', at: at('2026-07-15T21:00'), typed: 'today 9pm' },
    });
    expect(back('tomorrow morning')).toMatchObject({ why: { kind: 'future', at: at('2026-07-16T09:00') } });
    expect(back('in 2 hours')).toMatchObject({ why: { kind: 'future' } });
    expect(back('2027-01-01T00:00Z')).toMatchObject({ why: { kind: 'future' } });
    expect(back('this evening')).toMatchObject({ why: { kind: 'future' } });
    expect(ahead('last night 9pm')).toEqual({
      ok: false,
      why: { kind: 'past', at: at('2026-07-14T21:00'), typed: 'last night 9pm' },
    });
    expect(ahead('2h ago')).toMatchObject({ why: { kind: 'past', at: at('2026-07-15T08:20:33') } });
    expect(ahead('2026-07-14')).toMatchObject({ why: { kind: 'past' } });
  });

  it('takes a time up to two minutes on the wrong side of now for now', () => {
    expect(local(back('today 10:22'))).toBe('2026-07-15T10:20:33');
    expect(back('today 10:23')).toMatchObject({ why: { kind: 'future' } });
    expect(local(ahead('today 10:19'))).toBe('2026-07-15T10:20:33');
    expect(ahead('today 10:18')).toMatchObject({ why: { kind: 'past' } });
  });

  it('asks which half of the day is meant, unless only one will do', () => {
    expect(back('yesterday at 9')).toEqual({
      ok: false,
      why: {
        kind: 'ambiguous',
        either: at('2026-07-14T09:00'),
        or: at('2026-07-14T21:00'),
        typed: 'yesterday at 9',
      },
    });
    expect(back('Tue 9:30')).toMatchObject({ why: { kind: 'ambiguous' } });
    expect(local(back('today 9:30'))).toBe('2026-07-15T09:30:00');
    expect(local(ahead('today 9:30'))).toBe('2026-07-15T21:30:00');
  });

  it('asks whether the day or the month comes first, unless only one will do', () => {
    expect(back('3/4/2026 9pm')).toMatchObject({
      why: { kind: 'ambiguous', either: at('2026-04-03T21:00'), or: at('2026-03-04T21:00') },
    });
    expect(local(back('7/8/2026 9pm'))).toBe('2026-07-08T21:00:00');
    expect(local(back('4/4/2026 9pm'))).toBe('2026-04-04T21:00:00');
  });

  test.each([
    'soon',
    'foo 9pm',
    '9pm bar',
    '9pm EST',
    '9pm-10pm',
    'yesterday 9pm 10pm',
    'yesterday 25:00',
    'yesterday 9:75',
    'yesterday 13pm',
    'yesterday 0pm',
    '2026-02-30',
    '2026-02-30T10:00',
    '2026-07-14T24:30',
    '2026-07-14T21:00:61',
    '2026-13-01',
    '31/2/2026',
    '31 feb',
    'last night 11am',
    'this morning 9pm',
    'May',
    'last month',
    'yesterday tomorrow',
    'tuesday 15 july 2026',
    '-2h ago',
    'ago',
    'in',
    '2 ago',
    '350 ml ago',
    'yesterday 2h ago',
    '9'.repeat(400),
  ])('refuses %s', (typed) => {
    expect(back(typed)).toMatchObject({ ok: false, why: { kind: 'not-a-time', typed } });
  });
});
