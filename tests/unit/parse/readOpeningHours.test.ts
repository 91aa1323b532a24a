import { describe, expect, it, test } from 'vitest';
import { readClosures, readDayHours } from '../../../src/parse/readOpeningHours.ts';

describe('a day’s opening hours', () => {
  test.each([
    ['08:00-22:00', 480, 1320],
    ['8:00-22:00', 480, 1320],
    ['8-22', 480, 1320],
    ['08:00 – 22:00', 480, 1320],
    ['8am-10pm', 480, 1320],
    ['8 a.m. to 10 p.m.', 480, 1320],
    ['8:30AM - 9.15PM', 510, 1275],
    ['0800-2200', 480, 1320],
    ['from 8am until 10pm', 480, 1320],
    ['noon-9pm', 720, 1260],
    ['12pm-9pm', 720, 1260],
    ['noon to midnight', 720, 1440],
    ['6pm-12am', 1080, 1440],
    ['18:00-24:00', 1080, 1440],
    ['18:00-00:00', 1080, 1440],
    ['18:00-02:00', 1080, 1560],
    ['6pm-2am', 1080, 1560],
    ['00:00-24:00', 0, 1440],
    ['24 hours', 0, 1440],
    ['9am-18:00', 540, 1080],
    ['９:００－２１:００', 540, 1260],
  ])('%s opens at minute %d and closes at %d', (typed, opens, closes) => {
    expect(readDayHours(typed)).toEqual({ ok: true, value: { opens, closes } });
  });

  test.each(['closed', 'Closed', ' shut '])('%s is a day off', (typed) => {
    expect(readDayHours(typed)).toEqual({ ok: true, value: 'closed' });
  });

  test.each([
    ['', 'empty'],
    ['8-10pm', 'which-half'],
    ['8am-10', 'which-half'],
    ['08:00-08:00', 'no-time-between'],
    ['8am', 'not-hours'],
    ['25:00-26:00', 'not-hours'],
    ['08:75-22:00', 'not-hours'],
    ['13pm-14pm', 'not-hours'],
    ['0am-8am', 'not-hours'],
    ['08:00-22:00 mostly', 'not-hours'],
    ['08:00-12:00-18:00', 'not-hours'],
    ['whenever', 'not-hours'],
    ['24:30-25:00', 'not-hours'],
  ])('refuses %s as %s', (typed, kind) => {
    expect(readDayHours(typed)).toEqual({ ok: false, why: { kind, typed } });
  });
});

describe('closed days', () => {
  it('are read one by one, in stretches, and once each', () => {
    expect(readClosures('2026-12-25')).toEqual({ ok: true, value: ['2026-12-25'] });
    expect(readClosures('2026-12-31 to 2027-01-02, 2026-12-25, 2027-01-01')).toEqual({
      ok: true,
      value: ['2026-12-25', '2026-12-31', '2027-01-01', '2027-01-02'],
    });
    expect(readClosures('2028-02-28..2028-03-01')).toEqual({
      ok: true,
      value: ['2028-02-28', '2028-02-29', '2028-03-01'],
    });
    expect(readClosures('2026-12-24 – 2026-12-25')).toMatchObject({ value: ['2026-12-24', '2026-12-25'] });
  });

  it('are refused with the day that is none', () => {
    expect(readClosures('')).toEqual({ ok: false, why: { kind: 'empty', typed: '' } });
    expect(readClosures('2026-02-30')).toMatchObject({ why: { kind: 'not-a-day', day: '2026-02-30' } });
    expect(readClosures('2026-12-24 to Christmas')).toMatchObject({
      why: { kind: 'not-a-day', day: 'christmas' },
    });
    expect(readClosures('2026-12-25,')).toMatchObject({ why: { kind: 'not-a-day', day: '' } });
    expect(readClosures('2026-12-26 to 2026-12-25')).toMatchObject({ why: { kind: 'not-a-stretch' } });
    expect(readClosures('2026-12-26 to 2036-12-25')).toMatchObject({ why: { kind: 'not-a-stretch' } });
  });
});
