import { coverage95 } from '../../glaze/statistics/normal.ts';

/**
 * What is believed of any bucket before it has told about itself, all of it from memory: shared glaze rooms, and people
 * with their ordinary faults. Litres, days, units of gravity, natural logarithms of seconds; `sd` one standard deviation.
 */
export const unlogged = {
  /** A stranger pours water in. */
  water: { perDay: 0.05, size: 0.75, sd: 0.35 },
  /** Somebody tips dry powder in: litres of its grains. */
  powder: { perDay: 0.02, size: 0.31, sd: 0.12 },
  /** Clear water is taken off, or the lid was left off. */
  waterOut: { perDay: 0.05, size: 0.27, sd: 0.1 },
  /** Somebody salts it: what that adds to ln seconds. */
  salt: { perDay: 0.03, size: 0.31, sd: 0.11 },
} as const;

/** In a pail that holds less than so many litres, these sizes shrink in proportion. */
export const sizedFor = 8;

/** The rates above count like this many days of watching. */
export const priorDays = 20;

/** Water that dries off a pail with its lid on. */
export const evaporationPerDay = { litres: 0.016, sd: 0.008 };

/** How far things wander by themselves in a day, growing with √days. */
export const walkPerDay = { gravity: 0.0003, flow: 0.015, volume: 0.03 };

/** What a unit of gravity adds to ln seconds. */
export const flowPerGravity = { value: 10, sd: 3 };

/** The chance in a day that nothing of what was known holds any more. */
export const nothingHoldsPerDay = 0.002;

/** Past so many days what was known counts less and less, by a factor e in as many again. */
export const longestAged = 60;

/** A bucket of which nothing is known is expected near the middle of its windows, with this spread. */
export const unknown = { gravity: 0.08, flow: 0.5, volume: 0.5 };

/** Where a keeper has set no window: a dipping glaze (common practice). */
export const usual = { gravity: 1.45, gravitySd: 0.15, seconds: 14, litres: 10 };

/** Noise of a reading: a calibrated cup on a scale at best; a flow cup; a glance. */
export const noise = { gravity: 0.0045, flow: 0.033, glance: 0.12 };

/** After so many repeated readings, they count as much as the values given here for any instrument. */
export const repeatsWorth = 4;

/** Seconds of one cup repeat within 5 %, in ln seconds (common practice). */
export const usualSeconds = 0.05 / coverage95;

/** A brim-full cup weighs within ± 0.02 in gravity, until weighings with it were repeated (common practice). */
export const usualWeighing = 0.02 / coverage95;

/**
 * What a studio's other buckets have shown counts for a bucket like so many days of watching it, and like so many
 * repeated readings of each instrument. What would move an expected rate or a scatter by less than `news`, as a part of it, is
 * not written down. All from memory, and tried in the bench of pots.
 */
export const fromOthers = { days: 20, repeats: 20, news: 0.15 } as const;

/** How far another instrument may be off from the one that the window was set with. */
export const bias = { hydrometer: 0.005, cup: 0.07 };

/**
 * How often a reading is a slip of the hand. Then it may be anything: density per unit of gravity, of ln seconds, of
 * ln litres.
 */
export const slip = { chance: 0.02, gravity: 2.5, flow: 1.2, volume: 0.5 };

/**
 * With each reading, the chance that the bucket holds something else altogether, so that two odd readings that agree
 * are believed.
 */
export const anything = 0.004;

/** How often “right” is pressed without a look: as if 2 of 8 looks had been so. */
export const blindPress = { blind: 2, looks: 8 };

/** The chance that somebody who was told an amount, and logged a stir after it, poured it in. */
export const toldTaken = 0.5;

/** What a step of flocculant, 0.03 % of the dry mass, adds to ln seconds; a deflocculant's amounts tell little (common practice). */
export const doseStep = { percent: 0.03, flow: 0.35, sd: 0.25 };
export const deflocculated = { flow: -0.3, sd: 0.3 };

/**
 * A stir of five minutes and more loosens a gel, for so many hours: what that takes from ln seconds. A gel that builds up
 * again gives it back.
 */
export const loosened = { minutes: 5, hours: 3, flow: -0.06, sd: 0.05 };

/** What a thing of unknown amount can do. */
export const unknownAmount = { gravity: 0.03, volume: 0.15, flow: 0.3 };

/**
 * A bucket counts as right a little beyond its windows too. Without this each dip takes a minute longer, and nobody
 * sees the difference.
 */
export const margin = { gravity: 0.004, flow: 0.06 };

/** So many accounts of a bucket are carried on from entry to entry. */
export const mostComponents = 3;
/** An account less likely than this is let go. */
export const leastWeight = 1e-4;
