import {
  type BucketEntry,
  flowLooks,
  holdCauses,
  observations,
  type Observation,
  stirTools,
  type Added,
  type BucketEvent,
  type CupTime,
} from '../../src/studio/bucket/bucketEvent.ts';
import fc from 'fast-check';
import { celsius, grams, gravity, millilitres, millimetres, seconds } from '../../src/glaze/units.ts';
import { bucketCautions, type BucketSettings } from '../../src/studio/settings/bucketSettings.ts';
import { entryId, hours, instant, memberId, seq, streamNo } from '../../src/studio/ids.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: undefined });

const gravityWindow = fc
  .tuple(between(1.02, 1.9), between(0.001, 0.2))
  .map(([low, width]) => ({ low: gravity(low), high: gravity(low + width) }));
const effluxWindow = fc
  .tuple(between(5, 40), between(0.5, 20))
  .map(([low, width]) => ({ low: seconds(low), high: seconds(low + width) }));

/** Settings that a keeper could enter, usual and unusual. */
export const bucketSettings: fc.Arbitrary<BucketSettings> = fc
  .record(
    {
      name: fc.constant('Gull Grey'),
      use: fc.constant('dipping' as const),
      solids: fc.oneof(fc.constant(2.6), between(1.5, 7)).map(gravity),
      gravity: gravityWindow,
      efflux: effluxWindow,
      cup: fc.constant('ford4'),
      pail: fc.oneof(fc.constant(19_000), between(100, 250_000)).map(millilitres),
      restLimit: fc.constantFrom(0.05, 1, 4, 48).map(hours),
      shelfLife: fc.constantFrom(1, 24, 168).map(hours),
      mesh: fc.constantFrom(80, 'never' as const),
      cautions: fc.uniqueArray(fc.constantFrom(...bucketCautions), { maxLength: 2 }),
    },
    { requiredKeys: ['name', 'use', 'solids', 'restLimit', 'shelfLife', 'mesh', 'cautions'] },
  )
  // The command refuses a window that reaches the powder's own gravity.
  .filter(({ gravity: window, solids }) => window === undefined || window.high < solids);

const anyGravity = fc.oneof(between(1.36, 1.52), between(1, 2.5)).map(gravity);
const u95 = fc.constantFrom(0.0005, 0.005, 0.01, 0.02, 0.03, 0.2);
const seen = fc.oneof(
  { weight: 6, arbitrary: fc.constant<Observation[]>([]) },
  fc.uniqueArray(fc.constantFrom(...observations), { maxLength: 3 }),
);
const cupTime: fc.Arbitrary<CupTime> = fc.record({
  cup: fc.constantFrom('ford4', 'zahn2', 'hall cup'),
  kind: fc.constantFrom('ford4' as const, 'zahn2' as const, 'own' as const),
  seconds: fc.oneof(between(0.5, 600).map(seconds), fc.constant('wont-run' as const)),
});

export const reading: fc.Arbitrary<BucketEvent> = fc.record(
  {
    kind: fc.constant('reading' as const),
    gravity: fc.record({ value: anyGravity, u95, by: fc.constant('stated' as const) }),
    flow: cupTime,
    look: fc.constantFrom(...flowLooks),
    gap: between(0, 1000).map(millimetres),
    temperature: between(-5, 60).map(celsius),
    stirred: fc.oneof({ weight: 3, arbitrary: fc.constant(true) }, fc.boolean()),
    seen,
  },
  { requiredKeys: ['kind', 'seen'] },
);

const volume = fc.oneof(between(1, 900), between(0.05, 200_000)).map(millilitres);
const mass = fc.oneof(between(1, 900), between(0.05, 200_000)).map(grams);
const optional = { requiredKeys: ['what'] as 'what'[] };
const added: fc.Arbitrary<Added> = fc.oneof(
  fc.record({ what: fc.constantFrom('water' as const, 'draw-off' as const), volume }, optional),
  fc.record({ what: fc.constant('taken' as const), volume }, optional),
  fc.record({ what: fc.constant('dry' as const), mass }, optional),
  fc.record({ what: fc.constant('flocculant' as const), volume }, optional),
  fc.record({ what: fc.constant('flocculant' as const), heptahydrate: mass }, optional),
  fc.record({ what: fc.constant('deflocculant' as const), volume }, optional),
  fc.record({ what: fc.constant('glaze' as const), volume, gravity: anyGravity }, optional),
  fc.record({ what: fc.constant('other' as const), mass }, optional),
);
const addition: fc.Arbitrary<BucketEvent> = fc.record(
  { kind: fc.constant('addition' as const), added, remake: fc.constant(true) },
  { requiredKeys: ['kind', 'added'] },
);
const stir: fc.Arbitrary<BucketEvent> = fc.record(
  {
    kind: fc.constant('stir' as const),
    minutes: between(0.1, 30),
    tool: fc.constantFrom(...stirTools),
    seen,
  },
  { requiredKeys: ['kind', 'seen'] },
);

/** Events that change neither the contents nor the flow. */
export const keepersDoing: fc.Arbitrary<BucketEvent> = fc.oneof(
  fc.record({
    kind: fc.constant('hold' as const),
    cause: fc.constantFrom(...holdCauses),
    why: fc.constant('odd'),
  }),
  fc.constant({ kind: 'release' as const }),
  fc.constant({ kind: 'sieve' as const }),
  fc.record({
    kind: fc.constant('tile' as const),
    seconds: fc.constant(seconds(3)),
    thickness: fc.constant(millimetres(1)),
  }),
);
const change: fc.Arbitrary<BucketEvent> = fc.record(
  { kind: fc.constant('change' as const), settings: fc.oneof(fc.constant({}), bucketSettings), volume },
  { requiredKeys: ['kind', 'settings'] },
);

export const bucketEvent: fc.Arbitrary<BucketEvent> = fc.oneof(
  { weight: 6, arbitrary: reading },
  { weight: 4, arbitrary: addition },
  { weight: 3, arbitrary: stir },
  { weight: 1, arbitrary: keepersDoing },
  { weight: 1, arbitrary: change },
);

/**
 * Minutes between two entries: within a stir, beyond the time in which a reading is believed, past the rest limit, past
 * a shelf life.
 */
const gap = fc.constantFrom(0, 0, 1, 9, 11, 20, 130, 300, 4_320, 11_520);

export interface Story {
  entries: BucketEntry[];
  /** Some time after the last entry. */
  now: ReturnType<typeof instant>;
}

const start = Date.UTC(2026, 2, 1, 12);

/** Entries in chronological order. */
export const entriesOf = (events: readonly { event: BucketEvent; minute: number }[]): BucketEntry[] =>
  events.map(({ event, minute }, i) => ({
    id: entryId(streamNo(1), seq(i + 1)),
    stream: streamNo(1),
    seq: seq(i + 1),
    at: instant(start + minute * 60_000),
    loggedAt: instant(start + minute * 60_000),
    by: memberId('wren'),
    event,
  }));

const setup: fc.Arbitrary<BucketEvent> = fc
  .record({ settings: bucketSettings, full: maybe(between(0.05, 1)) })
  .map(({ settings, full }) => ({
    kind: 'setup',
    settings,
    ...(full !== undefined && { volume: millilitres(full * (settings.pail ?? 15_000)) }),
  }));

/** A bucket's history, plausible or not. */
export const story: fc.Arbitrary<Story> = fc
  .record({
    first: setup,
    more: fc.array(fc.tuple(gap, bucketEvent), { maxLength: 12 }),
    wait: gap,
  })
  .map(({ first, more, wait }) => {
    let minute = 0;
    const timed = more.map(([gone, event]) => ({ event, minute: (minute += gone) }));
    return {
      entries: entriesOf([{ event: first, minute: 0 }, ...timed]),
      now: instant(start + (minute + wait) * 60_000),
    };
  });

/**
 * A history that ends with a stirred bucket, fresh readings of gravity and flow, and nothing that blocks, so that the
 * grid decides.
 */
export const gridStory: fc.Arbitrary<Story> = fc
  .record({
    window: gravityWindow.filter(({ low, high }) => high < 2.4 && high - low > 0.01),
    efflux: effluxWindow,
    solids: between(2.45, 4),
    pail: between(1_000, 60_000),
    full: between(0.05, 1),
    /** Distance from mid-window, in widths of the window. */
    off: fc.oneof(between(-1, 1), between(0.6, 8), between(-8, -0.6)),
    sure: fc.constantFrom(0.0005, 0.002, 0.005, 0.01, 0.02),
    time: maybe(between(1, 80)),
    days: fc.constantFrom(0, 2, 6.9, 8),
  })
  .map(({ window, efflux, solids, pail, full, off, sure, time, days }) => {
    const settings: BucketSettings = {
      name: 'Gull Grey',
      use: 'dipping',
      solids: gravity(solids),
      gravity: window,
      efflux,
      cup: 'ford4',
      pail: millilitres(pail),
      restLimit: hours(1),
      shelfLife: hours(24 * 7),
      mesh: 80,
      cautions: [],
    };
    const value = gravity(
      Math.min(
        solids - 0.01,
        Math.max(1.001, (window.low + window.high) / 2 + off * (window.high - window.low)),
      ),
    );
    const minute = days * 24 * 60;
    const measured: BucketEvent = {
      kind: 'reading',
      gravity: { value, u95: sure, by: 'stated' },
      ...(time !== undefined && { flow: { cup: 'ford4', kind: 'ford4', seconds: seconds(time) } }),
      stirred: true,
      seen: [],
    };
    return {
      entries: entriesOf([
        { event: { kind: 'setup', settings, volume: millilitres(pail * full) }, minute: 0 },
        { event: measured, minute },
      ]),
      now: instant(start + (minute + 1) * 60_000),
    };
  });
