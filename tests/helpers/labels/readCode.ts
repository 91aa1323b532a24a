import jsqr from 'jsqr';
import type { PrintedPage } from './renderPdf.ts';

/** What a scanner reads in one part of a page, given in points from its top left. */
export const readCode = (
  { pixels, width: points }: PrintedPage,
  { x, y, width, height }: { x: number; y: number; width: number; height: number },
): string | undefined => {
  const scale = pixels.width / points;
  const [left, top, wide, high] = [x, y, width, height].map((one) => Math.round(one * scale)) as [
    number,
    number,
    number,
    number,
  ];
  const part = new Uint8ClampedArray(4 * wide * high);
  for (let row = 0; row < high; row++) {
    const from = 4 * ((top + row) * pixels.width + left);
    part.set(pixels.data.subarray(from, from + 4 * wide), 4 * row * wide);
  }
  return jsqr.default(part, wide, high)?.data;
};
