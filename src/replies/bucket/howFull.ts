import { millilitres, type Millilitres, type Millimetres } from '../../glaze/units.ts';
import type { Level } from '../../parse/readLevel.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { pailVolumeFromRimGap } from '../../studio/contents/pailVolumeFromRimGap.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';
import { volumeText } from '../../words/text/measures.ts';
import type { Words } from '../../words/words.ts';
import { refusal, type Reply } from '../../contract/contract.ts';

type Filled =
  | { kind: 'refused'; reply: Reply }
  | { kind: 'filled'; gap?: Millimetres | undefined; level?: Millilitres | undefined };

const refused = (text: Parameters<typeof refusal>[0]): Filled => ({ kind: 'refused', reply: refusal(text) });

/** How full a pail is, as a gap or as a volume; refused where its pail cannot be so full, or is not known. */
export const howFull = (
  { bucket: { settings }, gap, level }: { bucket: BucketState; gap?: Millimetres; level?: Level },
  units: UnitSystem,
  { reading: w }: Words,
): Filled => {
  if (gap !== undefined && level !== undefined) return refused(w.gapAndLevel);
  const below = level?.by === 'gap' ? level.gap : gap;
  if (below !== undefined) {
    const volume = pailVolumeFromRimGap(settings, below);
    if (volume === undefined) return refused(w.noPail);
    return volume.ok ? { kind: 'filled', gap: below } : refused(w.gapTooDeep(volume.outOfRange.high));
  }
  if (level === undefined || level.by === 'gap') return { kind: 'filled' };
  const { pail } = settings;
  if (level.by === 'part' && pail === undefined) return refused(w.noPail);
  const volume = level.by === 'part' ? millilitres(level.part * (pail ?? 0)) : level.volume;
  if (pail !== undefined && volume > pail) return refused(w.levelOverRim(volumeText(pail, units)));
  return { kind: 'filled', level: volume };
};
