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

/** Gloves alone keep hands clean; whatever else is warned of is no glaze for a child. */
export const isHazard = (caution: BucketCaution): boolean => caution !== 'gloves' && caution !== 'children';

/** Whether it is safe to test the glaze with a bare finger. */
export const barehanded = ({ cautions }: Pick<BucketSettings, 'cautions'>): boolean =>
  !cautions.some((caution) => forGloves.has(caution));
