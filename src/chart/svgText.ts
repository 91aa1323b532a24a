import type { Chart } from '../contract/contract.ts';
import type { Theme } from './theme.ts';

/** Text that cannot end the element that it is in. */
const escaped = (text: string) =>
  text.replace(/[&<>"']/g, (char) => `&#${char.codePointAt(0) ?? 32};`).replace(/\p{Cc}/gu, ' ');

export const svgText = (
  x: number,
  y: number,
  pixels: number,
  fill: string,
  words: string,
  anchor: 'start' | 'end' = 'start',
): string =>
  `<text x="${x}" y="${y}" font-family="Inter" font-size="${pixels}" fill="${fill}" text-anchor="${anchor}">${escaped(words)}</text>`;

/** Where the title's place ends and a chart's own drawing begins. */
export const head = 44;

/** A chart's frame around its drawing: alt text, paper, title, and the key below `bottom`. `clip` may hide parts of all. */
export const framed = (
  { alt, title, key }: Chart,
  { paper, ink, faint }: Theme,
  { width, bottom, keyWidth = width }: { width: number; bottom: number; keyWidth?: number },
  drawing: readonly string[],
  clip = '',
): string => {
  const lines = wrappedLines(key, keyWidth / 6.6);
  const height = bottom + 14 + 16 * lines.length;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escaped(alt)}">`,
    `<title>${escaped(alt)}</title>`,
    clip === '' ? '' : `${clip}<g>`,
    `<rect width="${width}" height="${height}" fill="${paper}"/>`,
    svgText(16, 28, 18, ink, title),
    ...drawing,
    ...lines.map((line, i) => svgText(16, height - 10 - 16 * (lines.length - 1 - i), 12, faint, line)),
    clip === '' ? '</svg>' : '</g></svg>',
  ].join('');
};

/** Packs sentences into as few lines as possible. */
const wrappedLines = (words: string, most: number): string[] =>
  words.split(/(?<=\.) /).reduce<string[]>((all, sentence) => {
    const last = all.at(-1);
    if (last === undefined || last.length + sentence.length + 1 > most) return [...all, sentence];
    return [...all.slice(0, -1), `${last} ${sentence}`];
  }, []);
