import type { BucketCaution, BucketSettings } from './bucketSettings.ts';

const forGloves: ReadonlySet<BucketCaution> = new Set([
  'gloves',
  'caustic',
  'toxic',
  'barium',
  'nickel',
  'chrome',
  'cobalt',
  'lithium',
  'vanadium',
  'lead',
  'cadmium',
  'uranium',
  'arsenic',
  'asbestos',
]);

/** Cautions that keep children from a glaze. Gloves that only keep hands clean are none. */
export const notForChildren = (caution: BucketCaution): boolean =>
  caution === 'manganese' || (caution !== 'gloves' && forGloves.has(caution));

/** Whether it is safe to test the glaze with a bare finger. */
export const barehanded = ({ cautions }: Pick<BucketSettings, 'cautions'>): boolean =>
  !cautions.some((caution) => forGloves.has(caution));
