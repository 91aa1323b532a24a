import { encode } from 'uqr';
import type { Label } from '../contract/labelSheet.ts';
import { windowScale } from '../windowScale.ts';
import type { Pen } from './pdf.ts';
import { lacking, widthOf, wrapped } from './text.ts';

export interface LaidOut {
  height: number;
  draw(pen: Pen, corner: { x: number; y: number }): void;
}

/** Something on a label, below what came before it. */
interface Block {
  height: number;
  draw(pen: Pen, x: number, y: number): void;
}

const pad = 13;
/** A code needs four of its modules blank on each side: ISO/IEC 18004. */
const quiet = 13;
/** A phone reads modules of a millimetre from half a metre away: common practice. */
const codeSize = 92;

const paragraph = (text: string, size: number, width: number, bold = false): Block => {
  const lines = wrapped(text, size, width);
  const leading = size * 1.25;
  return {
    height: lines.length * leading,
    draw: (pen, x, y) =>
      lines.forEach((line, i) => pen.text(line, { x, y: y + size + i * leading, size, bold })),
  };
};

const space = (height: number): Block => ({ height, draw: () => undefined });

const stacked = (blocks: readonly Block[]): Block => ({
  height: blocks.reduce((sum, { height }) => sum + height, 0),
  draw: (pen, x, y) => {
    let below = y;
    for (const block of blocks) {
      block.draw(pen, x, below);
      below += block.height;
    }
  },
});

const indented = (block: Block, by: number, mark: string, size: number): Block => ({
  height: block.height,
  draw: (pen, x, y) => {
    pen.text(mark, { x, y: y + size, size, bold: true });
    block.draw(pen, x + by, y);
  },
});

/** The largest size at which a text takes no more than these lines, from the sizes given. */
const fitting = (text: string, sizes: readonly number[], width: number, lines: number): number =>
  sizes.find((size) => wrapped(text, size, width).length <= lines) ?? sizes.at(-1) ?? 10;

/** The runs of dark modules in a row of the code, each as its start and its end (the end not included). */
const darkRuns = (row: readonly boolean[]): [from: number, to: number][] =>
  row.flatMap((dark, at) => {
    if (!dark || row[at - 1] === true) return [];
    const end = row.indexOf(false, at);
    return [[at, end < 0 ? row.length : end] as [number, number]];
  });

const qrCode = (url: string): Block => {
  const { size, data } = encode(url, { ecc: 'M', border: 0 });
  const module = codeSize / size;
  return {
    height: codeSize,
    draw: (pen, x, y) =>
      pen.boxes(
        data.flatMap((row, r) =>
          darkRuns(row).map(([from, to]) => ({
            x: x + from * module,
            y: y + r * module,
            width: (to - from) * module,
            height: module,
          })),
        ),
        0,
      ),
  };
};

/** The window on the wall’s small scale, its ends named below. */
const scale = (
  { label, low, high, lowText, highText }: NonNullable<Label['window']>,
  width: number,
): Block => {
  const place = windowScale({ low, high });
  return {
    height: 34,
    draw: (pen, x, y) => {
      const from = x + place(low) * width;
      const to = x + place(high) * width;
      pen.boxes([{ x, y: y + 7, width, height: 5 }], 0.75);
      pen.boxes([{ x: from, y: y + 2, width: to - from, height: 15 }], 0.25);
      pen.text(label, { x, y: y + 29, size: 9 });
      for (const [text, at] of [
        [lowText, from],
        [highText, to],
      ] as const)
        pen.text(text, { x: at - widthOf(text, 12) / 2, y: y + 29, size: 12, bold: true });
    },
  };
};

const textsOf = ({ name, nick, seconds, lines, cautions }: Label): string[] =>
  [name, nick, seconds, ...lines, ...cautions].filter((text) => text !== undefined);

/** The characters of a label’s text that are printed as a box. */
export const unprintedIn = (label: Label): string[] => [...new Set(textsOf(label).flatMap(lacking))];

/** The number, as large as its place allows, beside the code or the line to type. */
const headOf = ({ no, lead }: Label, width: number, factor: number): Block => {
  const right = width - codeSize - 8;
  const number = String(no);
  const largest = Math.min(96, (96 * (right - quiet)) / Math.max(1, widthOf(number, 96)));
  const caption = paragraph(lead.caption, 8.5 * factor, codeSize + 8);
  const beside =
    lead.kind === 'code'
      ? stacked([qrCode(lead.url), space(quiet), caption])
      : stacked([
          space(8),
          caption,
          paragraph(lead.line, fitting(lead.line, [15, 13, 11, 9], codeSize + 8, 2), codeSize + 8, true),
        ]);
  return {
    height: Math.max(beside.height, 0.8 * largest),
    draw: (pen, x, y) => {
      pen.text(number, { x, y: y + 0.75 * largest, size: largest, bold: true });
      beside.draw(pen, x + right, y);
    },
  };
};

/** Lays a label out so that all of it is there: it grows in height, and its text shrinks only with `factor`. */
export const layOut = (
  label: Label,
  { width, factor, printed, boxNote }: { width: number; factor: number; printed: string; boxNote: string },
): LaidOut => {
  const inner = width - 2 * pad;
  const { name, nick, window, seconds, lines, cautions, lead } = label;
  const title = nick === undefined ? name : `${name} “${nick}”`;
  const size = fitting(
    title,
    [24, 21, 18, 16, 14].map((one) => one * factor),
    inner,
    2,
  );
  const small = 10 * factor;
  const body = stacked([
    headOf(label, inner, factor),
    space(4),
    paragraph(title, size, inner, true),
    space(5),
    ...(window ? [scale(window, inner), space(3)] : []),
    ...(seconds === undefined ? [] : [paragraph(seconds, 12 * factor, inner, true), space(2)]),
    ...lines.map((line) => paragraph(line, small, inner)),
    ...(cautions.length > 0 ? [space(4)] : []),
    ...cautions.map((text) =>
      stacked([indented(paragraph(text, small, inner - 10), 10, '!', small), space(1.5)]),
    ),
    space(4),
    ...(unprintedIn(label).length > 0 ? [paragraph(boxNote, 7 * factor, inner)] : []),
    paragraph(lead.kind === 'code' ? `${lead.url} · ${printed}` : printed, 7 * factor, inner),
  ]);
  return { height: body.height + 2 * pad, draw: (pen, { x, y }) => body.draw(pen, x + pad, y + pad) };
};
