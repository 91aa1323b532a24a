import { Temporal } from '@js-temporal/polyfill';
import { describe, expect, it, test } from 'vitest';
import { instant } from '../../../../src/studio/ids.ts';
import { usualHours, type OpeningHours } from '../../../../src/studio/time/openingHours.ts';
import { dryReady, type DryingCoat } from '../../../../src/studio/resist/overnight.ts';
import { usualMinimumHours } from '../../../../src/studio/settings/studio.ts';

const at = (local: string, zone: string) =>
  instant(Temporal.PlainDateTime.from(local).toZonedDateTime(zone).epochMilliseconds);

const coat = (zone: string, on: string, rest: Partial<DryingCoat> = {}): DryingCoat => ({
  kind: 'wax',
  onAt: at(on, zone),
  zone,
  hours: usualHours,
  minimumHours: usualMinimumHours,
  dryingFactor: 1,
  ...rest,
});

const ready = (given: DryingCoat): { local: string; because: string } | 'never' => {
  const answer = dryReady(given);
  if (answer === 'never') return 'never';
  const zoned = Temporal.Instant.fromEpochMilliseconds(answer.readyAt).toZonedDateTimeISO(given.zone);
  return { local: zoned.toString({ timeZoneName: 'never' }), because: answer.why.because };
};

const ST_JOHNS = 'America/St_Johns';

/** Expected instants are worked out by hand from the clock changes of the tz database. */
describe('an emulsion is dry overnight', () => {
  test.each([
    // on in the evening: twelve hours later
    [ST_JOHNS, '2026-07-15T21:00', '2026-07-16T09:00:00-02:30', 'hours'],
    // on before eight: the studio is still closed twelve hours later
    [ST_JOHNS, '2026-07-15T18:00', '2026-07-16T08:00:00-02:30', 'opening'],
    // on in the morning: twelve hours end at 22:00, but no night has passed
    [ST_JOHNS, '2026-07-15T10:00', '2026-07-16T08:00:00-02:30', 'opening'],
    // on after midnight: 05:00 comes before the twelve hours end
    [ST_JOHNS, '2026-07-16T01:00', '2026-07-16T13:00:00-02:30', 'hours'],
    // on at 05:00 exactly: the same 05:00 does not count as after it
    [ST_JOHNS, '2026-07-16T05:00', '2026-07-17T08:00:00-02:30', 'opening'],
    [ST_JOHNS, '2026-07-16T04:59', '2026-07-16T16:59:00-02:30', 'hours'],
    // the night that skips an hour: twelve hours from 20:30 end at 09:30
    [ST_JOHNS, '2026-03-07T20:30', '2026-03-08T09:30:00-02:30', 'hours'],
    ['America/New_York', '2026-03-07T20:00', '2026-03-08T09:00:00-04:00', 'hours'],
    ['Europe/London', '2026-03-28T21:00', '2026-03-29T10:00:00+01:00', 'hours'],
    // the night that repeats an hour
    [ST_JOHNS, '2026-10-31T21:00', '2026-11-01T08:00:00-03:30', 'hours'],
    [ST_JOHNS, '2026-10-31T20:30', '2026-11-01T08:00:00-03:30', 'opening'],
    ['Europe/London', '2026-10-24T22:00', '2026-10-25T09:00:00+00:00', 'hours'],
    // half an hour of summer time
    ['Australia/Lord_Howe', '2026-04-04T21:00', '2026-04-05T08:30:00+10:30', 'hours'],
    ['Australia/Lord_Howe', '2026-10-03T21:00', '2026-10-04T09:30:00+11:00', 'hours'],
    // the day that Samoa skipped
    ['Pacific/Apia', '2011-12-29T21:00', '2011-12-31T09:00:00+14:00', 'hours'],
    ['Asia/Kathmandu', '2026-06-01T21:00', '2026-06-02T09:00:00+05:45', 'hours'],
  ])('%s, on at %s, is ready at %s', (zone, on, local, because) => {
    expect(ready(coat(zone, on))).toEqual({ local, because });
    expect(ready(coat(zone, on, { kind: 'latex' }))).toEqual({ local, because });
  });

  it('waits for the night when the hours are short and the studio is always open', () => {
    const always = { opens: 0, closes: 1440 };
    const week = Object.fromEntries(Object.keys(usualHours.week).map((day) => [day, always]));
    const hours: OpeningHours = { week: { ...usualHours.week, ...week }, closures: [] };
    expect(ready(coat(ST_JOHNS, '2026-07-15T21:00', { hours, minimumHours: 4 }))).toEqual({
      local: '2026-07-16T05:00:00-02:30',
      because: 'night',
    });
  });

  it('waits longer in a cold or damp room', () => {
    expect(ready(coat(ST_JOHNS, '2026-07-15T18:00', { dryingFactor: 1.5 }))).toEqual({
      local: '2026-07-16T12:00:00-02:30',
      because: 'hours',
    });
    expect(ready(coat(ST_JOHNS, '2026-07-15T18:00', { dryingFactor: 3 }))).toEqual({
      local: '2026-07-17T08:00:00-02:30',
      because: 'opening',
    });
  });

  it('waits until somebody is there', () => {
    const closed: OpeningHours = {
      week: { ...usualHours.week, thursday: 'closed', friday: 'closed' },
      closures: ['2026-07-18'],
    };
    expect(ready(coat(ST_JOHNS, '2026-07-15T21:00', { hours: closed }))).toEqual({
      local: '2026-07-19T08:00:00-02:30',
      because: 'opening',
    });
  });

  it('is never ready in a studio that never opens', () => {
    const shut = Object.fromEntries(Object.keys(usualHours.week).map((day) => [day, 'closed' as const]));
    const hours: OpeningHours = { week: { ...usualHours.week, ...shut }, closures: [] };
    expect(ready(coat(ST_JOHNS, '2026-07-15T21:00', { hours }))).toBe('never');
  });

  it('tells the hours and the night that it counted', () => {
    const answer = dryReady(coat(ST_JOHNS, '2026-07-15T21:00', { dryingFactor: 1.25 }));
    expect(answer).toEqual({
      readyAt: at('2026-07-16T12:00', ST_JOHNS),
      why: {
        because: 'hours',
        dryHours: 15,
        hoursEnd: at('2026-07-16T12:00', ST_JOHNS),
        nightEnds: at('2026-07-16T05:00', ST_JOHNS),
      },
    });
  });

  it('answers in whole milliseconds, rounded up', () => {
    const answer = dryReady(coat(ST_JOHNS, '2026-07-15T21:00', { dryingFactor: 1 + 1 / 7 }));
    expect(answer !== 'never' && Number.isInteger(answer.readyAt)).toBe(true);
  });
});

describe('other resists', () => {
  it('lets melted wax set in minutes, whoever is there', () => {
    expect(ready(coat(ST_JOHNS, '2026-07-15T21:55', { kind: 'hot-wax' }))).toEqual({
      local: '2026-07-15T22:10:00-02:30',
      because: 'sets',
    });
  });

  it('has tape ready at once', () => {
    expect(ready(coat(ST_JOHNS, '2026-07-15T23:00', { kind: 'tape' }))).toEqual({
      local: '2026-07-15T23:00:00-02:30',
      because: 'at-once',
    });
  });
});
