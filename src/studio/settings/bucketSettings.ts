import type { Gravity, Millilitres, Millimetres, Seconds } from '../../glaze/units.ts';
import type { Duration } from '../ids.ts';

export interface Window<T> {
  low: T;
  high: T;
}

/** A pail as a cone cut off, inside measures. */
export interface PailShape {
  bottom: Millimetres;
  top: Millimetres;
  height: Millimetres;
}

export const bucketUses = ['dipping', 'brushing', 'spraying', 'test'] as const;
export type BucketUse = (typeof bucketUses)[number];

export const bucketCautions = [
  'gloves',
  'caustic',
  'toxic',
  'barium',
  'manganese',
  'nickel',
  'chrome',
  'cobalt',
  'copper',
  'boron',
  'lithium',
  'vanadium',
  'lead',
  'cadmium',
  'uranium',
  'arsenic',
  'asbestos',
  'children',
] as const;
export type BucketCaution = (typeof bucketCautions)[number];

export interface BucketSettings {
  name: string;
  nick?: string;
  use: BucketUse;
  /** What the pail holds to the rim. */
  pail?: Millilitres;
  shape?: PailShape;
  gravity?: Window<Gravity>;
  efflux?: Window<Seconds>;
  /** The cup that the efflux window was set with: a standard kind, or the name of one of the studio's own. */
  cup?: string;
  /** Gravity of the dry powder. */
  solids: Gravity;
  /** How long after a stir the bucket may be used without another. */
  restLimit: Duration;
  /** How long a believed reading is good for. */
  shelfLife: Duration;
  mesh: number | 'never';
  cautions: BucketCaution[];
  recipe?: string;
  /** The pails of one glaze carry its name in common, each with its own state. */
  glaze?: string;
}
