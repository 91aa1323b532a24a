import type { MemberId } from './ids.ts';

/** Somebody's names and words that are to be found nowhere any more. */
export interface ErasedWords {
  members: readonly MemberId[];
  names: readonly string[];
  /** Notes and labels, whole. */
  texts: readonly string[];
}

/** Stands where somebody's words were. */
export const erasedMark = '…';

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** A name where it stands as a word of its own; undefined when there is none to look for. */
export const nameAsWord = (names: readonly string[]): RegExp | undefined => {
  const wanted = names.map((name) => name.trim()).filter((name) => /[\p{L}\p{N}]/u.test(name));
  if (wanted.length === 0) return undefined;
  const any = wanted
    .sort((a, b) => b.length - a.length)
    .map(escaped)
    .join('|');
  return new RegExp(`(?<![\\p{L}\\p{N}])(?:${any})(?![\\p{L}\\p{N}])`, 'giu');
};

/** Where bare strings are our own sentences: a name that happens to be a word of ours does not blot it out. */
const sentences = new Set(['title', 'facts', 'label', 'text', 'reasons', 'dont', 'cautions']);
/** Too large, or too entwined, to be mended. */
const dropped: Readonly<Record<string, string>> = { content: '', line: '/help' };

/**
 * Takes the words out of whatever was stored of an answer: parts that are a member's words, the line of a button, a
 * file, figures for scripts. A value in which none of them is comes back as it was.
 */
export const withoutWords = ({ members, names, texts }: ErasedWords): (<T>(value: T) => T) => {
  const ids = new Set<string>(members);
  const whole = new Set(texts);
  const name = nameAsWord(names);
  const named = (text: string) => name !== undefined && text.search(name) >= 0;
  const string = (text: string, under: string): string => {
    const instead = dropped[under];
    if (instead !== undefined) return named(text) || texts.some((one) => text.includes(one)) ? instead : text;
    if (whole.has(text)) return erasedMark;
    return name === undefined ? text : text.replace(name, erasedMark);
  };
  const walk = (value: unknown, under: string, figures: boolean): unknown => {
    if (typeof value === 'string') return !figures && sentences.has(under) ? value : string(value, under);
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
  // What comes out has the shape of what went in: only strings are exchanged.
  return <T>(value: T) => walk(value, '', false) as T;
};
