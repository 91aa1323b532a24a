import type { BucketCaution } from '../../studio/settings/bucketSettings.ts';

/** What a keeper has marked a bucket with, as it is warned of. */
export const bucketCautionWords: Record<BucketCaution, string> = {
  gloves: 'Gloves.',
  caustic: 'Caustic.',
  toxic: 'Toxic.',
  barium:
    'Holds barium: toxic when swallowed. Gloves, wash hands, nothing to eat near it; no food ware without a laboratory’s leach test.',
  manganese:
    'Holds manganese: harmful as dust and as kiln fume. Mask with the dry powder, vent the kiln room; no food ware without a laboratory’s leach test.',
  nickel:
    'Holds nickel: can sensitise skin. Gloves, wash hands; no food ware without a laboratory’s leach test.',
  chrome:
    'Holds chrome: gloves, wash hands, vent the kiln room; no food ware without a laboratory’s leach test.',
  cobalt:
    'Holds cobalt: can sensitise skin. Gloves, wash hands; no food ware without a laboratory’s leach test.',
  copper:
    'Holds copper: wash hands, vent the kiln room; it can leach, so no food ware without a laboratory’s leach test.',
  boron: 'Holds soluble boron: harmful when swallowed. Gloves for long work, wash hands.',
  lithium:
    'Holds lithium: harmful when swallowed. Gloves, wash hands; no food ware without a laboratory’s leach test.',
  vanadium:
    'Holds vanadium: toxic as dust. Gloves, mask with the dry powder, wash hands; no food ware without a laboratory’s leach test.',
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
