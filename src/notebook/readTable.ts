import Papa from 'papaparse';

export const separators = [';', '\t', ','] as const;
export type Separator = (typeof separators)[number];

export interface Row {
  /** The line of the file on which it begins. */
  line: number;
  cells: readonly string[];
}

export interface Table {
  header: readonly string[];
  rows: readonly Row[];
}

export type TableProblem =
  | { kind: 'empty' }
  | { kind: 'long-line'; line: number; most: number }
  | { kind: 'many-columns'; line: number; columns: number; most: number }
  | { kind: 'many-lines'; most: number }
  | { kind: 'open-quote'; line: number };

export type ReadTable = { ok: true; table: Table } | { ok: false; why: TableProblem };

const longestLine = 20_000;
const mostColumns = 200;
const mostLines = 250_000;

/** The separator that stands most often in the first line, outside quotes. */
const separatorOf = (header: string): Separator => {
  const bare = header.replace(/"[^"]*"/g, '');
  const [most] = separators
    .map((separator) => ({ separator, times: bare.split(separator).length }))
    .sort((a, b) => b.times - a.times);
  return most?.separator ?? ',';
};

const lineProblem = (lines: readonly string[]): TableProblem | undefined => {
  if (lines.length > mostLines) return { kind: 'many-lines', most: mostLines };
  const long = lines.findIndex(({ length }) => length > longestLine);
  return long < 0 ? undefined : { kind: 'long-line', line: long + 1, most: longestLine };
};

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === '');

/** Every row with the line on which it begins: a quoted cell may go over several lines. */
const rowsOf = (text: string, separator: Separator): Row[] | TableProblem => {
  const rows: Row[] = [];
  let [line, from] = [1, 0];
  let problem: TableProblem | undefined;
  Papa.parse<string[]>(text, {
    delimiter: separator,
    newline: '\n',
    step: ({ data: cells, errors, meta }, parser) => {
      if (errors.some(({ type }) => type === 'Quotes')) problem = { kind: 'open-quote', line };
      else if (cells.length > mostColumns)
        problem = { kind: 'many-columns', line, columns: cells.length, most: mostColumns };
      if (problem) return parser.abort();
      if (!isBlank(cells)) rows.push({ line, cells });
      line += text.slice(from, meta.cursor).split('\n').length - 1;
      from = meta.cursor;
    },
  });
  return problem ?? rows;
};

/** A table of separated values (RFC 4180), its first line the names of the columns. */
export const readTable = (typed: string, wanted?: Separator): ReadTable => {
  const text = typed.replace(/\r\n?/g, '\n');
  const lines = text.split('\n');
  const problem = lineProblem(lines);
  if (problem) return { ok: false, why: problem };
  // Spreadsheets write the separator into a line before the header.
  const said = /^sep=([;,\t])\n/i.exec(text)?.[1];
  const first = lines.find((line) => line.trim() !== '' && !/^sep=.$/i.test(line)) ?? '';
  const separator = wanted ?? separators.find((one) => one === said) ?? separatorOf(first);
  const rows = rowsOf(said === undefined ? text : text.replace(/^[^\n]*/, ''), separator);
  if (!Array.isArray(rows)) return { ok: false, why: rows };
  const [header, ...rest] = rows;
  if (!header) return { ok: false, why: { kind: 'empty' } };
  return { ok: true, table: { header: header.cells.map((cell) => cell.trim()), rows: rest } };
};
