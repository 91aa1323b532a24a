import { withoutControls } from '../../contract/plainText.ts';

export type CsvCell = string | number | boolean | undefined;

/** Characters that make a spreadsheet treat a cell as a formula. */
const formula = /^ *[=+\-@\t\r\n＝＋－＠]/;

const cell = (value: CsvCell): string => {
  if (value === undefined) return '';
  if (typeof value !== 'string') return String(value);
  // Tabs and line ends are text. Other control characters could act on the program that opens the table.
  const harmless = value.replace(/[^\t\r\n]+/g, withoutControls);
  const text = formula.test(harmless) ? `'${harmless}` : harmless;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

/** A row in RFC 4180 format. Typed text that a spreadsheet would run as a formula is prefixed with '. */
export const csvLine = (cells: readonly CsvCell[]): string => `${cells.map(cell).join(',')}\r\n`;
