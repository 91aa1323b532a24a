import { readFileSync } from 'node:fs';
import { openHandbook } from '../../src/search/openHandbook.ts';
import { loadNotes } from '../../src/seed/loadNotes.ts';
import type { StudioNote } from '../../src/studio/handbook.ts';
import { instant, memberId } from '../../src/studio/ids.ts';
import { foundByPhrasesLeftOut } from '../helpers/search/leaveOut.ts';
import { median, percentile } from './load.ts';

/** How long a search takes among 500 notes: the handbook's and a studio's own. */
const asked = JSON.parse(readFileSync('tests/unit/search/questions.json', 'utf8')) as { ask: string }[];
const handbookNotes = loadNotes();
const own = Array.from({ length: 500 - handbookNotes.length }, (_, i): StudioNote => {
  const like = handbookNotes[i % handbookNotes.length];
  return {
    no: i + 1,
    title: `${like?.title ?? ''} ${i}`,
    text: `${like?.answer ?? ''} ${like?.facts.map(({ text }) => text).join(' ') ?? ''}`,
    words: like?.words.slice(i % 7, (i % 7) + 6).join(', ') ?? '',
    by: memberId('keeper'),
    at: instant(0),
  };
});
const handbook = openHandbook(() => handbookNotes);
const began = performance.now();
handbook.find('why is my glaze pinholing', own);
const built = performance.now() - began;
const times = Array.from({ length: 3 }, () => asked)
  .flat()
  .map(({ ask }) => {
    const start = performance.now();
    handbook.find(ask, own);
    return performance.now() - start;
  });
const ms = (value: number) => `${value.toFixed(2)} ms`;
console.log(`${handbookNotes.length + own.length} notes, indexed with the first question in ${ms(built)}`);
console.log(
  `${times.length} questions: ${ms(median(times))} in the middle, ${ms(percentile(times, 0.99))} for 99 in 100 (aim: under 5 ms)`,
);

const { asked: phrases, first, three } = foundByPhrasesLeftOut([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
const share = (part: number) => `${(100 * part).toFixed(1)} %`;
console.log(
  `${phrases} phrases, each left out of its note: found first in ${share(first)}, among the first three in ${share(three)}`,
);
