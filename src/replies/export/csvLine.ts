export type CsvCell = string | number | boolean | undefined;

/** Begins what a spreadsheet would take for a formula and carry out. */
const formula = /^[=+\-@\t\r\n＝＋－＠]/;

const cell = (value: CsvCell): string => {
  if (value === undefined) return '';
  if (typeof value !== 'string') return String(value);
  const text = formula.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

/** A row by RFC 4180. Typed text that a spreadsheet would carry out as a formula gets a ' before it. */
export const csvLine = (cells: readonly CsvCell[]): string => `${cells.map(cell).join(',')}\r\n`;
