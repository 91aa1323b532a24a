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

/** Gloves alone keep hands clean; whatever else asks for them is no glaze for a child. */
export const notForChildren = (caution: BucketCaution): boolean =>
  caution === 'manganese' || (caution !== 'gloves' && forGloves.has(caution));

/** Whether a bare finger may go into the glaze. */
export const barehanded = ({ cautions }: Pick<BucketSettings, 'cautions'>): boolean =>
  !cautions.some((caution) => forGloves.has(caution));
