import type { BucketSettings } from '../settings/bucketSettings.ts';
import { marksInText } from '../bucket/bucketHazards.ts';

/** The boron in a frit does not dissolve. */
const namesRawBorate = (text: string): boolean =>
  text.split(/[,;\n]/).some((part) => !/frit/i.test(part) && marksInText(part).includes('boron'));

/**
 * Whether a glaze holds raw borate, which gels by itself: its recipe's materials, its name, or a keeper's caution says
 * so.
 */
export const gelsByItself = ({ cautions, name, glaze, recipe }: BucketSettings): boolean =>
  cautions.includes('boron') || [name, glaze ?? '', recipe ?? ''].some(namesRawBorate);
