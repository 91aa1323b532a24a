import { visible } from '../../contract/plainText.ts';

export type CsvCell = string | number | boolean | undefined;

/** Begins what a spreadsheet would take for a formula and carry out. */
const formula = /^ *[=+\-@\t\r\n＝＋－＠]/;

const cell = (value: CsvCell): string => {
  if (value === undefined) return '';
  if (typeof value !== 'string') return String(value);
  // Tabs and lines' ends are text; nothing else may act on whatever the table is opened in.
  const harmless = value.replace(/[^\t\r\n]+/g, visible);
  const text = formula.test(harmless) ? `'${harmless}` : harmless;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

/** A row by RFC 4180. Typed text that a spreadsheet would carry out as a formula gets a ' before it. */
export const csvLine = (cells: readonly CsvCell[]): string => `${cells.map(cell).join(',')}\r\n`;
