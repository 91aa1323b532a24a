import { asciiText } from '../readNumeral.ts';

/** Stands where something was taken out: nothing reads across it. */
const gap = '\u0001';

/** What chat programs put around words: emphasis, quotes, code, mentions, channels, stamps, pictures and addresses. */
const markup = [
  /<\/?[a-z][^<>]{0,60}>/gi,
  /<(?:@[!&]?|#|a?:\w+:|t:)[^>\s]{0,40}>/g,
  /https?:\/\/\S+/g,
  /[*_~`|>\\]+/g,
];

/** One line of plain characters, without markup and control characters. */
export const plainLine = (typed: string): string =>
  asciiText(
    [...markup, /[\p{Cc}\p{Cf}\u2028\u2029]+/gu].reduce((text, mark) => text.replace(mark, ' '), typed),
  );

const household =
  '(?=(?:cups?|litres?|liters?|pints?|quarts?|gallons?|kilos?|teaspoons?|tablespoons?|tsps?|tbsps?)\\b)';
const figures: readonly (readonly [RegExp, string])[] = [
  [/[?!]+\s*$/, ''],
  [/\b(?:water or stir|stir or water)\b/i, ' '],
  [new RegExp(`\\b(?:an? )?half (?:of )?(?:an? )?${household}`, 'i'), '1/2 '],
  [new RegExp(`\\b(?:an? )?quarter (?:of )?(?:an? )?${household}`, 'i'), '1/4 '],
  [new RegExp(`\\b(?:an?|one) ${household}`, 'i'), '1 '],
  [new RegExp(`\\btwo ${household}`, 'i'), '2 '],
  [new RegExp(`\\bthree ${household}`, 'i'), '3 '],
];

/** `half a cup` as `1/2 cup`, and without what asks or shouts. */
export const inFigures = (line: string): string =>
  figures.reduce((text, [words, digits]) => text.replace(words, digits), line);

/** A line from which what is understood is taken out piece by piece, so that what is left was not understood. */
export class PlainText {
  #left: string;

  constructor(text: string) {
    this.#left = ` ${text} `;
  }

  get left(): string {
    return this.#left;
  }

  /** Takes the first match out. The pattern must not match across what was taken before. */
  take(pattern: RegExp): RegExpExecArray | undefined {
    const found = pattern.exec(this.#left);
    if (!found || found[0].includes(gap)) return undefined;
    this.cut(found.index, found.index + found[0].length);
    return found;
  }

  cut(from: number, to: number): void {
    this.#left = `${this.#left.slice(0, from)} ${gap} ${this.#left.slice(to)}`;
  }

  /** The words that are left, with their places. */
  words(): { word: string; from: number; to: number }[] {
    return Array.from(this.#left.matchAll(/[^\s\u0001]+/g), ({ 0: word, index }) => ({
      word,
      from: index,
      to: index + word.length,
    }));
  }

  /** What is left, in the runs in which it was typed. */
  runs(): string[] {
    return this.#left
      .split(gap)
      .map((run) => run.replace(/\s+/g, ' ').trim())
      .filter((run) => run !== '');
  }
}
