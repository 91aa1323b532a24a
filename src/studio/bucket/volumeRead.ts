import type { Millilitres } from '../../glaze/units.ts';
import type { Estimate } from '../contents/contents.ts';
import { pailVolumeFromRimGap } from '../contents/pailVolumeFromRimGap.ts';
import type { BucketSettings } from '../settings/bucketSettings.ts';
import { statedVolume } from './applyVolume.ts';
import type { BucketEvent } from './bucketEvent.ts';

/** How much a reading says is in the pail, by its gap or by eye; undefined when it says nothing, or that it is empty. */
export const volumeRead = (
  settings: BucketSettings,
  { gap, level }: Pick<Extract<BucketEvent, { kind: 'reading' }>, 'gap' | 'level'>,
): Estimate<Millilitres> | undefined => {
  const byGap = gap === undefined ? undefined : pailVolumeFromRimGap(settings, gap);
  const found = byGap?.ok ? byGap.value : level === undefined ? undefined : statedVolume(level);
  // An empty pail has no gravity.
  return found && found.value > 0 ? found : undefined;
};
