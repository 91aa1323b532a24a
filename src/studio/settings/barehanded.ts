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
]);

/** Whether a bare finger may go into the glaze. */
export const barehanded = ({ cautions }: Pick<BucketSettings, 'cautions'>): boolean =>
  !cautions.some((caution) => forGloves.has(caution));
