import { setImmediate } from 'node:timers/promises';
import { papers, type LabelSheet, type PrintedLabels } from '../contract/labelSheet.ts';
import { layOut, unprintedIn, type LaidOut } from './drawLabel.ts';
import { Pdf } from './pdf.ts';
import { wrapped } from './text.ts';

/** Wider than what printers leave blank. */
const margin = 30;
const footSize = 8;
/** A short label still has room for fingers and tape. */
const shortest = 190;

interface Placed {
  laid: LaidOut;
  width: number;
}

/** The smallest change that lets a label fit on a page: as it is, then across the page, then in smaller letters. */
const place = (
  label: LabelSheet['labels'][number],
  { printed, boxNote }: LabelSheet,
  page: { width: number; height: number },
): Placed => {
  const half = page.width / 2;
  const tries = [
    { width: half, factor: 1 },
    { width: page.width, factor: 1 },
    ...[0.85, 0.7, 0.6, 0.5].map((factor) => ({ width: page.width, factor })),
  ];
  for (const { width, factor } of tries) {
    const laid = layOut(label, { width, factor, printed, boxNote });
    if (laid.height <= page.height) return { laid, width };
  }
  throw new Error(`the label of bucket ${label.no} does not fit on a page`);
};

const rowsOf = (all: readonly Placed[], width: number): Placed[][] => {
  const rows: Placed[][] = [];
  for (const one of all) {
    const last = rows.at(-1);
    const first = last?.[0];
    if (last?.length === 1 && first && first.width + one.width <= width + 0.01) last.push(one);
    else rows.push([one]);
  }
  return rows;
};

/** Labels for buckets, to print, cut out and fix to their lids. */
export const labelsPdf = async (sheet: LabelSheet): Promise<PrintedLabels> => {
  const paper = papers[sheet.paper];
  const inner = { width: paper.width - 2 * margin };
  const foot = wrapped(sheet.foot, footSize, inner.width);
  const page = { ...inner, height: paper.height - 2 * margin - foot.length * footSize * 1.25 - 6 };
  const placed: Placed[] = [];
  for (const label of sheet.labels) {
    placed.push(place(label, sheet, page));
    // A long sheet takes a second: whoever else asks something is answered in between.
    await setImmediate();
  }
  const rows = rowsOf(placed, page.width);
  const pages: { row: Placed[]; y: number; height: number }[][] = [];
  let below = Number.POSITIVE_INFINITY;
  for (const row of rows) {
    const height = Math.min(page.height, Math.max(shortest, ...row.map(({ laid }) => laid.height)));
    if (below + height > page.height) {
      pages.push([]);
      below = 0;
    }
    pages.at(-1)?.push({ row, y: margin + below, height });
    below += height;
  }
  const pdf = new Pdf(paper);
  for (const some of pages) {
    await setImmediate();
    pdf.page((pen) => {
      for (const { row, y, height } of some) {
        let x = margin;
        for (const { laid, width } of row) {
          pen.cutLine({ x, y, width, height });
          laid.draw(pen, { x, y });
          x += width;
        }
      }
      foot.forEach((line, i) =>
        pen.text(line, {
          x: margin,
          y: paper.height - margin - (foot.length - 1 - i) * footSize * 1.25,
          size: footSize,
        }),
      );
    });
  }
  return {
    file: {
      name: `labels-${sheet.paper}.pdf`,
      type: 'application/pdf',
      content: pdf.toString({ title: sheet.title, lang: 'en' }),
    },
    pages: pages.length,
    unprinted: sheet.labels
      .map((label) => ({ no: label.no, characters: unprintedIn(label) }))
      .filter(({ characters }) => characters.length > 0),
  };
};
