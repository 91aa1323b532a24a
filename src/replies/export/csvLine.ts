import { withoutControls } from '../../contract/plainText.ts';

export type CsvCell = string | number | boolean | undefined;

/** Characters that make a spreadsheet treat a cell as a formula. */
const formula = /^ *[=+\-@\t\r\n＝＋－＠]/;

const cell = (value: CsvCell): string => {
  if (value === undefined) return '';
  if (typeof value !== 'string') return String(value);
  // Tabs and lines' ends are text; nothing else may act on whatever the table is opened in.
  const harmless = value.replace(/[^\t\r\n]+/g, withoutControls);
  const text = formula.test(harmless) ? `'${harmless}` : harmless;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

/** A row in RFC 4180 format. Typed text that a spreadsheet would run as a formula is prefixed with '. */
export const csvLine = (cells: readonly CsvCell[]): string => `${cells.map(cell).join(',')}\r\n`;
