import type { Window } from '../studio/settings/bucketSettings.ts';
import { gravityText, windowText } from './text/measures.ts';

export const chartWords = {
  gravity: 'Specific gravity',
  efflux: 'Cup time',
  key: 'Filled dot: a reading that counts. Hollow dot: a reading that does not count. Band: the window. Stroke: a stir. Triangle: something added. Square: sieved or put on hold.',
  mark: { stir: 'stirred', addition: 'added', sieve: 'sieved', hold: 'on hold' },
  /** What the picture shows, for whoever cannot see it. */
  alt: (
    name: string,
    gravity: readonly { value: number; believed: boolean }[],
    window: Window<number> | undefined,
    marks: number,
  ): string => {
    const last = gravity.at(-1);
    const values = gravity.map(({ value }) => value);
    const span =
      last === undefined
        ? 'no gravity readings'
        : `${gravity.length} gravity readings from ${gravityText(Math.min(...values))} to ${gravityText(Math.max(...values))}, the last ${gravityText(last.value)}${last.believed ? '' : ', which does not count'}`;
    const aim = window ? `; its window is ${windowText(window)}` : '';
    return `Chart of ${name}: ${span}${aim}; ${marks} stirs and additions marked.`;
  },
};
