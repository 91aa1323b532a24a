import { brimHalfWidth, expanded95, weighedGravityUncertainty } from '../../glaze/slurry/uncertainty.ts';
import { grams, type Grams, type Gravity } from '../../glaze/units.ts';
import type { Vessel } from '../settings/studio.ts';

/** Gravities that a cup of glaze can have: from a watery wash to the thickest that pours. */
export const plausibleGravity = { low: 1.02, high: 2 } as const;

/** Gravities of a usual glaze. When one of two readings of a weight is usual, the other is not asked about. */
const usualGravity = { low: 1.15, high: 1.82 } as const;

const usual = ({ gravity }: Weighing) => gravity >= usualGravity.low && gravity <= usualGravity.high;

export interface Weighing {
  gravity: Gravity;
  u95: number;
}

export type Weighed =
  | { kind: 'weighed'; weighed: Weighing; cup: 'on' | 'off' }
  /** Plausible both with the empty cup on the scale and without it. */
  | { kind: 'either'; on: Weighing; off: Weighing }
  | { kind: 'too-light'; gravity: number }
  | { kind: 'too-heavy'; gravity: number }
  /** The weight would be plausible in grams: kilograms were typed by mistake. */
  | { kind: 'wrong-unit'; meant: Grams };

const weigh = (gross: number, tare: number, vessel: Vessel, scaleStep: Grams): Weighing | undefined => {
  const found = weighedGravityUncertainty({
    gross: grams(gross),
    tare: grams(tare),
    water: vessel.water,
    scaleStep,
    waterScaleStep: vessel.scaleStep,
    fillHalfWidth: brimHalfWidth,
  });
  return found.ok ? { gravity: found.value.gravity, u95: expanded95(found.value.standard) } : undefined;
};

const plausible = (weighing: Weighing | undefined): Weighing | undefined =>
  weighing && weighing.gravity >= plausibleGravity.low && weighing.gravity <= plausibleGravity.high
    ? weighing
    : undefined;

/**
 * Gravity from a full cup on a scale. The weight may include the empty cup or not; when both are plausible, the
 * member is asked.
 */
export const weighGravity = (
  weight: { grams: Grams; step: Grams },
  vessel: Vessel,
  cup?: 'on' | 'off',
): Weighed => {
  const on = cup === 'off' ? undefined : plausible(weigh(weight.grams, vessel.tare, vessel, weight.step));
  // The scale was zeroed with the cup on it, so the weight does not include the cup.
  const off = cup === 'on' ? undefined : plausible(weigh(weight.grams, 0, vessel, weight.step));
  if (on && off && usual(on) === usual(off)) return { kind: 'either', on, off };
  if (on && (!off || usual(on))) return { kind: 'weighed', weighed: on, cup: 'on' };
  if (off) return { kind: 'weighed', weighed: off, cup: 'off' };
  const meant = grams(weight.grams / 1000);
  if (weight.grams > vessel.tare + 3 * vessel.water) {
    const step = grams(weight.step / 1000);
    const tried = [weigh(meant, vessel.tare, vessel, step), weigh(meant, 0, vessel, step)];
    if (tried.some((one) => plausible(one) !== undefined)) return { kind: 'wrong-unit', meant };
  }
  const gravity = (weight.grams - (cup === 'off' ? 0 : vessel.tare)) / vessel.water;
  return gravity > plausibleGravity.high
    ? { kind: 'too-heavy', gravity }
    : { kind: 'too-light', gravity: cup === 'on' ? gravity : weight.grams / vessel.water };
};
