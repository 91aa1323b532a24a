import { edits } from '../studio/edits.ts';
import { emergencies, type Emergency } from '../studio/handbook.ts';
import { asksOfKind, planned, signsOf, supposed, whatNow } from './emergencySigns.ts';
import { inOwnRight, wordOfForm } from './emergencyWords.ts';
import { typedWords } from './terms.ts';

/** A long story is looked through by its beginning. */
const mostLetters = 1200;

/** One run of a sign's words, to be looked for in words with a space round each. */
const run = (words: string): RegExp => {
  const parts = words.split(' ').map((part) => {
    if (part === '^') return '^ ';
    if (part === '$') return '$';
    if (part.startsWith('~')) return `(?:\\S+ ){0,${part.slice(1)}}`;
    if (part.startsWith('!')) return `(?!(?:${part.slice(1)}) )`;
    return `(?:${part}) `;
  });
  return new RegExp(words.startsWith('^') ? parts.join('') : ` ${parts.join('')}`);
};

/** A sign as emergencySigns writes it; it answers where in the words it is complete. */
const compiled = (sign: string): ((words: string) => number | undefined) => {
  const runs = sign.split(' + ').map(run);
  return (words) => {
    const ends = runs.map((one) => {
      const found = one.exec(words);
      return found ? found.index + found[0].length : Infinity;
    });
    const end = Math.max(...ends);
    return Number.isFinite(end) ? end : undefined;
  };
};
const anyOf = (signs: readonly string[]) => {
  const all = signs.map(compiled);
  return (words: string): boolean => all.some((endOf) => endOf(words) !== undefined);
};

const rules = emergencies.map((emergency) => {
  const { signs, unless } = signsOf[emergency];
  return { emergency, signs: signs.map(compiled), isOther: anyOf(unless) };
});
const isPlanned = anyOf(planned);
const isSupposed = anyOf(supposed);
const asksWhatNow = anyOf(whatNow);
const isOfKind = anyOf(asksOfKind);
const namesSomebody = anyOf(['person|persons']);

/** What is there for all to see, smell or hear, whoever asks. */
const ofPlace: ReadonlySet<Emergency> = new Set(['fire', 'gas-leak', 'alarm', 'bleach-gas', 'hurt']);

const longestWord = 15;

/** Letters that may be wrong in a word of fear. */
const slips = (length: number): number => (length > 8 ? 2 : 1);

/** The forms that a mistyped word may have been, by their first letter: a first letter is seldom wrong. */
const formsBy = new Map<string, (readonly [form: string, word: string])[]>();
for (const [form, word] of wordOfForm) {
  if (form.length < 5) continue;
  const first = form.charAt(0);
  formsBy.set(first, [...(formsBy.get(first) ?? []), [form, word]]);
}

const mended = (typed: string): string => {
  if (typed.length < 4 || typed.length > longestWord || inOwnRight.has(typed)) return typed;
  const near = formsBy
    .get(typed.charAt(0))
    ?.find(
      ([form]) =>
        Math.abs(form.length - typed.length) <= slips(form.length) &&
        edits(form, typed) <= slips(form.length),
    );
  return near?.[1] ?? typed;
};

const asker = /^(?:can|do|should|could|may|must|would|will|shall) (?:i|we)$/;

/** The question in the words that signs are written in, a space round each. “Can I” asks, and tells of nobody. */
const told = (question: string, isKnown: (word: string) => boolean): string => {
  const words = typedWords(question.slice(0, mostLetters)).map((word, i, all) => {
    if (asker.test(`${all[i - 1] ?? ''} ${word}`)) return 'asker';
    return wordOfForm.get(word) ?? (isKnown(word) ? word : mended(word));
  });
  return ` ${words.join(' ')} `;
};

/** What happens right now, as far as a question says so; what endangers whoever helps comes first. */
export const findEmergencies = (question: string, isKnown: (word: string) => boolean): Emergency[] => {
  const words = told(question, isKnown);
  const meansIt = asksWhatNow(words);
  const isOfNobody = isOfKind(words) && !namesSomebody(words) && !meansIt;
  const isNow = (endOf: (words: string) => number | undefined): boolean => {
    const end = endOf(words);
    if (end === undefined) return false;
    const before = words.slice(0, end);
    return !isPlanned(before) && (meansIt || !isSupposed(before));
  };
  return rules.flatMap(({ emergency, signs, isOther }) =>
    !isOther(words) && (ofPlace.has(emergency) || !isOfNobody) && signs.some(isNow) ? [emergency] : [],
  );
};
