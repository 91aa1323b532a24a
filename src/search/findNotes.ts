import type { SearchResult } from 'minisearch';
import type { NotesFound, FoundNote } from '../studio/handbook.ts';
import { mend } from './mend.ts';
import type { IndexedNote, NoteIndex } from './noteIndex.ts';
import { isElsewhere, isEveryday, termsAmong, wordsOf } from './terms.ts';

/** Tuned on some of the questions; what it is worth is measured on others. */
const tuned = {
  /** The part of a question that a note must cover to answer it. */
  least: 0.38,
  /** Of a long question a smaller part, when so many of its terms are met. */
  leastOfLong: 0.3,
  manyTerms: 3,
  /** Smaller, too, when the question names the note by a word of its title. */
  leastOfNamed: 0.33,
  /** A word that no note has says less than one that a note is about. */
  unknown: 0.6,
  /** A word of everyday talk says little, whether a note has it or not. */
  everyday: 0.35,
  /** For each word of a note's phrase that stands in the question as it is. */
  phrase: 0.5,
  /** A word that was mistyped, and is taken for the one nearest to it. */
  guessed: 0.7,
  /** A word out of the middle of a phrase: “start” is not “start again”. */
  outOfPhrase: 0.6,
  /** How much of the question a note of the studio's own must cover, against the best one, to go before it. */
  ownShare: 0.8,
  /** A whole phrase of a note's own tells what is asked, whatever else is told with it. */
  leastOfPhrase: 0.25,
};

/** A long story is looked up by its first words. */
const mostWords = 80;
const mostCandidates = 15;

const weightOfField: Record<string, number> = { title: 1, words: 1, answer: 0.7, rest: 0.5 };

/** How alike a word of the question and one of a note are. */
const likeness = (term: string, known: string): number => {
  if (known === term) return 1;
  return term.length > 3 && known.startsWith(term) && known.length <= term.length + 2 ? 0.8 : 0;
};

/** How much a word that a note has says: less when it is only a part of what people call it. */
const says = (known: string, fields: readonly string[], meant: ReadonlySet<string>, note: IndexedNote) => {
  const field = Math.max(0, ...fields.map((name) => weightOfField[name] ?? 0));
  if (!fields.includes('words') || fields.includes('title')) return field;
  const whole = note.phrases.some(
    ({ terms, count }) =>
      terms.includes(known) &&
      (terms.length > 1 || count === 1) &&
      terms.every((term) => term === known || meant.has(term)),
  );
  return whole ? field : field * tuned.outOfPhrase;
};

/** How well a note meets one term of the question, from 0 to 1. */
const met = (
  term: string,
  match: SearchResult['match'],
  asked: ReadonlySet<string>,
  note: IndexedNote,
): number =>
  Object.entries(match).reduce((best, [known, fields]) => {
    const alike = likeness(term, known);
    return alike === 0 ? best : Math.max(best, alike * says(known, fields, asked, note));
  }, 0);

interface Ranked extends FoundNote {
  answers: boolean;
  rank: number;
}

const withoutTerms = ({ found, score }: FoundNote): FoundNote => ({ found, score });

/** Notes that answer a question, the best first, by how much of it they cover. */
export const findNotes = (notes: NoteIndex, question: string): NotesFound => {
  const { index, entries, spread, names } = notes;
  const { words: mended, guessed } = mend(wordsOf(question).slice(0, mostWords), notes);
  const words = ` ${mended.join(' ')} `;
  const terms = [...new Set(termsAmong(mended))];
  const asked = new Set(terms);
  const saysLittle = (term: string): boolean => isEveryday(term) && !names.has(term);
  const weight = (term: string): number => {
    const notes = spread.get(term);
    const rare =
      notes === undefined ? tuned.unknown * Math.log(1 + entries.size) : Math.log(1 + entries.size / notes);
    return saysLittle(term) ? tuned.everyday * rare : rare;
  };
  const whole = terms.reduce((sum, term) => sum + weight(term), 0);

  /** The longest name of a note that stands in the question as it is. */
  const phraseOf = ({ phrases }: IndexedNote) =>
    phrases
      .filter(({ count, words: name }) => count > 1 && words.includes(` ${name} `))
      .reduce<{ count: number; terms: readonly string[] }>(
        (best, one) => (one.count > best.count ? one : best),
        { count: 0, terms: [] },
      );

  const rankedBy = (note: IndexedNote, result: Pick<SearchResult, 'score' | 'match'>): Ranked => {
    const said = phraseOf(note);
    const each = terms.map((term) => ({
      term,
      met:
        (guessed.has(term) ? tuned.guessed : 1) *
        (said.terms.includes(term) ? 1 : met(term, result.match, asked, note)),
    }));
    // A phrase of everyday words counts too: “is it ready” has no other.
    const chatter = Math.max(0, said.count - said.terms.length - 1);
    const covered = each.reduce((sum, one) => sum + one.met * weight(one.term), chatter);
    const score = whole + chatter === 0 ? 0 : covered / (whole + chatter);
    const many = each.filter((one) => one.met >= 0.7).length >= tuned.manyTerms;
    // Everyday words alone answer nothing, but for a whole phrase of them.
    const ofTrade = said.count > 1 || each.some((one) => one.met >= 0.65 && !saysLittle(one.term));
    // An object has names of its own making too, such as `constructor`: nobody matched them.
    const named = terms.some(
      (term) => Object.hasOwn(result.match, term) && result.match[term]?.includes('title'),
    );
    return {
      found: note.note,
      score,
      answers:
        ofTrade &&
        !terms.some((term) => isElsewhere(term) && !said.terms.includes(term)) &&
        (score >= tuned.least ||
          (said.terms.length > 0 && said.count > 1 && score >= tuned.leastOfPhrase) ||
          (named && score >= tuned.leastOfNamed) ||
          (many && score >= tuned.leastOfLong)),
      rank: (result.score + 8 * chatter) * (0.4 + score) * (1 + tuned.phrase * said.count),
    };
  };

  // A studio's own few are never crowded out.
  const isCandidate = ({ id }: SearchResult, place: number): boolean =>
    place < mostCandidates || entries.get(String(id))?.note.from === 'studio';
  const results = terms.length === 0 ? [] : index.search(terms.join(' ')).filter(isCandidate);
  const known = new Set(results.map(({ id }) => String(id)));
  const byPhrase = [...entries.values()].filter((note) => !known.has(note.id) && phraseOf(note).count > 2);
  const ranked = [
    ...results.flatMap((result) => {
      const note = entries.get(String(result.id));
      return note ? [rankedBy(note, result)] : [];
    }),
    ...byPhrase.map((note) => rankedBy(note, { score: 0, match: {} })),
  ];
  const best = ranked.reduce((top, one) => (one.rank > top.rank ? one : top), { rank: 0, score: 0 });
  // What the studio wrote itself goes first, unless it only touches what was asked.
  const first = ({ found, score, answers }: Ranked): number =>
    found.from === 'studio' && answers && score >= tuned.ownShare * best.score ? 1 : 0;
  ranked.sort((a, b) => first(b) - first(a) || b.rank - a.rank);
  return {
    answers: ranked.filter(({ answers }) => answers).map(withoutTerms),
    near: ranked.map(withoutTerms),
  };
};
