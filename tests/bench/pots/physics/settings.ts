import type { Span } from './chance.ts';

/** Things for measuring that are kept together: how far they are off from those that the windows were set with. */
export interface Kit {
  weighingCup: string;
  gravityOff: number;
  flowCup: string;
  /** Its seconds over those of the first. */
  secondsTimes: number;
}

/** A room, its strangers and its people. Whoever decides knows none of it. */
export interface RoomSettings {
  name: string;
  buckets: number;
  /** For each bucket and day. */
  visits: number;
  strangers: {
    /** For each bucket and day, and how much of it, in ml or g; salt in rungs of 0.03 % of the dry mass. */
    water: { perDay: number; ml: Span };
    powder: { perDay: number; grams: Span };
    salt: { perDay: number; rungs: Span };
    lidOff: { perDay: number; ml: Span };
  };
  /** ml a day under the lid. */
  evaporation: Span;
  /** Of ln of what the glaze adds to water's seconds: a walk, and a bucket's own lean, a day. */
  flowDrift: { sd: number; lean: Span };
  celsius: Span;
  faults: {
    stirUnlogged: number;
    additionUnlogged: number;
    digitsSwapped: number;
    cupClogged: number;
    /** What a clog does to the seconds. */
    clogTimes: Span;
    wrongBucket: number;
    /** "Right" is said of the flow by somebody who did not look. */
    blindLook: number;
  };
  /** Standard deviations; of seconds, a look, a volume judged by eye and a pour as a part of it. */
  noise: { gravity: number; seconds: number; look: number; eye: number; pour: number };
  kits: readonly [Kit, ...Kit[]];
}

/** What counts as right beyond a window's edges: the leeway of gravity, and of seconds as a part. */
export const leeway = { gravity: 0.005, seconds: 0.07 } as const;
/** A bucket counts as stirred so long. */
export const stirredFor = 45;

/** Minutes that each deed takes (common practice). What is waited for is no work. */
export const takes = {
  stir: 3,
  stirOn: 5,
  hasteStir: 1,
  weighAndTime: 2,
  weigh: 1.5,
  time: 1,
  glance: 0.2,
  pour: 1,
  powder: 3,
  sieve: 8,
} as const;

export type Deed = keyof typeof takes;

/** Each weighing cup: empty, and the water that fills it, in grams (common practice). */
export const weighingCup = { tare: 143.6, water: 249.3 } as const;

/** Who shares a room, and when they come (common practice). */
export const habits = {
  people: 24,
  /** Minutes after midnight. */
  keeperComes: 8 * 60,
  opens: 10 * 60,
  openFor: 12 * 60,
  /** Monday first; two class evenings and Saturday are busy, Monday is not. */
  busyness: [0.4, 1.3, 0.8, 1.3, 0.8, 1.6, 0.8],
} as const;

/** Pails as they may be. All from memory, save what says otherwise. */
export const pails = {
  /** ml to the rim. */
  rim: 19_000,
  /** ml when full, and below which part of it a keeper tops up (common practice). */
  full: 15_000,
  topUpBelow: 0.55,
  /** Taken along by each visit's pots, ml. */
  dip: [60, 190] as Span,
  grains: [2.52, 2.68] as Span,
  middleGravity: [1.4, 1.5] as Span,
  middleSeconds: [11, 18] as Span,
  /** Half of a window. */
  halfGravity: [0.012, 0.02] as Span,
  halfSeconds: [1.3, 2.2] as Span,
  /** Seconds that water takes through the cup: a hole of 4 mm. */
  water: 4.8,
  /** ln of the seconds beyond water's, for a unit of gravity and for a rung of salt. */
  perGravity: [9, 20] as Span,
  perRung: [0.16, 0.45] as Span,
  /** How much thicker, in the same ln, after a usual stir than after a long one. */
  gel: [0.02, 0.14] as Span,
  /** Minutes after which a loosened gel has set again. */
  gelsAgain: 180,
  /** Of its grains, what the top of a pail loses in a day at rest. */
  sinks: 0.1,
  /** Fresh mix differs from mid-window by so much: gravity, and ln of the seconds beyond water's. */
  freshOff: { gravity: 0.006, flow: 0.09 },
} as const;

const one: Kit = { weighingCup: 'steel cup', gravityOff: 0, flowCup: 'hall cup', secondsTimes: 1 };

/** A busy room. Rates and sizes from memory, people's faults common practice. */
export const busy: RoomSettings = {
  name: 'busy',
  buckets: 8,
  visits: 1.35,
  strangers: {
    water: { perDay: 0.058, ml: [200, 1_050] },
    powder: { perDay: 0.016, grams: [250, 1_100] },
    salt: { perDay: 0.028, rungs: [0.7, 2.3] },
    lidOff: { perDay: 0.036, ml: [110, 420] },
  },
  evaporation: [5, 27],
  flowDrift: { sd: 0.026, lean: [-0.006, 0.006] },
  celsius: [18.5, 21.5],
  faults: {
    stirUnlogged: 0.2,
    additionUnlogged: 0.1,
    digitsSwapped: 0.02,
    cupClogged: 0.02,
    clogTimes: [1.2, 1.9],
    wrongBucket: 0.01,
    blindLook: 0.06,
  },
  noise: { gravity: 0.0043, seconds: 0.034, look: 0.13, eye: 0.08, pour: 0.035 },
  kits: [one],
};

const strangersTimes = (times: number): RoomSettings['strangers'] => {
  const { water, powder, salt, lidOff } = busy.strangers;
  return {
    water: { ...water, perDay: times * water.perDay },
    powder: { ...powder, perDay: times * powder.perDay },
    salt: { ...salt, perDay: times * salt.perDay },
    lidOff: { ...lidOff, perDay: times * lidOff.perDay },
  };
};

/** The rooms of the bench: each is the busy one but for what its name says. From memory. */
export const benchRooms: readonly RoomSettings[] = [
  {
    ...busy,
    name: 'tidy',
    strangers: strangersTimes(0.4),
    faults: { ...busy.faults, stirUnlogged: 0.08, additionUnlogged: 0.04, blindLook: 0.02 },
  },
  busy,
  { ...busy, name: 'rough', strangers: strangersTimes(1.8) },
  {
    ...busy,
    name: 'forgetful',
    faults: { ...busy.faults, stirUnlogged: 0.5, additionUnlogged: 0.35 },
  },
  { ...busy, name: 'cold', celsius: [8, 13] },
  {
    ...busy,
    name: 'cups',
    kits: [
      one,
      { weighingCup: 'dented cup', gravityOff: 0.005, flowCup: 'long cup', secondsTimes: 1.08 },
      { weighingCup: 'glass cup', gravityOff: -0.004, flowCup: 'short cup', secondsTimes: 0.94 },
    ],
  },
  { ...busy, name: 'blind', faults: { ...busy.faults, blindLook: 0.5 } },
];
