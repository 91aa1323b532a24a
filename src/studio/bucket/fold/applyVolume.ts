import { coverage95 } from '../../../glaze/statistics/normal.ts';
import { gravity, type Gravity, type Millilitres } from '../../../glaze/units.ts';
import type { BucketSettings } from '../../settings/bucketSettings.ts';
import type { BucketState } from '../bucketState.ts';
import {
  contentsFrom,
  gravityOf,
  withVolumeSeen,
  type Contents,
  type Estimate,
} from '../../contents/contents.ts';
import { pailVolumeFromRimGap } from '../../contents/pailVolumeFromRimGap.ts';
import type { Instant } from '../../ids.ts';
import type { BucketEventOf } from '../bucketEvent.ts';

/** A volume that somebody estimated (common practice: ±10 %). */
const toldWithin = 0.05;

export const statedVolume = (volume: Millilitres): Estimate<Millilitres> => ({
  value: volume,
  sd: toldWithin * volume,
});

/** Before any reading, a glaze may have any gravity at which it pours. */
export const gravityBeforeReading = (settings: BucketSettings): Estimate<Gravity> => ({
  value: settings.gravity ? gravity((settings.gravity.low + settings.gravity.high) / 2) : gravity(1.45),
  sd: 0.15,
});

/** Sets the volume, estimated or measured, and works out the contents. */
export const applyVolume = (state: BucketState, seen: Estimate<Millilitres>, at: Instant): BucketState => {
  const known = state.predicted
    ? { value: state.predicted.value, sd: state.predicted.u95 / coverage95 }
    : gravityBeforeReading(state.settings);
  const { solids: particleGravity } = state.settings;
  const { contents, unexpected } = state;
  // While an unexpected reading is unsettled, the volume stands on its own and is not combined with the expected one.
  const alone = unexpected && !unexpected.volumeSeen;
  const slurry = contents && alone ? gravityOf(contents, particleGravity) : known;
  return {
    ...state,
    volumeAt: at,
    ...(unexpected && { unexpected: { ...unexpected, volumeSeen: true } }),
    contents:
      contents && !alone
        ? withVolumeSeen(contents, seen, particleGravity)
        : contentsFrom(seen, slurry, particleGravity),
  };
};

/** Sets the predicted gravity from the contents, once something was measured. */
export const withPrediction = (state: BucketState): BucketState => {
  if (!state.believed || !state.contents) return state;
  const now = gravityOf(state.contents, state.settings.solids);
  return { ...state, predicted: { value: now.value, u95: coverage95 * now.sd } };
};

/** How much a reading says is in the pail, by its gap or by eye; undefined when it says nothing, or that it is empty. */
export const volumeRead = (
  settings: BucketSettings,
  { gap, level }: Pick<BucketEventOf<'reading'>, 'gap' | 'level'>,
): Estimate<Millilitres> | undefined => {
  const byGap = gap === undefined ? undefined : pailVolumeFromRimGap(settings, gap);
  const found = byGap?.ok ? byGap.value : level === undefined ? undefined : statedVolume(level);
  // An empty pail has no gravity.
  return found && found.value > 0 ? found : undefined;
};

/** Applies one change to the contents, and to the contents that are expected if the last reading was wrong. */
export const changeContents = (
  { contents, unexpected }: Pick<BucketState, 'contents' | 'unexpected'>,
  change: (contents: Contents) => Contents,
): Pick<BucketState, 'contents' | 'unexpected'> => ({
  ...(contents && { contents: change(contents) }),
  ...(unexpected && { unexpected: { ...unexpected, expected: change(unexpected.expected) } }),
});
