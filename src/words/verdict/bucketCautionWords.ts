import { t, type Text } from '../text/text.ts';
import type { BucketCaution } from '../../studio/settings/bucketSettings.ts';

const leach = 'no food ware without a laboratory’s leach test.';

/** What a keeper has marked a bucket with, as it is warned of. */
export const bucketCautionWords: Record<BucketCaution, string> = {
  gloves: 'Wear gloves: this bucket is marked for them. No bare fingers in it.',
  caustic: 'Caustic: gloves and eye protection. No bare fingers in it.',
  toxic: 'Toxic in the hand and the mouth: gloves, no food or drink near it.',
  barium: `Holds barium: toxic when swallowed. Gloves, wash hands, nothing to eat near it; ${leach}`,
  manganese: `Holds manganese: harmful as dust and as kiln fume. Mask with the dry powder, vent the kiln room; ${leach}`,
  nickel: `Holds nickel: can sensitise skin. Gloves, wash hands; ${leach}`,
  chrome: `Holds chrome: gloves, wash hands, vent the kiln room; ${leach}`,
  cobalt: `Holds cobalt: can sensitise skin. Gloves, wash hands; ${leach}`,
  copper: `Holds copper: wash hands, vent the kiln room; it can leach, so ${leach}`,
  boron: 'Holds soluble boron: harmful when swallowed. Gloves for long work, wash hands.',
  lithium: `Holds lithium: harmful when swallowed. Gloves, wash hands; ${leach}`,
  vanadium: `Holds vanadium: toxic as dust. Gloves, mask with the dry powder, wash hands; ${leach}`,
  lead: 'Holds lead: poisonous in the mouth and as dust. Not for use here without a keeper and a laboratory; gloves, wash hands, never food ware.',
  cadmium:
    'Holds cadmium: poisonous in the mouth and as dust. Not for use here without a keeper and a laboratory; gloves, wash hands, never food ware.',
  uranium:
    'Holds uranium: radioactive and poisonous. Not for use here: keep it closed, don’t touch it, and ask the authority that your local rules name.',
  arsenic:
    'Holds arsenic: poisonous in the mouth, on skin and as kiln fume. Not for use here: keep it closed and don’t touch it.',
  asbestos:
    'May hold asbestos: its dust causes cancer. Not for use here: keep it closed and wet, and ask whom your local rules name.',
  children: 'Children may use this bucket.',
};

/** What bleach must never meet. */
export const bleachCaution: Text = t`Bleach: never with vinegar or another acid (chlorine gas), never with latex or ammonia (chloramine gas). Wear gloves and eye protection, open the windows, and follow its label. No bare hands in the bucket.`;
