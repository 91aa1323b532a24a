import type { BucketSettings } from '../../studio/settings/bucketSettings.ts';
import { notForChildren } from '../../studio/settings/barehanded.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';

const folded = (text: string) => text.normalize('NFKC').trim().toLowerCase();

/** What does not hang together in a bucket's settings; undefined when all does. */
export const bucketProblem = (
  said: Partial<BucketSettings>,
  volume: number | undefined,
  others: readonly BucketState[],
  words: Words,
): Text | undefined => {
  const taken = (name: string) =>
    others.find(
      ({ retired, settings }) =>
        !retired && [settings.name, settings.nick ?? ''].some((one) => folded(one) === folded(name)),
    );
  for (const name of [said.name, said.nick]) {
    const other = name === undefined ? undefined : taken(name);
    if (other && name !== undefined) return words.bucket.nameTaken(name, other.no);
    if (name !== undefined && /^\d+$/.test(folded(name))) return words.bucket.nameIsNumber(name);
  }
  if (said.pail !== undefined && volume !== undefined && volume > said.pail)
    return words.bucket.moreThanPail(volume, said.pail);
  if (said.gravity && said.solids !== undefined && said.gravity.high >= said.solids)
    return words.bucket.windowAboveSolids(said.gravity.high, said.solids);
  const hazard = said.cautions?.includes('children') ? said.cautions.find(notForChildren) : undefined;
  if (hazard) return words.bucket.childrenAndHazard(hazard);
  if (said.shape && said.shape.bottom > said.shape.top * 1.5) return words.bucket.oddShape;
  return undefined;
};
