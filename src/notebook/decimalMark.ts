export const decimalMarks = [',', '.'] as const;
export type DecimalMark = (typeof decimalMarks)[number];

/** One mark before three digits: 1,500 is one and a half, or one and a half thousand. */
const either = /^[1-9]\d{0,2}[.,]\d{3}(?!\d|[.,])/;
const byComma = /^\d+,(?:\d{1,2}|\d{4,})(?!\d)|^0,\d|\.\d{3},\d/;
const byPoint = /^\d+\.(?:\d{1,2}|\d{4,})(?!\d)|^0\.\d|,\d{3}\.\d/;

/** A gravity is never in the thousands, so its mark is the decimal one. */
const ofGravity = (cell: string): DecimalMark | undefined => {
  const mark = /^[12]([.,])\d/.exec(cell)?.[1];
  return decimalMarks.find((one) => one === mark);
};

const markOf = (cell: string): DecimalMark | undefined =>
  byComma.test(cell) ? ',' : byPoint.test(cell) ? '.' : undefined;

/** The decimal mark of a notebook: needed only where a cell could mean two numbers. */
export const decimalMarkOf = (
  cells: readonly string[],
  gravities: readonly string[],
): { needed: false } | { needed: true; mark: DecimalMark } | { needed: true; unclear: string[] } => {
  const unclear = cells.filter((cell) => either.test(cell));
  if (unclear.length === 0) return { needed: false };
  const found = new Set([...cells.map(markOf), ...gravities.map(ofGravity)]);
  found.delete(undefined);
  const [mark, ...others] = found;
  return mark === undefined || others.length > 0
    ? { needed: true, unclear: unclear.slice(0, 3) }
    : { needed: true, mark };
};

/** A cell in which one mark before three digits has only one meaning left. */
export const withDecimalMark = (cell: string, mark: DecimalMark | undefined): string =>
  mark === undefined
    ? cell
    : cell.replace(either, (number) => number.replace(/[.,]/, number.includes(mark) ? '.' : ''));
