import { gravityText, windowText } from './text/measures.ts';

export const chartWords = {
  gravity: 'Specific gravity',
  efflux: 'Efflux',
  key: 'Filled: believed. Hollow: kept, not believed. Band: the window. Strokes: stirs. Triangles: something added. Squares: sieved or held.',
  mark: { stir: 'stirred', addition: 'added', sieve: 'sieved', hold: 'on hold' },
  /** What the picture shows, for whoever cannot see it. */
  alt: (
    name: string,
    gravity: readonly { value: number; believed: boolean }[],
    window: { low: number; high: number } | undefined,
    marks: number,
  ): string => {
    const last = gravity.at(-1);
    const values = gravity.map(({ value }) => value);
    const span =
      last === undefined
        ? 'no gravity readings'
        : `${gravity.length} gravity readings from ${gravityText(Math.min(...values))} to ${gravityText(Math.max(...values))}, the last ${gravityText(last.value)}${last.believed ? '' : ', not believed'}`;
    const aim = window ? `; its window is ${windowText(window)}` : '';
    return `Chart of ${name}: ${span}${aim}; ${marks} stirs and additions marked.`;
  },
};
