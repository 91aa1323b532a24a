import { Temporal } from '@js-temporal/polyfill';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readInstant } from '../../src/parse/readInstant.ts';
import { instant } from '../../src/studio/ids.ts';
import { zonedInstants } from '../helpers/zones.ts';

const RUNS = { numRuns: 3000 };
const HOUR = 3_600_000;
const YEAR = 366 * 24 * HOUR;
const zoned = (at: number, zone: string) =>
  Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone);

test('an instant printed in any zone’s offset is read back the same', () => {
  fc.assert(
    fc.property(zonedInstants, zonedInstants, ({ zone, at }, other) => {
      const printed = zoned(at, zone).toString({ timeZoneName: 'never' });
      fc.pre(/[+-]\d\d:\d\d$/.test(printed));
      const when = { now: instant(at + YEAR), zone: other.zone, looks: 'back' } as const;
      expect(readInstant(printed, when)).toEqual({ ok: true, value: at, exact: true });
      expect(readInstant(Temporal.Instant.fromEpochMilliseconds(at).toString(), when)).toMatchObject({
        value: at,
      });
    }),
    RUNS,
  );
});

test('yesterday, tomorrow and a weekday at a time are what another library makes of them', () => {
  const time = fc.record({ hour: fc.integer({ min: 0, max: 23 }), minute: fc.integer({ min: 0, max: 59 }) });
  fc.assert(
    fc.property(
      zonedInstants,
      time,
      fc.integer({ min: 2, max: 5 }),
      ({ zone, at }, { hour, minute }, days) => {
        const clock = `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
        const day = zoned(at, zone).toPlainDate();
        const on = (date: Temporal.PlainDate) =>
          date.toZonedDateTime({ timeZone: zone, plainTime: Temporal.PlainTime.from({ hour, minute }) })
            .epochMilliseconds;
        const now = instant(at);
        const yesterday = on(day.subtract({ days: 1 }));
        fc.pre(yesterday <= at); // Samoa once skipped a day, so that it had no yesterday
        expect(readInstant(`yesterday ${clock}`, { now, zone, looks: 'back' })).toMatchObject({
          value: yesterday,
        });
        const tomorrow = on(day.add({ days: 1 }));
        expect(readInstant(`tomorrow ${clock}`, { now, zone, looks: 'ahead' })).toMatchObject({
          value: tomorrow,
        });
        const then = day.subtract({ days });
        const weekday = then.toLocaleString('en', { weekday: 'long' });
        expect(readInstant(`${weekday} ${clock}`, { now, zone, looks: 'back' })).toMatchObject({
          value: on(then),
        });
        expect(readInstant(`${days} days ago ${clock}`, { now, zone, looks: 'back' })).toMatchObject({
          value: on(then),
        });
      },
    ),
    RUNS,
  );
});

test('hours ago are elapsed hours', () => {
  fc.assert(
    fc.property(zonedInstants, fc.integer({ min: 0, max: 600 }), ({ zone, at }, minutes) => {
      const read = readInstant(`${minutes} min ago`, { now: instant(at), zone, looks: 'back' });
      expect(read).toEqual({ ok: true, value: at - minutes * 60_000, exact: true });
    }),
    RUNS,
  );
});

const WORDS =
  'now last this next night tonight morning evening yesterday today tomorrow tue friday 9 9pm 21:30 midnight noon at on in ago 2 3 days hours h july 14/7 2026-07-14 T Z , - half an'.split(
    ' ',
  );

test('whatever is typed, a look back never answers the future, and a look ahead never the past', () => {
  const phrase = fc.oneof(
    fc.array(fc.constantFrom(...WORDS), { maxLength: 6 }).map((words) => words.join(' ')),
    fc.string({ unit: 'grapheme' }),
  );
  fc.assert(
    fc.property(zonedInstants, phrase, fc.constantFrom('back', 'ahead'), ({ zone, at }, typed, looks) => {
      const read = readInstant(typed, { now: instant(at), zone, looks });
      if (!read.ok) expect(read.why.typed).toBe(typed);
      else expect(looks === 'back' ? read.value <= at : read.value >= at).toBe(true);
    }),
    { numRuns: 20_000 },
  );
});

test('a long text is answered at once', () => {
  const when = { now: instant(1_784_121_633_000), zone: 'America/St_Johns', looks: 'back' } as const;
  for (const one of ['9', '9 ', 'at 9 ', 'last night ', '9pm ', 'in ', ' ago', '2h ', '-', '2026-', 'tue '])
    expect(readInstant(one.repeat(1000), when).ok).toBe(false);
});
