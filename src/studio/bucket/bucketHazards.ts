import { hazardsInName } from '../../glaze/materials/hazardWords.ts';
import type { MaterialCaution } from '../../glaze/materials/materialTable.ts';
import type { BucketCaution, BucketSettings } from '../settings/bucketSettings.ts';

/** The cautions that a material gives a bucket. Dust and solubility are left out: they concern the powder. */
const cautionsOfMaterial: Record<MaterialCaution, readonly BucketCaution[]> = {
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
  ...new Set(cautions.flatMap((one) => cautionsOfMaterial[one])),
];

/** The cautions that follow from a text about a bucket: a note on an addition, a name. */
export const marksInText = (text: string): BucketCaution[] => bucketMarks(hazardsInName(text));

/** A bucket that gets one of these is put on hold until a keeper and a laboratory have cleared it. */
export const poisons = ['lead', 'cadmium', 'uranium', 'arsenic', 'asbestos'] as const;
export type Poison = (typeof poisons)[number];

export const poisonIn = (cautions: readonly BucketCaution[]): Poison | undefined =>
  poisons.find((one) => cautions.includes(one));

const soluble: ReadonlySet<BucketCaution> = new Set(['caustic', 'boron', 'copper', 'lithium']);

const textsOf = ({ name, glaze = '', recipe = '' }: BucketSettings) => [name, glaze, recipe];

/** Whether its clear water holds ash, soda, borate, lithium or copper: drawing it off removes flux or colour. */
export const losesFlux = (settings: BucketSettings): boolean =>
  [...settings.cautions, ...textsOf(settings).flatMap(marksInText)].some((one) => soluble.has(one));

/** The boron in a frit does not dissolve. */
const namesRawBorate = (text: string): boolean =>
  text.split(/[,;\n]/).some((part) => !/frit/i.test(part) && marksInText(part).includes('boron'));

/**
 * Whether a glaze holds raw borate, which gels by itself: its recipe's materials, its name, or a keeper's caution says
 * so.
 */
export const gelsByItself = (settings: BucketSettings): boolean =>
  settings.cautions.includes('boron') || textsOf(settings).some(namesRawBorate);
