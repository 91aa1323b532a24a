import type { FoundNote, NotesFound } from '../studio/handbook.ts';
import { byCoverage, type Covering } from './byCoverage.ts';
import { correctSpelling } from './mend.ts';
import type { NoteIndex } from './noteIndex.ts';
import { isEveryday, isOtherTrade, termsAmong, wordsOf } from './terms.ts';

/** Found by leaving phrases out in turn, and on questions that are not of the glaze room. */
const tuned = {
  /** How like a note a question must be that no note covers. */
  least: 1.5,
  /** How like it must be even if its words cover it. */
  leastCovered: 0.9,
  /** How much more it must be alike if all its words are unknown, and if none is of the trade. */
  forUnknown: 0.5,
  forEveryday: 0.5,
  /** What the first note by coverage gains over the others, and what one that covers all gains. */
  forPlace: 0.3,
  forCover: 0.5,
  /** What a note gains if the question is one of its names. */
  forName: 0.5,
  /** How much of the best note's likeness another answer needs. */
  share: 0.4,
  /** How much of the best note's coverage a studio's own note needs to come before it. */
  ownShare: 0.8,
};

/** Only the first words of a long text are searched. */
const mostWords = 80;
const mostAlike = 8;

interface Ranked extends Covering {
  alike: number;
}

const asFound = ({ note, score }: Ranked): FoundNote => ({ found: note.note, score });

/** How like a note a question must be to be answered by likeness alone: more if its words are not the trade's. */
const leastLikeness = (words: readonly string[], { spread }: NoteIndex): number => {
  const terms = [...new Set(termsAmong(words))];
  if (terms.length === 0 || terms.some(isOtherTrade)) return Infinity;
  const weight = (some: readonly string[]) => some.reduce((sum, one) => sum + (isEveryday(one) ? 0.4 : 1), 0);
  const unknown = weight(terms.filter((one) => !spread.has(one))) / weight(terms);
  const isOfTrade = terms.some((one) => spread.has(one) && !isEveryday(one));
  return tuned.least + tuned.forUnknown * unknown + (isOfTrade ? 0 : tuned.forEveryday);
};

/** Notes that answer a question: ranked by likeness, with those before that cover its words best. */
export const findNotes = (notes: NoteIndex, question: string): NotesFound => {
  const corrected = correctSpelling(wordsOf(question).slice(0, mostWords), notes);
  const { covering, coverOf } = byCoverage(notes, corrected);
  const alike = notes.alike(corrected.words);
  const asked = corrected.words.join(' ');
  const known = new Set(covering.map(({ note }) => note.id));
  // Words such as “is it” alone are like no note.
  const likeliest = (termsAmong(corrected.words).length === 0 ? [] : [...alike])
    .toSorted(([, a], [, b]) => b - a)
    .slice(0, mostAlike)
    .flatMap(([id, likeness]) => {
      const note = known.has(id) || likeness === 0 ? undefined : notes.entries.get(id);
      return note ? [coverOf(note)] : [];
    });
  const ranked = [...covering, ...likeliest]
    .map((one, place): Ranked => ({
      ...one,
      alike:
        (alike.get(one.note.id) ?? 0) +
        tuned.forPlace / (1 + place) +
        tuned.forCover * one.score +
        (one.note.phrases.some(({ words }) => words === asked) ? tuned.forName : 0),
    }))
    .toSorted((a, b) => b.alike - a.alike);
  const best = ranked[0]?.alike ?? 0;
  const mostCovered = covering[0]?.score ?? 0;
  const least = leastLikeness(corrected.words, notes);
  const isAnswered = best >= least || (best >= tuned.leastCovered && ranked.some(({ covers }) => covers));
  // The studio's own notes come first, unless they match much worse.
  const isOwn = ({ note, score, covers }: Ranked): boolean =>
    note.note.from === 'studio' && covers && score >= tuned.ownShare * mostCovered;
  const inOrder = [...ranked.filter(isOwn), ...ranked.filter((one) => !isOwn(one))];
  const answers = inOrder.filter(
    (one) => isOwn(one) || (isAnswered && (one.covers || one.alike >= tuned.share * best)),
  );
  return { answers: answers.map(asFound), near: inOrder.map(asFound) };
};
