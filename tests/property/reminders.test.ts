import { Temporal } from '@js-temporal/polyfill';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ResistCoat } from '../../src/studio/resist/resistCoat.ts';
import { coatReady } from '../../src/studio/resist/coatReady.ts';
import { coatReminders } from '../../src/studio/remind/coatReminders.ts';
import { newStudio } from '../../src/studio/settings/foldStudio.ts';
import {
  coatStream,
  entryId,
  instant,
  later,
  duration,
  memberId,
  minutes,
  seq,
} from '../../src/studio/ids.ts';
import { weekdays } from '../../src/studio/time/openingHours.ts';
import { resists } from '../../src/studio/resist/overnight.ts';
import { outsideQuiet, quietAt, type QuietHours } from '../../src/studio/time/quietHours.ts';
import { sessionsAfter } from '../../src/studio/time/session.ts';
import type { Studio } from '../../src/studio/settings/studio.ts';
import { zonedInstants } from '../helpers/zones.ts';

const quiet: fc.Arbitrary<QuietHours> = fc
  .record({ from: fc.integer({ min: 0, max: 1439 }), long: fc.integer({ min: 1, max: 1439 }) })
  .map(({ from, long }) => ({ from, until: from + long }));

/** The quiet hours around an instant, computed by another library. */
const stretches = (at: number, { from, until }: QuietHours, zone: string) => {
  const today = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone).toPlainDate();
  return [-1, 0].map((days) => {
    const wall = (minute: number) =>
      today
        .add({ days })
        .toPlainDateTime()
        .add({ minutes: minute })
        .toZonedDateTime(zone, { disambiguation: 'compatible' }).epochMilliseconds;
    return { from: wall(from), until: wall(until) };
  });
};

test('an instant is quiet when another library says so', () => {
  fc.assert(
    fc.property(zonedInstants, quiet, ({ zone, at }, hours) => {
      const expected = stretches(at, hours, zone).some(({ from, until }) => from <= at && at < until);
      expect(quietAt(instant(at), hours, zone) !== undefined).toBe(expected);
    }),
    { numRuns: 3000 },
  );
});

test('news is never earlier than it was due, and a warning never later', () => {
  fc.assert(
    fc.property(zonedInstants, quiet, ({ zone, at }, hours) => {
      expect(outsideQuiet(instant(at), hours, zone, 'after')).toBeGreaterThanOrEqual(at);
      expect(outsideQuiet(instant(at), hours, zone, 'before')).toBeLessThanOrEqual(at);
    }),
    { numRuns: 2000 },
  );
});

test('a session begins at its time on the wall of its weekday, as another library tells it', () => {
  const session = fc.record({
    name: fc.constant('s'),
    day: fc.constantFrom(...weekdays),
    hours: fc
      .record({ opens: fc.integer({ min: 0, max: 1439 }), long: fc.integer({ min: 1, max: 600 }) })
      .map(({ opens, long }) => ({ opens, closes: opens + long })),
  });
  fc.assert(
    fc.property(zonedInstants, session, ({ zone, at }, one) => {
      const [held] = sessionsAfter(instant(at), [one], { closures: [] }, zone);
      if (!held) throw new Error('a weekly session comes round');
      const date = Temporal.PlainDate.from(held.date);
      // Temporal numbers Sunday 7.
      expect(weekdays[date.dayOfWeek % 7]).toBe(one.day);
      const begins = date
        .toPlainDateTime()
        .add({ minutes: one.hours.opens })
        .toZonedDateTime(zone, { disambiguation: 'compatible' });
      expect(held.from).toBe(begins.epochMilliseconds);
      expect(held.from).toBeGreaterThan(at);
    }),
    { numRuns: 2000 },
  );
});

const cases = zonedInstants.chain(({ zone, at }) =>
  fc.record({
    at: fc.constant(at),
    studio: fc
      .record({ quiet: fc.option(quiet, { nil: undefined }), lead: fc.integer({ min: 5, max: 600 }) })
      .map(({ quiet: stretch, lead }): Studio => ({
        ...newStudio,
        zone,
        sessions: [{ name: 'tuesday', day: 'tuesday', hours: { opens: 1080, closes: 1260 } }],
        reminders: { lead: minutes(lead), ...(stretch && { quiet: stretch }) },
        firing: later(instant(at), duration(40 * 3_600_000)),
      })),
    resist: fc.constantFrom(...resists),
    plan: fc.option(fc.integer({ min: 1, max: 60 * 60_000 * 30 }), { nil: undefined }),
    ago: fc.integer({ min: 0, max: 20 * 3_600_000 }),
  }),
);

test('reminders come after the answer, while they are of use, and warnings before what they warn of', () => {
  fc.assert(
    fc.property(cases, ({ at, studio, resist, plan, ago }) => {
      const coat: ResistCoat = {
        id: entryId(coatStream, seq(1)),
        seq: seq(1),
        by: memberId('wren'),
        resist,
        pieces: 'bowl',
        onAt: instant(at - ago),
        loggedAt: instant(at),
        ...(plan !== undefined && { plannedFor: instant(at + plan) }),
        below: [],
      };
      const ready = coatReady(coat, studio);
      if (ready === 'never') throw new Error('it opens daily');
      const wanted = coatReminders(coat, studio);
      expect(new Set(wanted.map(({ key }) => key)).size).toBe(wanted.length);
      for (const { about, dueAt, goodUntil } of wanted) {
        expect(dueAt).toBeGreaterThan(at);
        expect(dueAt).toBeLessThan(goodUntil);
        if (about.kind === 'early') {
          expect(about.plan).toBeLessThan(ready.readyAt);
          expect(about.plan - dueAt).toBeGreaterThanOrEqual(studio.reminders.lead);
        }
        if (about.kind === 'ready') expect(dueAt).toBeGreaterThanOrEqual(ready.readyAt);
        if (about.kind === 'peel') expect(dueAt).toBeLessThan(about.firing);
      }
      // A coat that is ready later than planned is always reported, except tape.
      const told = wanted.some(({ about }) => about.kind === 'ready');
      expect(told).toBe(
        resist !== 'tape' && outsideQuiet(ready.readyAt, studio.reminders.quiet, studio.zone, 'after') > at,
      );
      expect(coatReminders({ ...coat, disowned: true }, studio)).toEqual([]);
    }),
    { numRuns: 2000 },
  );
});
