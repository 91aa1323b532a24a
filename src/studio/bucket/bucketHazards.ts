import { hazardsInName } from '../../glaze/materials/hazardWords.ts';
import type { MaterialCaution } from '../../glaze/materials/materialTable.ts';
import type { BucketCaution } from '../settings/bucketSettings.ts';

/** What a bucket is marked with for a material in it. Dust and what dissolves are matters of the powder. */
const marks: Record<MaterialCaution, readonly BucketCaution[]> = {
  'silica dust': [],
  soluble: [],
  barium: ['barium'],
  boron: ['boron'],
  cadmium: ['cadmium'],
  chromium: ['chrome'],
  chromate: ['chrome', 'toxic'],
  cobalt: ['cobalt'],
  copper: ['copper'],
  lead: ['lead'],
  lithium: ['lithium'],
  manganese: ['manganese'],
  nickel: ['nickel'],
  vanadium: ['vanadium'],
  uranium: ['uranium'],
  arsenic: ['arsenic'],
  asbestos: ['asbestos'],
  fluorine: ['toxic'],
  toxic: ['toxic'],
  caustic: ['caustic'],
};

export const bucketMarks = (cautions: readonly MaterialCaution[]): BucketCaution[] => [
  ...new Set(cautions.flatMap((one) => marks[one])),
];

/** What a text says is in a bucket: a note of what went in, a name. */
export const marksInText = (text: string): BucketCaution[] => bucketMarks(hazardsInName(text));

/** Nobody works with these here before a keeper and a laboratory have said so: the bucket is held at once. */
export const poisons = ['lead', 'cadmium', 'uranium', 'arsenic', 'asbestos'] as const;
export type Poison = (typeof poisons)[number];

export const poisonIn = (cautions: readonly BucketCaution[]): Poison | undefined =>
  poisons.find((one) => cautions.includes(one));
