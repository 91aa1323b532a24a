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
 * What is in the pail: grams of water and of dry powder, with their covariance
 * (g²), moved by every logged event and corrected by every believed reading.
 */
export interface Contents {
  water: Grams;
  solids: Grams;
  covariance: { waterWater: number; waterSolids: number; solidsSolids: number };
}

/** Its change over a studio's year is far below any vessel's uncertainty. */
export const waterGramsPerMl = nominalWater / 1000;

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
  // When a keeper sets the powder's gravity anew, an old reading can be one that no slurry of it has.
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

/** A pail whose contents nobody said is reckoned with by one litre of it. */
export const litreOf = (slurry: Estimate<Gravity>, particleGravity: Gravity): Contents =>
  contentsFrom({ value: millilitres(1000), sd: 0 }, slurry, particleGravity);

export const powderIn = ({ solids: dryWeight, covariance }: Contents): Estimate<Grams> => ({
  value: dryWeight,
  sd: Math.sqrt(Math.max(0, covariance.solidsSolids)),
});

const varianceAlong = ({ covariance: p }: Contents, perWater: number, perSolids: number) =>
  // What decimals lose must not leave less than nothing.
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

/** Of what the logbook knows of, this part is left whatever is said to have come out: a pail is never dry. */
const leastLeft = 0.01;

/** The Kalman correction of water and solids by one linear observation. */
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
    covariance: {
      waterWater: p.waterWater - gainWater * alongWater,
      waterSolids: p.waterSolids - gainWater * alongSolids,
      solidsSolids: p.solidsSolids - gainSolids * alongSolids,
    },
  };
};

/** Beyond this many standard deviations the logbook has missed something. */
export const surprise = 2.6;

/**
 * A believed gravity corrects the ratio of water to powder; it says nothing of how much there is, but by what an
 * addition did to it. So the correction is worked out for that ratio and the powder, of which gravity sees only the
 * first: for water and powder it would take a pail that dries out for one that was never so full.
 */
export const withGravitySeen = (
  contents: Contents,
  seen: Estimate<Gravity>,
  solidsGravity: Gravity,
): Contents => {
  const { water, solids: dryWeight, covariance: p } = contents;
  // Next to clear water there is no ratio to correct.
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

/** Spread of gravity that unseen evaporation and use add in a day (common practice), growing with √days. */
export const driftPerDay = 0.002;

/** Next to water, any loss of it is nothing to gravity. */
const thinnest = 0.01;

/** As many days later, with nothing logged: water may have dried off, or dripped in, and the powder is all there. */
export const drifted = (contents: Contents, days: number, solidsGravity: Gravity): Contents => {
  const { value } = gravitySlopes(contents, solidsGravity);
  const displaced = contents.water + contents.solids / solidsGravity;
  const perDay = (driftPerDay * displaced) / Math.max(thinnest, value - 1);
  const { covariance } = contents;
  return {
    ...contents,
    covariance: {
      ...covariance,
      waterWater: covariance.waterWater + perDay ** 2 * Math.max(0, days),
    },
  };
};

export const withVolumeSeen = (
  contents: Contents,
  seen: Estimate<Millilitres>,
  solidsGravity: Gravity,
): Contents => {
  const now = volumeOf(contents, solidsGravity);
  if (Math.abs(seen.value - now.value) > surprise * Math.hypot(now.sd, seen.sd))
    return contentsFrom(seen, gravityOf(contents, solidsGravity), solidsGravity);
  return kalmanUpdate(contents, {
    perWater: 1 / waterGramsPerMl,
    perSolids: 1 / (solidsGravity * waterGramsPerMl),
    difference: seen.value - now.value,
    variance: seen.sd ** 2,
  });
};

/** Grams that went in (negative: came out), each with its own uncertainty. */
export const withAdded = (
  contents: Contents,
  water: Estimate<number>,
  solids: Estimate<number>,
  together = 0,
): Contents => ({
  water: grams(Math.max(leastLeft * contents.water, contents.water + water.value)),
  solids: grams(Math.max(leastLeft * contents.solids, contents.solids + solids.value)),
  covariance: {
    waterWater: contents.covariance.waterWater + water.sd ** 2,
    waterSolids: contents.covariance.waterSolids + together,
    solidsSolids: contents.covariance.solidsSolids + solids.sd ** 2,
  },
});

/** Glaze taken out or used draws water and powder alike: gravity stays, the amount shrinks to a part. */
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
  const spread = 0.03 ** 2 * Math.max(0, days);
  return {
    ...contents,
    covariance: {
      waterWater: contents.covariance.waterWater + spread * contents.water ** 2,
      waterSolids: contents.covariance.waterSolids + spread * contents.water * contents.solids,
      solidsSolids: contents.covariance.solidsSolids + spread * contents.solids ** 2,
    },
  };
};
