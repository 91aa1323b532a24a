import type { BucketCaution, BucketSettings } from '../settings/bucketSettings.ts';
import { marksInText } from './bucketHazards.ts';

const soluble: ReadonlySet<BucketCaution> = new Set(['caustic', 'boron', 'copper', 'lithium']);

/** Whether its clear water holds ash, soda, borate, lithium or copper: drawn off, it takes flux or colour along. */
export const losesFlux = ({ cautions, name, glaze, recipe }: BucketSettings): boolean =>
  [...cautions, ...[name, glaze ?? '', recipe ?? ''].flatMap(marksInText)].some((one) => soluble.has(one));
