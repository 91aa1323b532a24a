import fc from 'fast-check';
import { flowCups } from '../../../src/glaze/flow/flowCup.ts';
import {
  celsius,
  fraction,
  grams,
  gravity,
  millilitres,
  millimetres,
  seconds,
} from '../../../src/glaze/units.ts';
import {
  flowLooks,
  holdCauses,
  observations,
  stirTools,
  type Added,
  type BucketEvent,
} from '../../../src/studio/bucket/bucketEvent.ts';
import {
  bucketCautions,
  bucketUses,
  type BucketSettings,
} from '../../../src/studio/settings/bucketSettings.ts';
import { duration, instant, memberId, seq, streamNo } from '../../../src/studio/ids.ts';
import { weekdays } from '../../../src/studio/time/openingHours.ts';
import type { StudioEvent } from '../../../src/studio/settings/studio.ts';

const amount = (max: number) => fc.double({ min: 0.001, max, noNaN: true });
const anyGravity = fc.double({ min: 1.001, max: 2.4, noNaN: true }).map(gravity);
const volume = amount(20_000).map(millilitres);
const mass = amount(5_000).map(grams);
const length = amount(400).map(millimetres);
const time = amount(90).map(seconds);
const anyDuration = fc.integer({ min: 0, max: 1e10 }).map(duration);
/** Any text that can be typed, in every script, emoji too, but without NUL and lone surrogates. */
export const typed = fc.string({ unit: 'binary', maxLength: 30 }).map((text) => text.replaceAll('\0', ''));
const bucket = fc.integer({ min: 1, max: 60 }).map(streamNo);
const cupKind = fc.constantFrom(...flowCups.map(({ kind }) => kind), 'own' as const);
const seen = fc.uniqueArray(fc.constantFrom(...observations));
const stretch = <T>(one: fc.Arbitrary<T>) => fc.record({ low: one, high: one });

const settings: fc.Arbitrary<BucketSettings> = fc.record(
  {
    name: typed,
    nick: typed,
    use: fc.constantFrom(...bucketUses),
    pail: volume,
    shape: fc.record({ bottom: length, top: length, height: length }),
    gravity: stretch(anyGravity),
    efflux: stretch(time),
    cup: typed,
    solids: anyGravity.map((value) => gravity(value + 1)),
    restLimit: anyDuration,
    shelfLife: anyDuration,
    mesh: fc.oneof(fc.integer({ min: 20, max: 400 }), fc.constant('never' as const)),
    cautions: fc.uniqueArray(fc.constantFrom(...bucketCautions)),
    recipe: typed,
    glaze: typed,
    cone: fc.integer({ min: -22, max: 42 }),
    atmosphere: typed,
    bodies: typed,
  },
  { requiredKeys: ['name', 'use', 'solids', 'restLimit', 'shelfLife', 'mesh', 'cautions'] },
);

const someSettings: fc.Arbitrary<Partial<BucketSettings>> = fc.record(
  {
    nick: typed,
    gravity: stretch(anyGravity),
    solids: anyGravity.map((value) => gravity(value + 1)),
    pail: volume,
  },
  { requiredKeys: [] },
);

const added: fc.Arbitrary<Added> = fc.oneof(
  fc.record(
    { what: fc.constantFrom('water' as const, 'draw-off' as const), volume },
    { requiredKeys: ['what'] },
  ),
  fc.record({ what: fc.constant('dry' as const), mass }, { requiredKeys: ['what'] }),
  fc.record(
    { what: fc.constant('flocculant' as const), volume, heptahydrate: mass },
    { requiredKeys: ['what'] },
  ),
  fc.record({ what: fc.constant('deflocculant' as const), volume, mass }, { requiredKeys: ['what'] }),
  fc.record(
    { what: fc.constant('glaze' as const), volume, gravity: anyGravity, gravityU: amount(0.1), from: bucket },
    { requiredKeys: ['what'] },
  ),
  fc.record({ what: fc.constant('taken' as const), volume, to: bucket }, { requiredKeys: ['what'] }),
  fc.record({ what: fc.constant('other' as const), name: typed, volume, mass }, { requiredKeys: ['what'] }),
);

export const setup: fc.Arbitrary<Extract<BucketEvent, { kind: 'setup' }>> = fc.record(
  { kind: fc.constant('setup' as const), settings, volume },
  { requiredKeys: ['kind', 'settings'] },
);

/** Events of a bucket that has been set up. */
export const ordinary: fc.Arbitrary<BucketEvent> = fc.oneof(
  fc.record(
    {
      kind: fc.constant('change' as const),
      settings: someSettings,
      cleared: fc.uniqueArray(fc.constantFrom('recipe' as const, 'shape' as const, 'efflux' as const)),
      volume,
    },
    { requiredKeys: ['kind', 'settings'] },
  ),
  fc.record(
    {
      kind: fc.constant('reading' as const),
      gravity: fc.record({
        value: anyGravity,
        u95: amount(0.05),
        by: fc.constantFrom('weight' as const, 'stated' as const, 'hydrometer' as const),
      }),
      flow: fc.record({
        cup: typed,
        kind: cupKind,
        seconds: fc.oneof(time, fc.constant('wont-run' as const)),
      }),
      look: fc.constantFrom(...flowLooks),
      gap: length,
      temperature: amount(40).map(celsius),
      stirred: fc.boolean(),
      seen,
    },
    { requiredKeys: ['kind', 'seen'] },
  ),
  fc.record(
    { kind: fc.constant('addition' as const), added, remake: fc.boolean() },
    { requiredKeys: ['kind', 'added'] },
  ),
  fc.record(
    { kind: fc.constant('stir' as const), minutes: amount(20), tool: fc.constantFrom(...stirTools), seen },
    { requiredKeys: ['kind', 'seen'] },
  ),
  fc.record({ kind: fc.constant('sieve' as const), mesh: amount(200) }, { requiredKeys: ['kind'] }),
  fc.record(
    {
      kind: fc.constant('tile' as const),
      seconds: time,
      thickness: length,
      absorption: amount(20),
      body: typed,
      gravity: anyGravity,
    },
    { requiredKeys: ['kind', 'seconds', 'thickness'] },
  ),
  fc.record({ kind: fc.constant('hold' as const), cause: fc.constantFrom(...holdCauses), why: typed }),
  fc.record({ kind: fc.constantFrom('release' as const, 'retire' as const) }),
  fc.record({
    kind: fc.constant('learned' as const),
    days: amount(20),
    counts: fc.record({
      water: amount(9),
      powder: amount(9),
      waterOut: amount(9),
      salt: amount(9),
      blind: amount(9),
      looks: amount(40),
    }),
    vessels: fc.array(
      fc.record(
        { vessel: typed, count: amount(20), squares: amount(0.1) },
        { requiredKeys: ['count', 'squares'] },
      ),
      { maxLength: 3 },
    ),
    cups: fc.array(fc.record({ cup: typed, count: amount(20), squares: amount(0.1) }), { maxLength: 3 }),
  }),
);

const opening = fc
  .record({ opens: fc.integer({ min: 0, max: 1439 }), long: fc.integer({ min: 1, max: 1440 }) })
  .map(({ opens, long }) => ({ opens, closes: opens + long }));
const dayHours = fc.oneof(opening, fc.constant('closed' as const));

export const studioEvent: fc.Arbitrary<StudioEvent> = fc.oneof(
  fc.record({ kind: fc.constant('zone' as const), zone: typed }),
  fc.record({
    kind: fc.constant('units' as const),
    units: fc.constantFrom('metric' as const, 'us' as const, 'imperial' as const),
  }),
  fc.record({
    kind: fc.constant('vessel' as const),
    vessel: fc.record({
      name: typed,
      tare: mass,
      water: mass,
      temperature: amount(40).map(celsius),
      scaleStep: mass,
    }),
  }),
  fc.record({ kind: fc.constant('cup' as const), cup: fc.record({ name: typed, kind: cupKind }) }),
  fc.record({ kind: fc.constant('name' as const), name: typed }),
  fc.record({ kind: fc.constant('water' as const), hard: fc.boolean() }),
  fc.record({ kind: fc.constant('keeper' as const), member: typed.map(memberId), keeper: fc.boolean() }),
  fc.record({ kind: fc.constant('sure' as const), chance: amount(1) }),
  fc.record({ kind: fc.constant('deflocculant' as const), what: typed }),
  fc.record({ kind: fc.constant('scoop' as const), holds: mass }),
  fc.record({ kind: fc.constant('keeper-role' as const), role: typed }),
  fc.record({ kind: fc.constant('channel' as const), channel: typed }),
  fc.record({
    kind: fc.constant('hours' as const),
    week: fc.record({ monday: dayHours, sunday: dayHours }, { requiredKeys: [] }),
  }),
  fc.record({
    kind: fc.constant('closures' as const),
    days: fc.array(fc.constantFrom('2026-12-24', '2026-12-25')),
    closed: fc.boolean(),
  }),
  fc.record(
    {
      kind: fc.constant('drying' as const),
      minimumHours: fc.integer({ min: 1, max: 72 }),
      temperature: amount(40).map(celsius),
      humidity: fc.double({ min: 0.01, max: 1, noNaN: true }).map(fraction),
    },
    { requiredKeys: ['kind'] },
  ),
  fc.record({
    kind: fc.constant('session' as const),
    session: fc.record({ name: typed, day: fc.constantFrom(...weekdays), hours: opening }),
  }),
  fc.record({ kind: fc.constant('session-off' as const), name: typed }),
  fc.record(
    {
      kind: fc.constant('reminders' as const),
      lead: fc.integer({ min: 300_000, max: 86_400_000 }).map(duration),
      quiet: fc.constantFrom('none' as const, { from: 1320, until: 1920 }),
    },
    { requiredKeys: ['kind'] },
  ),
  fc.record(
    { kind: fc.constant('firing' as const), at: fc.integer({ min: 0, max: 4e12 }).map(instant) },
    { requiredKeys: ['kind'] },
  ),
  fc.record({
    kind: fc.constant('reach' as const),
    member: typed.map(memberId),
    by: fc.constantFrom('direct' as const, 'channel' as const),
  }),
  fc.record({ kind: fc.constant('undo' as const), of: fc.integer({ min: 1, max: 99 }).map(seq) }),
);
