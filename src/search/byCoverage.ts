import type { SearchResult } from 'minisearch';
import type { CorrectedQuestion } from './mend.ts';
import type { IndexedNote, NoteIndex } from './noteIndex.ts';
import { isOtherTrade, isEveryday, termsAmong } from './terms.ts';

/** Tuned on one set of questions and measured on another. */
const tuned = {
  /** The share of a question that a note must cover to answer it. */
  least: 0.38,
  /** A smaller share is enough for a long question, if this many terms match. */
  leastOfLong: 0.3,
  manyTerms: 3,
  /** A smaller share is enough if the question has a word of the note's title. */
  leastOfNamed: 0.33,
  /** Weight of a word that no note has, against one that a note is about. */
  unknown: 0.6,
  /** Weight of an everyday word, whether a note has it or not. */
  everyday: 0.35,
  /** Bonus for each word of a note's phrase that is in the question unchanged. */
  phrase: 0.5,
  /** Weight of a misspelt word that was corrected. */
  guessed: 0.7,
  /** Weight of a single word from a phrase: "start" is not "start again". */
  outOfPhrase: 0.6,
  /** A smaller share is enough if the question contains a whole phrase of the note. */
  leastOfPhrase: 0.25,
};

const mostCandidates = 15;

const weightOfField: Record<string, number> = { title: 1, words: 1, answer: 0.7, rest: 0.5 };

const likeness = (term: string, known: string): number => {
  if (known === term) return 1;
  return term.length > 3 && known.startsWith(term) && known.length <= term.length + 2 ? 0.8 : 0;
};

/** The weight of a word in a note: less if it is only a part of one of the note's names. */
const weightInNote = (
  known: string,
  fields: readonly string[],
  meant: ReadonlySet<string>,
  note: IndexedNote,
) => {
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

/** How well a note matches one term of the question, from 0 to 1. */
const met = (
  term: string,
  match: SearchResult['match'],
  asked: ReadonlySet<string>,
  note: IndexedNote,
): number =>
  Object.entries(match).reduce((best, [known, fields]) => {
    const alike = likeness(term, known);
    return alike === 0 ? best : Math.max(best, alike * weightInNote(known, fields, asked, note));
  }, 0);

/** A note, and how much of a question it covers. */
export interface Covering {
  note: IndexedNote;
  /** From 0 to 1. */
  score: number;
  /** Whether that is enough for an answer. */
  covers: boolean;
  rank: number;
}

/** Notes ranked by how much of a question they cover, the best first. */
export const byCoverage = (
  notes: NoteIndex,
  { words: mended, guessed }: CorrectedQuestion,
): { covering: Covering[]; coverOf: (note: IndexedNote) => Covering } => {
  const { index, entries, spread, names } = notes;
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

  /** The note's longest name that is in the question unchanged. */
  const phraseOf = ({ phrases }: IndexedNote) =>
    phrases
      .filter(({ count, words: name }) => count > 1 && words.includes(` ${name} `))
      .reduce<{ count: number; terms: readonly string[] }>(
        (best, one) => (one.count > best.count ? one : best),
        { count: 0, terms: [] },
      );

  const rankedBy = (note: IndexedNote, result: Pick<SearchResult, 'score' | 'match'>): Covering => {
    const said = phraseOf(note);
    const each = terms.map((term) => ({
      term,
      met:
        (guessed.has(term) ? tuned.guessed : 1) *
        (said.terms.includes(term) ? 1 : met(term, result.match, asked, note)),
    }));
    // A phrase of everyday words counts as well: "is it ready" has no others.
    const chatter = Math.max(0, said.count - said.terms.length - 1);
    const covered = each.reduce((sum, one) => sum + one.met * weight(one.term), chatter);
    const score = whole + chatter === 0 ? 0 : covered / (whole + chatter);
    const many = each.filter((one) => one.met >= 0.7).length >= tuned.manyTerms;
    // Everyday words alone match nothing, unless they are a whole phrase.
    const ofTrade = said.count > 1 || each.some((one) => one.met >= 0.65 && !saysLittle(one.term));
    // Own properties only: every object inherits `constructor` and others.
    const named = terms.some(
      (term) => Object.hasOwn(result.match, term) && result.match[term]?.includes('title'),
    );
    return {
      note,
      score,
      covers:
        ofTrade &&
        !terms.some((term) => isOtherTrade(term) && !said.terms.includes(term)) &&
        (score >= tuned.least ||
          (said.terms.length > 0 && said.count > 1 && score >= tuned.leastOfPhrase) ||
          (named && score >= tuned.leastOfNamed) ||
          (many && score >= tuned.leastOfLong)),
      rank: (result.score + 8 * chatter) * (0.4 + score) * (1 + tuned.phrase * said.count),
    };
  };

  // A studio's own notes are always candidates, because they are few.
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
  return {
    covering: ranked.toSorted((a, b) => b.rank - a.rank),
    coverOf: (note) => rankedBy(note, { score: 0, match: {} }),
  };
};
