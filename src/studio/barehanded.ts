import type { BucketSettings } from './bucketEvent.ts';

const forGloves = new Set(['gloves', 'caustic', 'toxic']);

/** Whether a bare finger may go into the glaze. */
export const barehanded = ({ cautions }: Pick<BucketSettings, 'cautions'>): boolean =>
  !cautions.some((caution) => forGloves.has(caution));
