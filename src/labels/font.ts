import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export type Font = ReturnType<typeof readFont>;

const tagAt = (view: DataView, at: number): string =>
  String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));

const tablesOf = (view: DataView): Map<string, DataView> => {
  const tables = new Map<string, DataView>();
  for (let i = 0; i < view.getUint16(4); i++) {
    const at = 12 + 16 * i;
    const from = view.byteOffset + view.getUint32(at + 8);
    tables.set(tagAt(view, at), new DataView(view.buffer, from, view.getUint32(at + 12)));
  }
  return tables;
};

/** Ranges of characters with consecutive glyphs: a `cmap` subtable of format 12. */
const rangesOf = (cmap: DataView): { from: number; to: number; glyph: number }[] => {
  for (let i = 0; i < cmap.getUint16(2); i++) {
    const at = cmap.getUint32(4 + 8 * i + 4);
    if (cmap.getUint16(at) !== 12) continue;
    return Array.from({ length: cmap.getUint32(at + 12) }, (_, n) => {
      const group = at + 16 + 12 * n;
      return {
        from: cmap.getUint32(group),
        to: cmap.getUint32(group + 4),
        glyph: cmap.getUint32(group + 8),
      };
    });
  }
  throw new Error('the font has no cmap of format 12');
};

/** The tables of a TrueType font, as the OpenType specification lays them out (ISO/IEC 14496-22). */
const readFont = (bytes: Buffer) => {
  const tables = tablesOf(new DataView(bytes.buffer, bytes.byteOffset, bytes.length));
  const table = (tag: string): DataView => {
    const view = tables.get(tag);
    if (!view) throw new Error(`the font has no table ${tag}`);
    return view;
  };
  const ranges = rangesOf(table('cmap'));
  const found = new Map<number, number>();
  const hmtx = table('hmtx');
  const measured = table('hhea').getUint16(34);
  return {
    table,
    /** Its glyph for a character; 0, a box, if it has none. */
    glyphOf: (codePoint: number): number => {
      const known = found.get(codePoint);
      if (known !== undefined) return known;
      const range = ranges.find(({ from, to }) => from <= codePoint && codePoint <= to);
      const glyph = range ? range.glyph + codePoint - range.from : 0;
      // Few characters are ever printed, and the font has thousands of ranges.
      if (glyph !== 0) found.set(codePoint, glyph);
      return glyph;
    },
    /** A glyph's width, in units of the em. */
    advanceOf: (glyph: number): number => hmtx.getUint16(4 * Math.min(glyph, measured - 1)),
    unitsPerEm: table('head').getUint16(18),
    glyphs: table('maxp').getUint16(4),
  };
};

let kept: Font | undefined;

/** The font that the program brings for its charts: a printer's own letters lack most scripts. */
export const labelFont = (): Font =>
  (kept ??= readFont(readFileSync(fileURLToPath(import.meta.resolve('#chart/Inter_400Regular.ttf')))));
