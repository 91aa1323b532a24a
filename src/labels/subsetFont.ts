import type { Font } from './font.ts';

const weHaveAScale = 0x0008;
const moreComponents = 0x0020;
const xAndYScale = 0x0040;
const twoByTwo = 0x0080;
const wordArguments = 0x0001;

/** The glyphs that a composite glyph is made of. */
const partsOf = (glyph: DataView): number[] => {
  if (glyph.byteLength === 0 || glyph.getInt16(0) >= 0) return [];
  const parts: number[] = [];
  for (let at = 10, more = true; more;) {
    const flags = glyph.getUint16(at);
    parts.push(glyph.getUint16(at + 2));
    at += flags & wordArguments ? 8 : 6;
    at += flags & weHaveAScale ? 2 : flags & xAndYScale ? 4 : flags & twoByTwo ? 8 : 0;
    more = (flags & moreComponents) !== 0;
  }
  return parts;
};

const bytesOf = (view: DataView): Buffer => Buffer.from(view.buffer, view.byteOffset, view.byteLength);

const padded = (bytes: Buffer): Buffer => Buffer.concat([bytes, Buffer.alloc((4 - (bytes.length % 4)) % 4)]);

const checksum = (bytes: Buffer): number => {
  let sum = 0;
  for (let at = 0; at < bytes.length; at += 4) sum = (sum + bytes.readUInt32BE(at)) >>> 0;
  return sum;
};

/** A font file of these tables, in the order of their tags. */
const fontFile = (tables: readonly (readonly [tag: string, bytes: Buffer])[]): Buffer => {
  const head = Buffer.alloc(12 + 16 * tables.length);
  const power = 2 ** Math.floor(Math.log2(tables.length));
  head.writeUInt32BE(0x00010000, 0);
  head.writeUInt16BE(tables.length, 4);
  head.writeUInt16BE(16 * power, 6);
  head.writeUInt16BE(Math.log2(power), 8);
  head.writeUInt16BE(16 * (tables.length - power), 10);
  let at = head.length;
  tables.forEach(([tag, bytes], i) => {
    head.write(tag, 12 + 16 * i, 'latin1');
    head.writeUInt32BE(checksum(padded(bytes)), 16 + 16 * i);
    head.writeUInt32BE(at, 20 + 16 * i);
    head.writeUInt32BE(bytes.length, 24 + 16 * i);
    at += padded(bytes).length;
  });
  return Buffer.concat([head, ...tables.map(([, bytes]) => padded(bytes))]);
};

/** The font with the outlines of these glyphs alone. Glyphs keep their numbers, so that the text needs no mapping. */
export const subsetFont = (font: Font, used: ReadonlySet<number>): Buffer => {
  const loca = font.table('loca');
  const glyf = font.table('glyf');
  if (font.table('head').getInt16(50) !== 1) throw new Error('the font has short offsets of glyphs');
  const outlineOf = (glyph: number): DataView => {
    const from = loca.getUint32(4 * glyph);
    return new DataView(glyf.buffer, glyf.byteOffset + from, loca.getUint32(4 * glyph + 4) - from);
  };
  const wanted = new Set<number>();
  const want = (glyph: number) => {
    if (wanted.has(glyph)) return;
    wanted.add(glyph);
    partsOf(outlineOf(glyph)).forEach(want);
  };
  [0, ...used].forEach(want);
  const outlines: Buffer[] = [];
  const offsets = Buffer.alloc(4 * (font.glyphs + 1));
  let at = 0;
  for (let glyph = 0; glyph < font.glyphs; glyph++) {
    offsets.writeUInt32BE(at, 4 * glyph);
    if (!wanted.has(glyph)) continue;
    const outline = padded(bytesOf(outlineOf(glyph)));
    outlines.push(outline);
    at += outline.length;
  }
  offsets.writeUInt32BE(at, 4 * font.glyphs);
  return fontFile([
    ['glyf', Buffer.concat(outlines)],
    ['head', bytesOf(font.table('head'))],
    ['hhea', bytesOf(font.table('hhea'))],
    ['hmtx', bytesOf(font.table('hmtx'))],
    ['loca', offsets],
    ['maxp', bytesOf(font.table('maxp'))],
    ['prep', bytesOf(font.table('prep'))],
  ]);
};
