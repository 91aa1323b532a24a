import { millilitres } from '../glaze/units.ts';
import type { BucketState } from './bucketState.ts';
import { volumeOf } from './contents.ts';
import { evaporation, type Evaporation } from './evaporation.ts';
import type { UnloggedChange } from './unloggedChange.ts';

/** How fast a bucket dries out, in the pail or, when nobody knows how full that is, for each litre. */
export const evaporationOf = ({
  drift,
  predicted,
  contents,
  volumeAt,
  settings,
}: BucketState): (Evaporation & Pick<UnloggedChange, 'each'>) | undefined => {
  if (!drift || !predicted) return undefined;
  const inPail = contents && volumeAt !== undefined;
  const volume = inPail ? volumeOf(contents, settings.solids).value : millilitres(1000);
  const found = evaporation(drift, { gravity: predicted.value, volume });
  return found && { ...found, each: inPail ? 'pail' : 'litre' };
};
