import type { Kind } from '../contract.ts';
import { text } from './texts.ts';

/** More pieces than one person glazes at once. */
const mostPieces = 100;

const words = text(120, '3 bowls');

/** How many pieces the text names: the sum of the leading numbers; a part without a number counts as one. */
const pieceCount = (pieces: string): number =>
  pieces
    .split(/[,;+&\n]|\band\b/i)
    .filter((part) => part.trim() !== '')
    .map((part) => Number(/^\s*(\d+)(?!\S*["″'′]| ?(?:cm|mm|in|inch)\b)/i.exec(part)?.[1] ?? 1))
    .reduce((sum, n) => sum + n, 0);

/** The pieces under one coat, in the member's words. */
export const pieces: Kind<string> = {
  control: 'text',
  prose: true,
  longest: words.longest ?? 0,
  example: '3 bowls',
  async read(typed, asking) {
    if (pieceCount(typed) > mostPieces)
      return { ok: false, why: asking.words.coat.tooMany(typed.slice(0, 60), mostPieces) };
    return words.read(typed, asking);
  },
};
