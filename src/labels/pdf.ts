import { deflateSync } from 'node:zlib';
import { labelFont } from './font.ts';
import { subsetFont } from './subsetFont.ts';
import { printed } from './text.ts';

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Draws on a page; points from its top left corner, a text at its baseline. */
export interface Pen {
  text(text: string, at: { x: number; y: number; size: number; bold?: boolean }): void;
  /** Boxes filled in one go, so that no seams show where they touch. */
  boxes(all: readonly Box[], grey: number): void;
  /** A dotted line to cut along. */
  cutLine(around: Box): void;
}

/** Numbers as PDF writes them: no exponents, no more digits than a printer shows. */
const n = (value: number): string => String(Math.round(value * 100) / 100);

const utf16 = (text: string): string => Buffer.from(`\uFEFF${text}`, 'utf16le').swap16().toString('hex');

const hex = (glyph: number): string => glyph.toString(16).padStart(4, '0');

/** Binary data in hexadecimal digits, so that the file is plain text on every platform. */
const stream = (bytes: Buffer, more = ''): string => {
  const data = `${deflateSync(bytes).toString('hex')}>`;
  return `<< /Length ${data.length} /Filter [/ASCIIHexDecode /FlateDecode]${more} >>\nstream\n${data}\nendstream`;
};

/** Which character each glyph stands for, so that text can be copied and searched. */
const toUnicode = (characters: ReadonlyMap<number, string>): string => {
  const rows = [...characters].map(([glyph, seen]) => `<${hex(glyph)}> <${utf16(seen).slice(4)}>`);
  const blocks = Array.from({ length: Math.ceil(rows.length / 100) }, (_, i) => {
    const some = rows.slice(100 * i, 100 * i + 100);
    return `${some.length} beginbfchar\n${some.join('\n')}\nendbfchar`;
  });
  return `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <FFFF>
endcodespacerange
${blocks.join('\n')}
endcmap
CMapName currentdict /CMap defineresource pop
end
end`;
};

/** A PDF (ISO 32000) of pages drawn with lines, boxes and text in one embedded font. */
export class Pdf {
  readonly #pages: string[] = [];
  readonly #characters = new Map<number, string>([[0, '\uFFFD']]);
  readonly #size: { width: number; height: number };

  constructor(size: { width: number; height: number }) {
    this.#size = size;
  }

  page(draw: (pen: Pen) => void): void {
    const { height: top } = this.#size;
    const ops: string[] = [];
    const area = ({ x, y, width, height }: Box) =>
      `${n(x)} ${n(top - y - height)} ${n(width)} ${n(height)} re`;
    draw({
      text: (text, { x, y, size, bold = false }) => {
        const glyphs = printed(text).flatMap(({ seen, glyphs: all, missing }) => {
          all.forEach((glyph, i) => this.#characters.set(glyph, missing ? '□' : i === 0 ? seen : ''));
          return all;
        });
        // The character behind a box can still be copied and read aloud.
        ops.push(
          `/Span << /ActualText <${utf16(text)}> >> BDC`,
          `BT /F ${n(size)} Tf ${bold ? `2 Tr ${n(size / 40)} w` : '0 Tr'} ${n(x)} ${n(top - y)} Td <${glyphs.map(hex).join('')}> Tj ET`,
          'EMC',
        );
      },
      boxes: (all, grey) => ops.push(`${n(grey)} g ${all.map(area).join(' ')} f 0 g`),
      cutLine: (around) => ops.push(`q 0.5 w 0.6 G [2 3] 0 d ${area(around)} S Q`),
    });
    this.#pages.push(ops.join('\n'));
  }

  toString({ title, lang }: { title: string; lang: string }): string {
    const font = labelFont();
    const thousandths = (units: number) => n((1000 * units) / font.unitsPerEm);
    const head = font.table('head');
    const hhea = font.table('hhea');
    const box = [36, 38, 40, 42].map((at) => thousandths(head.getInt16(at))).join(' ');
    const used = [...this.#characters.keys()].sort((a, b) => a - b);
    const file = subsetFont(font, new Set(used));
    const name = '/LABELS+Inter-Regular';
    const firstPage = 9;
    const pageNo = (i: number) => firstPage + 2 * i;
    const objects = [
      `<< /Type /Catalog /Pages 2 0 R /Lang (${lang}) /ViewerPreferences << /PrintScaling /None >> >>`,
      `<< /Type /Pages /Count ${this.#pages.length} /Kids [${this.#pages.map((_, i) => `${pageNo(i)} 0 R`).join(' ')}] >>`,
      `<< /Title <${utf16(title)}> >>`,
      `<< /Type /Font /Subtype /Type0 /BaseFont ${name} /Encoding /Identity-H /DescendantFonts [5 0 R] /ToUnicode 8 0 R >>`,
      `<< /Type /Font /Subtype /CIDFontType2 /BaseFont ${name} /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> /FontDescriptor 6 0 R /CIDToGIDMap /Identity /DW 1000 /W [${used.map((glyph) => `${glyph} [${thousandths(font.advanceOf(glyph))}]`).join(' ')}] >>`,
      `<< /Type /FontDescriptor /FontName ${name} /Flags 4 /FontBBox [${box}] /ItalicAngle 0 /Ascent ${thousandths(hhea.getInt16(4))} /Descent ${thousandths(hhea.getInt16(6))} /CapHeight 728 /StemV 80 /FontFile2 7 0 R >>`,
      stream(file, ` /Length1 ${file.length}`),
      stream(Buffer.from(toUnicode(this.#characters))),
      ...this.#pages.flatMap((ops, i) => [
        `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 ${n(this.#size.width)} ${n(this.#size.height)}] /Resources << /Font << /F 4 0 R >> >> /Contents ${pageNo(i) + 1} 0 R >>`,
        stream(Buffer.from(ops, 'latin1')),
      ]),
    ];
    let text = '%PDF-1.7\n';
    const offsets = objects.map((object, i) => {
      const at = text.length;
      text += `${i + 1} 0 obj\n${object}\nendobj\n`;
      return at;
    });
    const table = offsets.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('');
    return `${text}xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${table}trailer\n<< /Size ${objects.length + 1} /Root 1 0 R /Info 3 0 R >>\nstartxref\n${text.length}\n%%EOF\n`;
  }
}
