import type { Observation } from '../../studio/bucket/bucketEvent.ts';
import { type Text, t } from '../text/text.ts';

/** What to do about things seen in a bucket that no reading shows. */
export const sightWords: Partial<Record<Observation, Text>> = {
  smell: t`It smells: that is rot, mostly of gum. Don’t put your nose to it, and tell a keeper. If it may be gas or bleach, leave the room first.`,
  mould: t`Mould: don’t breathe over it, and don’t stir it in. Tell a keeper, who lifts it off with gloves on.`,
  crystals: t`Crystals are part of the glaze: don’t sieve them out or throw them away. Let the bucket come to room temperature and stir until they are gone; if they stay, tell a keeper.`,
  ice: t`It is frozen: don’t use it, heat it or chip at the ice. Let it thaw slowly at room temperature; then sieve, stir and measure. Tell a keeper, who can hold it.`,
};
