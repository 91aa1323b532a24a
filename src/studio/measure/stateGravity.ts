import type { Checked } from '../../glaze/checked.ts';
import { gravityFromBaume, gravityFromTwaddell } from '../../glaze/slurry/hydrometer.ts';
import { gravity, type Gravity } from '../../glaze/units.ts';

export const gravityScales = ['sg', 'hydrometer', 'baume', 'baume-144', 'twaddell'] as const;
export type GravityScale = (typeof gravityScales)[number];

/** The 95 % half-interval of a stated gravity, and of one read off a hydrometer (common practice). */
export const statedWithin = 0.01;
export const hydrometerWithin = 0.03;

export type Stated =
  | { kind: 'stated'; gravity: Gravity; u95: number; by: 'stated' | 'hydrometer' }
  | { kind: 'below-water' }
  | { kind: 'above-glaze' }
  /** A hydrometer sticks in a gel. */
  | { kind: 'sticks' };

export const gravityOnScale = (value: number, scale: GravityScale): Checked<Gravity> => {
  switch (scale) {
    case 'sg':
    case 'hydrometer':
      return { ok: true, value: gravity(value) };
    case 'baume':
      return gravityFromBaume(value);
    case 'baume-144':
      return gravityFromBaume(value, 144.3);
    case 'twaddell':
      return gravityFromTwaddell(value);
  }
};

/** A gravity that somebody states, on its scale, with its uncertainty. */
export const stateGravity = (
  value: number,
  { scale = 'sg', within, thick }: { scale?: GravityScale; within?: number; thick: boolean },
): Stated => {
  const by = scale === 'sg' ? 'stated' : 'hydrometer';
  const found = gravityOnScale(value, scale);
  const stated = found.ok ? found.value : found.outOfRange.value < found.outOfRange.low ? 0 : Infinity;
  if (stated < 1) return { kind: 'below-water' };
  if (stated > 2.5) return { kind: 'above-glaze' };
  if (by === 'hydrometer' && thick) return { kind: 'sticks' };
  const u95 = within ?? (by === 'hydrometer' ? hydrometerWithin : statedWithin);
  return { kind: 'stated', gravity: gravity(stated), u95, by };
};
