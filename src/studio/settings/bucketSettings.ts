import type { Gravity, Millilitres, Millimetres, Seconds } from '../../glaze/units.ts';
import type { Duration } from '../ids.ts';

export interface Window<T> {
  low: T;
  high: T;
}

/** A pail as a frustum of a cone, inside measures. */
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
  /** Volume of the pail to the rim. */
  pail?: Millilitres;
  shape?: PailShape;
  gravity?: Window<Gravity>;
  efflux?: Window<Seconds>;
  /** The cup that the efflux window belongs to: a standard kind, or the name of one of the studio's own. */
  cup?: string;
  /** Gravity of the dry powder. */
  solids: Gravity;
  /** How long after a stir the bucket may be used without another stir. */
  restLimit: Duration;
  /** How long a believed reading stays valid. */
  shelfLife: Duration;
  mesh: number | 'never';
  cautions: BucketCaution[];
  recipe?: string;
  /** The name that all buckets of the same glaze share; each bucket keeps its own state. */
  glaze?: string;
  /** The cone that it fires to; negative for cones with a leading 0: 06 is -6. */
  cone?: number;
  /** The air of that firing, in the studio's words: oxidation, reduction, soda. */
  atmosphere?: string;
  /** The clays that it goes on. */
  bodies?: string;
}
