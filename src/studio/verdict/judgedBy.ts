import type { BucketSettings } from '../settings/bucketSettings.ts';

type Judged = Pick<BucketSettings, 'use' | 'gravity' | 'efflux'>;

/** A test jar is dipped from, like a bucket. */
export const isForDipping = ({ use }: Pick<BucketSettings, 'use'>): boolean =>
  use === 'dipping' || use === 'test';

/**
 * Water and flow make the coat of a dip. A brush or a spray gun lays it on in layers, so their buckets are judged only
 * by what their keeper set.
 */
export const judgesGravity = (settings: Judged): boolean =>
  isForDipping(settings) || settings.gravity !== undefined;
export const judgesFlow = (settings: Judged): boolean =>
  isForDipping(settings) || settings.efflux !== undefined;
