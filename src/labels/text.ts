import { labelFont, type Font } from './font.ts';

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
const boxOf = (font: Font): number => font.glyphOf(0x25a1);

/** A text as the font prints it. A flag or a family is one box, not the letters that it is made of. */
export const printed = (text: string): Printed[] => {
  const font = labelFont();
  return [...graphemes.segment(text.normalize('NFC'))].map(({ segment }) => {
    const glyphs = [...segment]
      .filter((char) => !invisible.test(char))
      .map((char) => font.glyphOf(char.codePointAt(0) ?? 0));
    const missing = glyphs.includes(0);
    return { seen: segment, glyphs: missing ? [boxOf(font)] : glyphs, missing };
  });
};

/** How wide a text is, in points. */
export const widthOf = (text: string, size: number): number => {
  const font = labelFont();
  const units = printed(text)
    .flatMap(({ glyphs }) => glyphs)
    .reduce((sum, glyph) => sum + font.advanceOf(glyph), 0);
  return (units / font.unitsPerEm) * size;
};

/** Lines no wider than that, broken between words; a word that is wider alone is broken within. */
export const wrapped = (text: string, size: number, width: number): string[] => {
  const lines: string[] = [];
  let line = '';
  const end = () => {
    if (line !== '') lines.push(line);
    line = '';
  };
  for (const word of text.split(/\s+/).filter((one) => one !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (widthOf(longer, size) <= width) {
      line = longer;
      continue;
    }
    end();
    for (const { seen } of printed(word)) {
      if (line !== '' && widthOf(line + seen, size) > width) end();
      line += seen;
    }
  }
  end();
  return lines;
};

/** The characters of a text that the font lacks, each once. */
export const lacking = (text: string): string[] => [
  ...new Set(printed(text).flatMap(({ seen, missing }) => (missing ? [seen] : []))),
];
