/** Text that cannot end the element that it is in. */
export const escaped = (text: string) =>
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

/** Packs sentences into as few lines as possible. */
export const wrappedLines = (words: string, most: number): string[] =>
  words.split(/(?<=\.) /).reduce<string[]>((all, sentence) => {
    const last = all.at(-1);
    if (last === undefined || last.length + sentence.length + 1 > most) return [...all, sentence];
    return [...all.slice(0, -1), `${last} ${sentence}`];
  }, []);
