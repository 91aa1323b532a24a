import type { MemberId } from '../ids.ts';

/** The names and words of somebody, to be erased everywhere. */
export interface ErasedWords {
  members: readonly MemberId[];
  names: readonly string[];
  /** Notes and labels, whole. */
  texts: readonly string[];
}

/** Replaces somebody's words. */
export const erasedMark = '…';

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** A pattern that finds a name as a word of its own; undefined when there is none to look for. */
export const nameAsWord = (names: readonly string[]): RegExp | undefined => {
  const wanted = names.map((name) => name.trim()).filter((name) => /[\p{L}\p{N}]/u.test(name));
  if (wanted.length === 0) return undefined;
  const any = wanted
    .sort((a, b) => b.length - a.length)
    .map(escaped)
    .join('|');
  return new RegExp(`(?<![\\p{L}\\p{N}])(?:${any})(?![\\p{L}\\p{N}])`, 'giu');
};

const isLetter = (text: string, at: number) => /[\p{L}\p{N}]/u.test(text.charAt(at));

/** A cut line may end within a text; shorter beginnings than this could be anybody's. */
const fewestCutLetters = 8;

const endsWithin = (line: string, text: string): boolean => {
  for (let n = Math.min(line.length, text.length); n >= fewestCutLetters; n--)
    if (line.endsWith(text.slice(0, n))) return true;
  return false;
};

/** Whether a line contains a text, and not as part of a longer word. */
const standsIn = (line: readonly string[], text: string): boolean =>
  text !== '' &&
  line.some((one) => {
    if (endsWithin(one, text)) return true;
    for (let at = one.indexOf(text); at >= 0; at = one.indexOf(text, at + 1)) {
      const end = at + text.length;
      const runsOn = isLetter(one, at - 1) && isLetter(one, at);
      if (!runsOn && !(isLetter(one, end - 1) && isLetter(one, end))) return true;
    }
    return false;
  });

/** Fields whose bare strings are our own sentences: a name that is also one of our words is left there. */
const sentenceFields = new Set(['title', 'facts', 'label', 'text', 'reasons', 'dont', 'cautions']);
/** Fields that control the screen and never hold a member's words: a note that says “stir” erases no step. */
const structureFields = new Set(['kind', 'press', 'show', 'step']);
/** A forgotten member's longer file is emptied without a search. */
const longFile = 100_000;
/** Fields that are replaced whole when any of the words is in them. */
const replacedWhole: Readonly<Record<string, string>> = { content: '', line: '/help' };

/** Takes the words out of a stored answer: out of what members wrote, the lines of buttons, files, and data for scripts. */
export const withoutWords = ({ members, names, texts }: ErasedWords): (<T>(value: T) => T) => {
  const ids = new Set<string>(members);
  const whole = new Set(texts);
  const name = nameAsWord(names);
  const named = (text: string) => name !== undefined && text.search(name) >= 0;
  const cut = (text: string) => (name === undefined ? text : text.replace(name, erasedMark));
  const string = (text: string, under: string): string => {
    const stands = (line: string) => {
      // As it is stored, and with its quoted text unescaped.
      const read = [line, line.replace(/\\(["\\])/g, '$1')];
      return named(line) || texts.some((one) => standsIn(read, one));
    };
    if (under === 'content' && members.length > 0 && text.length > longFile) return '';
    const instead = replacedWhole[under];
    if (instead !== undefined) return stands(text) ? instead : text;
    if (whole.has(text)) return erasedMark;
    if (under !== 'typed' || !stands(text)) return cut(text);
    const mended = texts.reduce((rest, one) => rest.replaceAll(one, erasedMark), cut(text));
    return stands(mended) ? erasedMark : mended;
  };
  const walk = (value: unknown, under: string, figures: boolean): unknown => {
    if (typeof value === 'string')
      return structureFields.has(under) || (!figures && sentenceFields.has(under))
        ? value
        : string(value, under);
    if (typeof value !== 'object' || value === null) return value;
    if (Array.isArray(value)) {
      const items: unknown[] = value;
      const fresh = items.map((item) => walk(item, under, figures));
      return fresh.some((item, i) => item !== items[i]) ? fresh : value;
    }
    const theirs = 'member' in value && typeof value.member === 'string' && ids.has(value.member);
    const entries = Object.entries(value);
    const fresh = entries.map(([key, within]): [string, unknown] =>
      theirs && key === 'name'
        ? [key, erasedMark]
        : [key, walk(within, key, figures || key === 'data' || key === 'chart')],
    );
    return fresh.some(([, within], i) => within !== entries[i]?.[1]) ? Object.fromEntries(fresh) : value;
  };
  // Only strings are replaced, so the value keeps its shape.
  return <T>(value: T) => walk(value, '', false) as T;
};
