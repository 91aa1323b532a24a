import { coverage95 } from '../glaze/uncertainty.ts';
import type { BucketEvent, Entry } from './bucketEvent.ts';
import type { BucketState } from './bucketState.ts';
import { contentsFrom, volumeOf, withGravitySeen } from './contents.ts';
import { withFlowPoint } from './flowPoints.ts';
import { minutes, since } from './ids.ts';
import { pailVolumeFromGap } from './pailVolumeFromGap.ts';
import { withSights, withStir } from './withSights.ts';
import { withPrediction, withVolume } from './withVolume.ts';

/** A reading is believed this long after a stir: a 45 µm grain falls the depth of a pail in about ten minutes. */
export const believedAfterStir = minutes(10);

/** A reading kept; believed only when the bucket was stirred to the bottom just before and no cake was left. */
export const withReading = (
  state: BucketState,
  entry: Entry,
  event: Extract<BucketEvent, { kind: 'reading' }>,
): BucketState => {
  const { at } = entry;
  let next = withSights(state, event.seen, at);
  if (event.stirred) {
    next = withStir(next, { at });
    if (!event.seen.includes('cake')) delete next.cake;
  }
  const believed =
    event.stirred !== false &&
    next.stir !== undefined &&
    since(next.stir.at, at) <= believedAfterStir &&
    next.cake === undefined &&
    // Nothing that pours weighs as much as its own powder.
    (event.gravity === undefined || event.gravity.value < next.settings.solids);
  if (believed && event.flow)
    next.efflux = {
      ...event.flow,
      at,
      ...(event.temperature !== undefined && { temperature: event.temperature }),
    };
  if (believed && event.look) next.look = { look: event.look, at };
  // A new look at the flow stands for itself: one of the other sort, from before, is not set beside it.
  if (believed && event.flow && !event.look) delete next.look;
  if (believed && event.look && !event.flow) delete next.efflux;
  const measured = event.gravity && {
    value: event.gravity.value,
    u95: event.gravity.u95,
    at,
    seq: entry.seq,
  };
  if (measured && !believed) next.unbelieved = measured;
  if (event.gap !== undefined) {
    const volume = pailVolumeFromGap(next.settings, event.gap);
    // An empty pail has no gravity to keep account of.
    if (volume?.ok && volume.value.value > 0) next = withVolume(next, volume.value, at);
  }
  if (measured && believed) {
    delete next.unbelieved;
    next.believed = measured;
    next.moved = 0;
    next.unknownSince = [];
    next.predicted = { value: measured.value, u95: measured.u95 };
    const seen = { value: measured.value, sd: measured.u95 / coverage95 };
    const { solids } = next.settings;
    // What a bucket held before anybody measured it is a guess that no reading should lean towards.
    if (next.contents)
      next.contents = state.believed
        ? withGravitySeen(next.contents, seen, solids)
        : contentsFrom(volumeOf(next.contents, solids), seen, solids);
  }
  const predicted = withPrediction(next);
  return believed && event.flow ? withFlowPoint(predicted, event.flow) : predicted;
};
