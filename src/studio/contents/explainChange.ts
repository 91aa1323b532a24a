import { coverage95 } from '../../glaze/statistics/normal.ts';
import { grams, millilitres, type Gravity, type Millilitres } from '../../glaze/units.ts';
import {
  type Contents,
  contentsFrom,
  surpriseDeviations,
  waterGramsPerMl,
  type Estimate,
} from './contents.ts';
import { explanations, type Explanation, type UnloggedChange } from './unloggedChange.ts';

/** What was measured: always the gravity, the volume only when somebody measured it. */
export interface Measured {
  gravity: Estimate<Gravity>;
  volume?: Estimate<Millilitres>;
}

type Pair = readonly [gravity: number, volume: number];

/** What each explanation changes, and which way gravity went. What the cup holds alone leaves the volume of the pail as it was. */
const ways: Record<
  Explanation,
  { of: 'water' | 'powder' | 'air'; gravity: 'fell' | 'rose'; isInCup?: true }
> = {
  'water-in': { of: 'water', gravity: 'fell' },
  cake: { of: 'powder', gravity: 'fell', isInCup: true },
  air: { of: 'air', gravity: 'fell' },
  'water-out': { of: 'water', gravity: 'rose' },
  evaporation: { of: 'water', gravity: 'rose' },
  'dry-in': { of: 'powder', gravity: 'rose' },
  'cake-before': { of: 'powder', gravity: 'rose', isInCup: true },
};

/** The gravity and volume to expect from this much water and powder, after one change of this size. */
const expectedMeasurement = (
  explanation: Explanation,
  water: number,
  solids: number,
  size: number,
  s: number,
): Pair => {
  const seen = (w: number, m: number): Pair => {
    const displaced = w + m / s;
    return [(w + m) / displaced, displaced / waterGramsPerMl];
  };
  const { of, isInCup } = ways[explanation];
  if (of === 'water') return seen(water + size, solids);
  const [gravity, volume] = seen(water, solids);
  if (of === 'air') return [gravity * (1 - size), volume / (1 - size)];
  const changed = seen(water, explanation === 'cake' ? solids - size : solids + size);
  return isInCup ? [changed[0], volume] : changed;
};

/** A mixer beats in about 2 % of air; no glaze keeps more than this (common practice). */
const mostAir = 0.06;

/** Whether a change of that size is possible: the sign is right, and the pail held that much. */
const isPossibleSize = (
  explanation: Explanation,
  size: number,
  { water, solids: dryWeight }: Contents,
): boolean => {
  if (explanation === 'air') return size > 0 && size < mostAir;
  if (explanation === 'cake') return size > 0 && size < dryWeight;
  if (explanation === 'water-out' || explanation === 'evaporation') return size < 0 && -size < water;
  return size > 0;
};

interface Fitted {
  explanation: Explanation;
  size: number;
  sd: number;
  /** How far the fit is from what was measured, in standard deviations. */
  off: number;
  /** The volume that the explanation implies. */
  volume: Millilitres;
}

/** Newton's method: each iteration doubles the correct digits. */
const newtonSteps = 8;

/** Keeps the search where something is left in the pail. */
const boundedSize = (
  explanation: Explanation,
  size: number,
  { water, solids: dryWeight }: Contents,
): number => {
  const within = (low: number, high: number) => Math.min(high, Math.max(low, size));
  const { of } = ways[explanation];
  if (of === 'air') return within(-0.5, 0.5);
  if (explanation === 'cake') return within(-dryWeight, 0.99 * dryWeight);
  const whole = of === 'powder' ? dryWeight : water;
  return within(-0.99 * whole, 1e3 * whole);
};

/**
 * The size of one change that would explain what was measured.
 * @formula x = (JᵀS⁻¹J)⁻¹JᵀS⁻¹r, u²(x) = (JᵀS⁻¹J)⁻¹, S = H·P·Hᵀ + R: J slope on the size, H on water and powder with
 *   covariance P, R what the measuring is unsure of, r measured less expected; repeated at the new size
 * @source generalised least squares, Aitken 1935; JCGM 100:2008, eq. 13, for S
 */
const fitExplanation = (
  explanation: Explanation,
  contents: Contents,
  measured: Measured,
  s: Gravity,
): Fitted => {
  const { water, solids: dryWeight, covariance: p } = contents;
  const scale = explanation === 'air' ? 1 : water + dryWeight;
  let size = 0;
  let [sd, off] = [0, 0];
  for (let round = 0; round < newtonSteps; round++) {
    const at = (dw: number, dm: number, dx: number) =>
      expectedMeasurement(explanation, water + dw, dryWeight + dm, size + dx, s);
    const slope = (dw: number, dm: number, dx: number): Pair => {
      const [up, down] = [at(dw, dm, dx), at(-dw, -dm, -dx)];
      const step = 2 * (dw + dm + dx);
      return [(up[0] - down[0]) / step, (up[1] - down[1]) / step];
    };
    const tiny = 1e-5 * (water + dryWeight);
    const [perWater, perSolids, j] = [slope(tiny, 0, 0), slope(0, tiny, 0), slope(0, 0, 1e-5 * scale)];
    const along = (a: 0 | 1, b: 0 | 1) =>
      perWater[a] * perWater[b] * p.waterWater +
      (perWater[a] * perSolids[b] + perWater[b] * perSolids[a]) * p.waterSolids +
      perSolids[a] * perSolids[b] * p.solidsSolids;
    const [expectedGravity, expectedVolume] = at(0, 0, 0);
    const gg = along(0, 0) + measured.gravity.sd ** 2;
    const r: Pair = [
      measured.gravity.value - expectedGravity,
      (measured.volume?.value ?? expectedVolume) - expectedVolume,
    ];
    const weigh = (a: Pair, b: Pair): number => {
      // A volume that was not measured gets no weight.
      if (!measured.volume) return (a[0] * b[0]) / gg;
      const vv = along(1, 1) + measured.volume.sd ** 2;
      const gv = along(0, 1);
      const whole = gg * vv - gv ** 2;
      return (a[0] * b[0] * vv - (a[0] * b[1] + a[1] * b[0]) * gv + a[1] * b[1] * gg) / whole;
    };
    const information = weigh(j, j);
    const step = weigh(j, r) / information;
    sd = 1 / Math.sqrt(information);
    off = Math.sqrt(Math.max(0, weigh(r, r) - step ** 2 * information));
    size = boundedSize(explanation, size + step, contents);
  }
  const [, volume] = expectedMeasurement(explanation, water, dryWeight, explanation === 'air' ? 0 : size, s);
  return { explanation, size, sd, off, volume: millilitres(volume) };
};

const amountsOf = ({ explanation, size, sd }: Fitted): Pick<UnloggedChange, 'water' | 'powder'> => {
  const { of } = ways[explanation];
  const u95 = coverage95 * sd;
  if (of === 'water')
    return { water: { value: millilitres(size / waterGramsPerMl), u95: u95 / waterGramsPerMl } };
  return of === 'powder' ? { powder: { value: grams(size), u95 } } : {};
};

export type Explained = Pick<UnloggedChange, 'what' | 'orElse' | 'water' | 'powder'> & {
  /** The volume now, as far as the remaining explanations agree on it. */
  volume: Estimate<Millilitres>;
  /** The volume by the likeliest explanation. */
  volumeByFirst: Estimate<Millilitres>;
};

/**
 * Explains the difference between what the logbook expected and what was measured: the possible causes, and the size
 * by the likeliest.
 */
export const explainChange = (
  expected: Contents,
  measured: Measured,
  {
    fell,
    particleGravity,
    before,
  }: { fell: boolean; particleGravity: Gravity; before: Estimate<Millilitres> },
): Explained => {
  const left = explanations
    .filter((one) => ways[one].gravity === (fell ? 'fell' : 'rose'))
    .map((explanation) => fitExplanation(explanation, expected, measured, particleGravity))
    .filter(
      ({ explanation, size, off }) =>
        off <= surpriseDeviations && isPossibleSize(explanation, size, expected),
    );
  const [first, ...others] = left;
  if (!first) {
    const volume = measured.volume ?? before;
    const now = contentsFrom(volume, measured.gravity, particleGravity);
    const u95 = (was: number, is: number) => coverage95 * Math.sqrt(was + is);
    const [was, is] = [expected.covariance, now.covariance];
    return {
      what: 'unknown',
      orElse: [],
      water: {
        value: millilitres((now.water - expected.water) / waterGramsPerMl),
        u95: u95(was.waterWater, is.waterWater) / waterGramsPerMl,
      },
      powder: {
        value: grams(now.solids - expected.solids),
        u95: u95(was.solidsSolids, is.solidsSolids),
      },
      volume,
      volumeByFirst: volume,
    };
  }
  const mean = left.reduce((sum, { volume }) => sum + volume, 0) / left.length;
  const spread = left.reduce((sum, { volume }) => sum + (volume - mean) ** 2, 0) / left.length;
  return {
    what: first.explanation,
    orElse: others.map(({ explanation }) => explanation),
    ...amountsOf(first),
    // The volume depends on which explanation is true: gravity alone does not say.
    volumeByFirst: measured.volume ?? { value: first.volume, sd: before.sd },
    volume: measured.volume ?? { value: millilitres(mean), sd: Math.hypot(before.sd, Math.sqrt(spread)) },
  };
};
