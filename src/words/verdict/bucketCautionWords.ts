import type { BucketCaution } from '../../studio/settings/bucketSettings.ts';

/** What a keeper has marked a bucket with, as it is warned of. */
export const bucketCautionWords: Record<BucketCaution, string> = {
  gloves: 'Gloves.',
  caustic: 'Caustic.',
  toxic: 'Toxic.',
  barium: 'Holds barium: toxic when swallowed; gloves, keep it off food and hands.',
  manganese: 'Holds manganese: harmful as dust and as kiln fume.',
  nickel: 'Holds nickel: can sensitise skin; gloves.',
  chrome: 'Holds chrome: gloves, vent the kiln room.',
  cobalt: 'Holds cobalt: gloves.',
  copper: 'Holds copper: vent the kiln room; it can leach from a bad fit.',
  boron: 'Holds soluble boron: gloves for long work.',
  lithium: 'Holds lithium: caustic in water; gloves.',
  vanadium: 'Holds vanadium: toxic as dust; gloves.',
  lead: 'Holds lead: not for use here without a keeper and a laboratory.',
  cadmium: 'Holds cadmium: not for use here without a keeper and a laboratory.',
  children: 'Children may use this bucket.',
};
