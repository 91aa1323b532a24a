import { labelFont } from './font.ts';

/** What is printed for one character that a reader sees: its glyphs, or a box where the font lacks it. */
interface Printed {
  seen: string;
  glyphs: readonly number[];
  missing: boolean;
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Joiners and selectors of emoji, which show nothing alone. */
const invisible = /\p{Default_Ignorable_Code_Point}/u;

/** The empty box that stands for what the font lacks: its own sign for that is hard to read small. */
const emptyBox = 0x25a1;

/** Plain letters need no search for what belongs together. */
const seenIn = (text: string): string[] =>
  /^[\x20-\x7e]*$/.test(text) ? [...text] : [...graphemes.segment(text)].map(({ segment }) => segment);

/** A text as the font prints it. A flag or a family is one box, not the letters that it is made of. */
export const printed = (text: string): Printed[] => {
  const font = labelFont();
  return seenIn(text.normalize('NFC')).map((segment) => {
    const glyphs = [...segment]
      .filter((char) => !invisible.test(char))
      .map((char) => font.glyphOf(char.codePointAt(0) ?? 0));
    const missing = glyphs.includes(0);
    return { seen: segment, glyphs: missing ? [font.glyphOf(emptyBox)] : glyphs, missing };
  });
};

const emsOf = (text: string): number => {
  const font = labelFont();
  const units = printed(text)
    .flatMap(({ glyphs }) => glyphs)
    .reduce((sum, glyph) => sum + font.advanceOf(glyph), 0);
  return units / font.unitsPerEm;
};

export const widthOf = (text: string, size: number): number => emsOf(text) * size;

/** Lines no wider than that, broken between words; a word that is too wide for a line is broken. */
export const wrapped = (text: string, size: number, width: number): string[] => {
  const most = width / size;
  const blank = emsOf(' ');
  const lines: string[] = [];
  let line = '';
  let ems = 0;
  const add = (more: string, wide: number) => {
    line += more;
    ems += wide;
  };
  const end = () => {
    if (line !== '') lines.push(line);
    line = '';
    ems = 0;
  };
  for (const word of text.split(/\s+/).filter((one) => one !== '')) {
    const wide = emsOf(word);
    if (line !== '' && ems + blank + wide <= most) {
      add(` ${word}`, blank + wide);
      continue;
    }
    end();
    if (wide <= most) add(word, wide);
    else
      for (const { seen } of printed(word)) {
        const letter = emsOf(seen);
        if (line !== '' && ems + letter > most) end();
        add(seen, letter);
      }
  }
  end();
  return lines;
};

/** The characters of a text that the font lacks, each once. */
export const lacking = (text: string): string[] => [
  ...new Set(printed(text).flatMap(({ seen, missing }) => (missing ? [seen] : []))),
];
