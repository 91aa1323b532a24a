import type { BucketState } from './bucketState.ts';
import { litreOf, powderIn } from '../contents/contents.ts';
import { evaporation, type Evaporation } from '../contents/evaporation.ts';
import type { UnloggedChange } from '../contents/unloggedChange.ts';

/** How fast a bucket dries out, for the whole pail or, when its volume is unknown, for each litre. */
export const evaporationOf = ({
  drift,
  predicted,
  contents,
  volumeAt,
  settings,
}: BucketState): (Evaporation & Pick<UnloggedChange, 'each'>) | undefined => {
  if (!drift || !predicted) return undefined;
  const inPail = contents && volumeAt !== undefined;
  const held = inPail ? contents : litreOf({ value: predicted.value, sd: 0 }, settings.solids);
  const found = evaporation(drift, {
    slurry: predicted.value,
    particleGravity: settings.solids,
    powder: powderIn(held),
  });
  return found && { ...found, each: inPail ? 'pail' : 'litre' };
};
