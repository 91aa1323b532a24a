import type { BucketSettings } from '../../studio/settings/bucketSettings.ts';
import { isHazard } from '../../studio/settings/barehanded.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';
import { nameLook } from '../../studio/nameLook.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';
import { normalizedText } from '../../text/normalizedText.ts';

/** The first contradiction in a bucket's settings, if there is one. */
export const bucketProblem = (
  said: Partial<BucketSettings>,
  volume: number | undefined,
  others: readonly BucketState[],
  units: UnitSystem,
  words: Words,
): Text | undefined => {
  const taken = (name: string) =>
    others.find(
      ({ retired, settings }) =>
        !retired &&
        [settings.name, settings.nick ?? ''].some((one) => normalizedText(one) === normalizedText(name)),
    );
  const twin = (name: string) =>
    others.find(
      ({ retired, settings }) =>
        !retired && nameLook(name) !== '' && nameLook(settings.name) === nameLook(name),
    );
  for (const name of [said.name, said.nick]) {
    const other = name === undefined ? undefined : taken(name);
    if (other && name !== undefined) return words.bucket.nameTaken(name, other.no);
    const alike = name === undefined || other ? undefined : twin(name);
    if (alike && name !== undefined) return words.bucket.looksLike(name, alike.settings.name, alike.no);
    if (name !== undefined && /^\d+$/.test(normalizedText(name))) return words.bucket.nameIsNumber(name);
  }
  if (said.pail !== undefined && volume !== undefined && volume > said.pail)
    return words.bucket.moreThanPail(volume, said.pail, units);
  if (said.gravity && said.solids !== undefined && said.gravity.high >= said.solids)
    return words.bucket.windowAboveSolids(said.gravity.high, said.solids);
  const hazard = said.cautions?.includes('children') ? said.cautions.find(isHazard) : undefined;
  if (hazard) return words.bucket.childrenAndHazard(hazard);
  if (said.shape && said.shape.bottom > said.shape.top * 1.5) return words.bucket.oddShape;
  return undefined;
};
