import { kinematicWaterViscosity } from '../../glaze/water/waterViscosity.ts';
import { celsius, seconds, type Celsius, type Seconds } from '../../glaze/units.ts';
import { days, since, type Instant } from '../ids.ts';
import type { Belief } from './mixture.ts';

/** The temperature of a bucket, as it was last told. */
export interface Warmth {
  at: Instant;
  celsius: Celsius;
}

/**
 * How much of a change of the water's viscosity shows in a cup's seconds: less than all, since a short cup also counts the
 * glaze's inertia. ISO 2431 (4 mm: ν = 1.37 t − 200/t) has 0.47 at 20 s and 0.72 at 30 s.
 */
const share = { value: 0.65, sd: 0.2 };

/** A room is about as warm tomorrow as today. After that nobody knows. */
const holds = days(2);

/** The temperature that counts for a sight: said with it, or told lately. */
export const warmthAt = (
  { warmth }: Pick<Belief, 'warmth'>,
  at: Instant,
  said?: Celsius,
): Celsius | undefined => said ?? (warmth && since(warmth.at, at) <= holds ? warmth.celsius : undefined);

const at20 = kinematicWaterViscosity(celsius(20));

/** What cold or warmth adds to ln seconds over those at 20 °C, and how surely; nothing where no temperature is known. */
export const slowedBy = (temperature: Celsius | undefined): { by: number; sd: number } => {
  const then = temperature === undefined ? undefined : kinematicWaterViscosity(temperature);
  if (!at20.ok || !then?.ok) return { by: 0, sd: 0 };
  const thicker = Math.log(then.value / at20.value);
  return { by: share.value * thicker, sd: share.sd * Math.abs(thicker) };
};

/** What a cup would take at 20 °C, by its seconds at this temperature. */
export const secondsAt20 = (timed: Seconds, temperature: Celsius | undefined): Seconds =>
  seconds(timed / Math.exp(slowedBy(temperature).by));
