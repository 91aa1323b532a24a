import { editDistance } from '../studio/editDistance.ts';
import { emergencies, type Emergency } from '../studio/handbook.ts';
import {
  generalQuestionSigns,
  plannedSigns,
  signsOf,
  supposedSigns,
  whatNowSigns,
  ofWare,
} from './emergencySigns.ts';
import { realWords, wordOfForm } from './emergencyWords.ts';
import { withoutWareParts } from './signsByPart.ts';
import { typedWords } from './terms.ts';

/** Only the start of a long text is searched. */
const mostLetters = 1200;

/** A regular expression for one pattern, to match words that have a space on either side. */
const patternOf = (words: string): RegExp => {
  const parts = words.split(' ').map((part) => {
    if (part === '^') return '^ ';
    if (part === '$') return '$';
    if (part.startsWith('~')) return `(?:\\S+ ){0,${part.slice(1)}}`;
    if (part.startsWith('!')) return `(?!(?:${part.slice(1)}) )`;
    return `(?:${part}) `;
  });
  return new RegExp(words.startsWith('^') ? parts.join('') : ` ${parts.join('')}`);
};

/** Compiles a pattern of emergencySigns into a function that returns where the match ends. */
const compileSign = (sign: string): ((words: string) => number | undefined) => {
  const runs = sign.split(' + ').map(patternOf);
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
  const all = signs.map(compileSign);
  return (words: string): boolean => all.some((endOf) => endOf(words) !== undefined);
};

const rules = emergencies.map((emergency) => {
  const { signs, unless } = signsOf(emergency);
  return { emergency, signs: signs.map(compileSign), isOther: anyOf(unless) };
});
const isPlanned = anyOf(plannedSigns);
const isSupposed = anyOf(supposedSigns);
const asksWhatNow = anyOf(whatNowSigns);
const isOfKind = anyOf(generalQuestionSigns);
const isOfWare = anyOf(ofWare);
const namesSomebody = anyOf(['person|persons']);

/** Emergencies that anybody present can see, smell or hear. */
const ofPlace: ReadonlySet<Emergency> = new Set(['fire', 'gas-leak', 'alarm', 'bleach-gas', 'hurt']);

const longestWord = 15;

/** How many letters may be wrong in a word for an emergency. */
const slips = (length: number): number => (length > 8 ? 2 : 1);

/** Forms by first letter, to correct typing errors: the first letter is seldom wrong. */
const formsBy = new Map<string, (readonly [form: string, word: string])[]>();
for (const [form, word] of wordOfForm) {
  if (form.length < 5) continue;
  const first = form.charAt(0);
  formsBy.set(first, [...(formsBy.get(first) ?? []), [form, word]]);
}

const correctedWord = (typed: string): string => {
  if (typed.length < 4 || typed.length > longestWord || realWords.has(typed)) return typed;
  const near = formsBy
    .get(typed.charAt(0))
    ?.find(
      ([form]) =>
        Math.abs(form.length - typed.length) <= slips(form.length) &&
        editDistance(form, typed) <= slips(form.length),
    );
  return near?.[1] ?? typed;
};

const asker = /^(?:can|do|should|could|may|must|would|will|shall) (?:i|we)$/;

/**
 * The question in normalised words, with spaces around each. "Can I" is dropped: it asks in general, and nobody is
 * hurt.
 */
const normalizedQuestion = (question: string, isKnown: (word: string) => boolean): string => {
  // “/help” opens a page of help: it is no cry for it.
  const heard = question.slice(0, mostLetters).replace(/^\s*\/[a-z-]+/, '');
  const names = new Set((heard.match(/\b\p{Lu}\p{Ll}+\b/gu) ?? []).map((name) => name.toLowerCase()));
  const words = typedWords(heard).map((word, i, all) => {
    if (asker.test(`${all[i - 1] ?? ''} ${word}`)) return 'asker';
    const form = wordOfForm.get(word) ?? (isKnown(word) ? word : correctedWord(word));
    return form === word && names.has(word) && !isKnown(word) && !wordOfForm.has(word) ? 'named' : form;
  });
  return withoutWareParts(` ${words.join(' ')} `);
};

/** The emergencies in a question. Dangers to the helper come first. */
export const findEmergencies = (question: string, isKnown: (word: string) => boolean): Emergency[] => {
  const words = normalizedQuestion(question, isKnown);
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

/** Whether its words of harm are about ware: first aid would be beside the question. */
export const asksOfWare = (question: string, isKnown: (word: string) => boolean): boolean =>
  findEmergencies(question, isKnown).length === 0 && isOfWare(normalizedQuestion(question, isKnown));
