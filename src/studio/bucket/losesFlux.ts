import type { BucketCaution, BucketSettings } from '../settings/bucketSettings.ts';
import { marksInText } from './bucketHazards.ts';

const soluble: ReadonlySet<BucketCaution> = new Set(['caustic', 'boron', 'copper', 'lithium']);

/** Whether its clear water holds ash, soda, borate, lithium or copper: drawing it off removes flux or colour. */
export const losesFlux = ({ cautions, name, glaze, recipe }: BucketSettings): boolean =>
  [...cautions, ...[name, glaze ?? '', recipe ?? ''].flatMap(marksInText)].some((one) => soluble.has(one));
