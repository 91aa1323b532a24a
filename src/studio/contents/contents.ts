import {
  grams,
  gravity,
  millilitres,
  type Gravity,
  type Grams,
  type Millilitres,
} from '../../glaze/units.ts';
import { nominalWater } from '../../glaze/slurry/slurry.ts';

/**
 * What is in the pail: grams of water and of dry powder, with their covariance (g²). Logged events change it and
 * believed readings correct it.
 */
export interface Contents {
  water: Grams;
  solids: Grams;
  covariance: { waterWater: number; waterSolids: number; solidsSolids: number };
}

/** Its change with temperature over a year is far below any vessel's uncertainty. */
export const waterGramsPerMl = nominalWater / 1000;

const widened = (
  { waterWater, waterSolids, solidsSolids }: Contents['covariance'],
  byWater: number,
  byBoth: number,
  bySolids: number,
): Contents['covariance'] => ({
  waterWater: waterWater + byWater,
  waterSolids: waterSolids + byBoth,
  solidsSolids: solidsSolids + bySolids,
});

/** A quantity with its standard uncertainty. */
export interface Estimate<T> {
  value: T;
  sd: number;
}

/** What a pail holds, from its volume and gravity. */
export const contentsFrom = (
  volume: Estimate<Millilitres>,
  slurry: Estimate<Gravity>,
  particleGravity: Gravity,
): Contents => {
  // After a keeper changes the powder's gravity, an old reading may be impossible for it.
  const phi = Math.min(0.99, Math.max(0, (slurry.value - 1) / (particleGravity - 1)));
  const waterPerMl = (1 - phi) * waterGramsPerMl;
  const solidsPerMl = phi * particleGravity * waterGramsPerMl;
  const solidsPerGravity = (particleGravity * waterGramsPerMl * volume.value) / (particleGravity - 1);
  const waterPerGravity = (-waterGramsPerMl * volume.value) / (particleGravity - 1);
  const [v, g] = [volume.sd ** 2, slurry.sd ** 2];
  return {
    water: grams(waterPerMl * volume.value),
    solids: grams(solidsPerMl * volume.value),
    covariance: {
      waterWater: waterPerMl ** 2 * v + waterPerGravity ** 2 * g,
      waterSolids: waterPerMl * solidsPerMl * v + waterPerGravity * solidsPerGravity * g,
      solidsSolids: solidsPerMl ** 2 * v + solidsPerGravity ** 2 * g,
    },
  };
};

/** For a pail of unknown volume, the contents of one litre. */
export const litreOf = (slurry: Estimate<Gravity>, particleGravity: Gravity): Contents =>
  contentsFrom({ value: millilitres(1000), sd: 0 }, slurry, particleGravity);

export const powderIn = ({ solids: dryWeight, covariance }: Contents): Estimate<Grams> => ({
  value: dryWeight,
  sd: Math.sqrt(Math.max(0, covariance.solidsSolids)),
});

const varianceAlong = ({ covariance: p }: Contents, perWater: number, perSolids: number) =>
  // Rounding must not make an amount negative.
  Math.max(
    0,
    perWater ** 2 * p.waterWater + 2 * perWater * perSolids * p.waterSolids + perSolids ** 2 * p.solidsSolids,
  );

const gravitySlopes = ({ water, solids: dryWeight }: Contents, solidsGravity: Gravity) => {
  const displaced = water + dryWeight / solidsGravity;
  const value = (water + dryWeight) / displaced;
  return { value, perWater: (1 - value) / displaced, perSolids: (1 - value / solidsGravity) / displaced };
};

export const gravityOf = (contents: Contents, solidsGravity: Gravity): Estimate<Gravity> => {
  const { value, perWater, perSolids } = gravitySlopes(contents, solidsGravity);
  return { value: gravity(value), sd: Math.sqrt(varianceAlong(contents, perWater, perSolids)) };
};

export const volumeOf = (contents: Contents, solidsGravity: Gravity): Estimate<Millilitres> => ({
  value: millilitres((contents.water + contents.solids / solidsGravity) / waterGramsPerMl),
  sd: Math.sqrt(varianceAlong(contents, 1 / waterGramsPerMl, 1 / (solidsGravity * waterGramsPerMl))),
});

/** At least this part of the contents stays, whatever was said to have come out: a pail is never quite empty. */
const leastLeft = 0.01;

/** Kalman update of water and powder by one linear observation. */
const kalmanUpdate = (
  contents: Contents,
  seen: { perWater: number; perSolids: number; difference: number; variance: number },
): Contents => {
  const { covariance: p, water, solids: dryWeight } = contents;
  const { perWater: a, perSolids: b } = seen;
  const spread = varianceAlong(contents, a, b) + seen.variance;
  const alongWater = p.waterWater * a + p.waterSolids * b;
  const alongSolids = p.waterSolids * a + p.solidsSolids * b;
  const [gainWater, gainSolids] = [alongWater / spread, alongSolids / spread];
  return {
    water: grams(Math.max(leastLeft * water, water + gainWater * seen.difference)),
    solids: grams(Math.max(leastLeft * dryWeight, dryWeight + gainSolids * seen.difference)),
    covariance: widened(p, -gainWater * alongWater, -gainWater * alongSolids, -gainSolids * alongSolids),
  };
};

/** Beyond so many standard deviations, something happened that was not logged. */
export const surpriseDeviations = 2.6;

/**
 * Corrects the ratio of water to powder by a believed gravity, which says nothing about the amount except through
 * logged additions. The update therefore works on that ratio and the powder, and observes only the ratio. On water
 * and powder it would take a pail that dries out for one that was never so full.
 */
export const withGravitySeen = (
  contents: Contents,
  seen: Estimate<Gravity>,
  solidsGravity: Gravity,
): Contents => {
  const { water, solids: dryWeight, covariance: p } = contents;
  // Almost clear water has no ratio to correct.
  if (dryWeight < water / 1000) return contentsFrom(volumeOf(contents, solidsGravity), seen, solidsGravity);
  const ratio = water / dryWeight;
  const p11 = (p.waterWater - 2 * ratio * p.waterSolids + ratio ** 2 * p.solidsSolids) / dryWeight ** 2;
  const p12 = (p.waterSolids - ratio * p.solidsSolids) / dryWeight;
  const value = (ratio + 1) / (ratio + 1 / solidsGravity);
  const slope = (1 - value) / (ratio + 1 / solidsGravity);
  const spread = slope ** 2 * p11 + seen.sd ** 2;
  const difference = seen.value - value;
  const [gain1, gain2] = [(slope * p11) / spread, (slope * p12) / spread];
  const now1 = Math.max(leastLeft * ratio, ratio + gain1 * difference);
  const now2 = Math.max(leastLeft * dryWeight, dryWeight + gain2 * difference);
  const [q11, q12, q22] = [
    p11 - gain1 * slope * p11,
    p12 - gain1 * slope * p12,
    p.solidsSolids - gain2 * slope * p12,
  ];
  return {
    water: grams(now1 * now2),
    solids: grams(now2),
    covariance: {
      waterWater: now2 ** 2 * q11 + 2 * now1 * now2 * q12 + now1 ** 2 * q22,
      waterSolids: now2 * q12 + now1 * q22,
      solidsSolids: q22,
    },
  };
};

/**
 * Growth in the standard uncertainty of gravity by unseen evaporation and use, in a day (common practice), growing
 * with √days.
 */
export const driftPerDay = 0.002;

/** Below this part of powder, losing water does not change the gravity. */
const leastPowderPart = 0.01;

/** The contents some days later, with nothing logged: water may have evaporated or dripped in; the powder stays. */
export const withDrift = (contents: Contents, days: number, solidsGravity: Gravity): Contents => {
  const { value } = gravitySlopes(contents, solidsGravity);
  const displaced = contents.water + contents.solids / solidsGravity;
  const perDay = (driftPerDay * displaced) / Math.max(leastPowderPart, value - 1);
  return { ...contents, covariance: widened(contents.covariance, perDay ** 2 * Math.max(0, days), 0, 0) };
};

export const withVolumeSeen = (
  contents: Contents,
  seen: Estimate<Millilitres>,
  solidsGravity: Gravity,
): Contents => {
  const now = volumeOf(contents, solidsGravity);
  if (Math.abs(seen.value - now.value) > surpriseDeviations * Math.hypot(now.sd, seen.sd))
    return contentsFrom(seen, gravityOf(contents, solidsGravity), solidsGravity);
  return kalmanUpdate(contents, {
    perWater: 1 / waterGramsPerMl,
    perSolids: 1 / (solidsGravity * waterGramsPerMl),
    difference: seen.value - now.value,
    variance: seen.sd ** 2,
  });
};

/** Adds grams (negative: takes out), each with its own uncertainty. */
export const withAdded = (
  contents: Contents,
  water: Estimate<number>,
  solids: Estimate<number>,
  together = 0,
): Contents => ({
  water: grams(Math.max(leastLeft * contents.water, contents.water + water.value)),
  solids: grams(Math.max(leastLeft * contents.solids, contents.solids + solids.value)),
  covariance: widened(contents.covariance, water.sd ** 2, together, solids.sd ** 2),
});

/** Taking glaze out removes water and powder alike: gravity stays, the amount shrinks. */
export const scaleContents = (contents: Contents, part: number): Contents => ({
  water: grams(contents.water * part),
  solids: grams(contents.solids * part),
  covariance: {
    waterWater: contents.covariance.waterWater * part ** 2,
    waterSolids: contents.covariance.waterSolids * part ** 2,
    solidsSolids: contents.covariance.solidsSolids * part ** 2,
  },
});

/** Use that nobody logs makes the amount less certain as days go by (common practice: 3 % in a day, growing with √days). */
export const withUnloggedUse = (contents: Contents, days: number): Contents => {
  const { water, solids, covariance } = contents;
  const spread = 0.03 ** 2 * Math.max(0, days);
  return {
    ...contents,
    covariance: widened(covariance, spread * water ** 2, spread * water * solids, spread * solids ** 2),
  };
};
