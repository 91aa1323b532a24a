import { definedOnly } from '../definedOnly.ts';
import { nameKey } from '../text/normalizedName.ts';
import { decimalMarkOf, type DecimalMark } from './decimalMark.ts';
import {
  addedMeanings,
  guessMeaning,
  numberMeanings,
  readMeaning,
  type Column,
  type Meaning,
} from './meanings.ts';
import { isDate, orderOf, type DayOrder } from './readDay.ts';
import type { Table } from './readTable.ts';

/** How a notebook is to be understood, as far as somebody has said. */
export interface NotebookSaid {
  /** What columns mean, by their names or their places from 1. */
  columns: ReadonlyMap<string, string>;
  dates?: DayOrder;
  decimal?: DecimalMark;
  /** All lines are about this bucket. */
  bucket?: string;
}

export interface NotebookSettings {
  columns: readonly Column[];
  order: DayOrder;
  decimal?: DecimalMark;
}

/** What only somebody who knows the notebook can tell. */
export type Question =
  | { kind: 'meaning'; column: string; samples: string[] }
  | { kind: 'unit'; column: string; meaning: Meaning; samples: string[] }
  | { kind: 'dates'; samples: string[] }
  | { kind: 'decimal'; samples: string[] };

/** What is wrong with what was said of the columns. */
export type ColumnsProblem =
  | { kind: 'no-header'; header: readonly string[] }
  | { kind: 'no-column'; column: string; header: readonly string[] }
  | { kind: 'no-meaning'; column: string; typed: string }
  | { kind: 'twice'; meaning: Meaning; columns: [string, string] }
  | { kind: 'none-means'; meaning: 'date' | 'bucket'; header: readonly string[] };

export type SettingsFound =
  | { ok: true; settings: NotebookSettings }
  | { ok: false; questions: Question[] }
  | { ok: false; problem: ColumnsProblem };

/** `Date=date, "Water, total"=water ml` as columns and meanings; undefined for what is not of that form. */
export const readColumnsSaid = (typed: string): Map<string, string> | undefined => {
  const parts = typed.match(/(?:"[^"]*"|[^,"])+/g) ?? [];
  const pairs = parts.map((part): [string, string] => {
    const plain = part.replaceAll('"', '');
    const at = plain.lastIndexOf('=');
    return [plain.slice(0, Math.max(0, at)).trim(), plain.slice(at + 1).trim()];
  });
  return pairs.every(([column, meaning]) => column !== '' && meaning !== '') ? new Map(pairs) : undefined;
};

interface Named {
  index: number;
  name: string;
  cells: string[];
}

/** The columns that hold anything; one without a name goes by its place. */
const namedColumns = ({ header, rows }: Table): Named[] =>
  header.flatMap((typed, index) => {
    const cells = rows.flatMap(({ cells: all }) => (all[index]?.trim() ? [all[index].trim()] : []));
    return cells.length === 0 ? [] : [{ index, name: typed === '' ? String(index + 1) : typed, cells }];
  });

const samplesOf = (cells: readonly string[]): string[] =>
  [...new Set(cells)].slice(0, 3).map((cell) => cell.slice(0, 40));

const unknownColumn = (
  columns: ReadonlyMap<string, string>,
  { header }: Table,
): ColumnsProblem | undefined => {
  const known = new Set(header.flatMap((name, i) => [nameKey(name), String(i + 1)]));
  const column = [...columns.keys()].find((name) => !known.has(nameKey(name)) && !header.includes(name));
  return column === undefined ? undefined : { kind: 'no-column', column, header };
};

const twice = (columns: readonly Column[]): ColumnsProblem | undefined => {
  const single = columns.filter(({ meaning }) => meaning !== 'note' && meaning !== 'ignore');
  for (const [i, { meaning, header }] of single.entries()) {
    const other = single.slice(i + 1).find((one) => one.meaning === meaning);
    if (other) return { kind: 'twice', meaning, columns: [header, other.header] };
  }
  return undefined;
};

/** Settles how a notebook is to be understood: from what was said, from the columns' names and from the cells. */
export const settleNotebook = (table: Table, said: NotebookSaid): SettingsFound => {
  // Without names of columns, the first line would be lost.
  if (table.header.some(isDate)) return { ok: false, problem: { kind: 'no-header', header: table.header } };
  const wrong = unknownColumn(said.columns, table);
  if (wrong) return { ok: false, problem: wrong };
  const saidOf = ({ index, name }: Named) =>
    [...said.columns].find(
      ([column]) => column === name || nameKey(column) === nameKey(name) || column === String(index + 1),
    )?.[1];
  const questions: Question[] = [];
  const columns: Column[] = [];
  const cellsOf = new Map<Column, string[]>();
  for (const named of namedColumns(table)) {
    const { index, name, cells } = named;
    const typed = saidOf(named);
    const found = typed === undefined ? guessMeaning(name) : readMeaning(typed);
    if (!found && typed !== undefined)
      return { ok: false, problem: { kind: 'no-meaning', column: name, typed } };
    if (!found) questions.push({ kind: 'meaning', column: name, samples: samplesOf(cells) });
    else {
      const fromName = found.unit ?? guessMeaning(name)?.unit;
      const unit = numberMeanings.includes(found.meaning) ? fromName : undefined;
      const column = { index, header: name, meaning: found.meaning, ...definedOnly({ unit }) };
      columns.push(column);
      cellsOf.set(column, cells);
      const bare = cells.filter((cell) => /^[\d.,\s/]*\d$/.test(cell));
      const isAdded = addedMeanings.some((meaning) => meaning === found.meaning);
      if (isAdded && unit === undefined && bare.length > 0)
        questions.push({ kind: 'unit', column: name, meaning: found.meaning, samples: samplesOf(bare) });
    }
  }
  const problem = twice(columns);
  if (problem) return { ok: false, problem };
  const cellsMeaning = (...some: readonly Meaning[]): string[] =>
    columns.flatMap((column) => (some.includes(column.meaning) ? (cellsOf.get(column) ?? []) : []));

  const dates = cellsMeaning('date');
  const orders = new Set(dates.map(orderOf));
  const sure = (['d/m/y', 'm/d/y'] as const).filter((order) => orders.has(order));
  const [only] = sure;
  if (said.dates === undefined && (sure.length > 1 || (!only && orders.has('either'))))
    questions.push({
      kind: 'dates',
      samples: (['d/m/y', 'm/d/y', 'either'] as const).flatMap((order) =>
        samplesOf(dates.filter((cell) => orderOf(cell) === order)).slice(0, 2),
      ),
    });

  const figures = cellsMeaning(...numberMeanings.filter((meaning) => meaning !== 'gravity'));
  const mark = decimalMarkOf(figures, cellsMeaning('gravity'));
  const found = mark.needed && 'mark' in mark ? mark.mark : undefined;
  if (said.decimal === undefined && mark.needed && 'unclear' in mark)
    questions.push({ kind: 'decimal', samples: mark.unclear });

  if (questions.length > 0) return { ok: false, questions };
  const means = (meaning: Meaning) => columns.some((column) => column.meaning === meaning);
  const hasBucket = means('bucket') || said.bucket !== undefined;
  if (!means('date') || !hasBucket) {
    const meaning = means('date') ? 'bucket' : 'date';
    return { ok: false, problem: { kind: 'none-means', meaning, header: table.header } };
  }
  const order = said.dates ?? only ?? 'd/m/y';
  return { ok: true, settings: { columns, order, ...definedOnly({ decimal: said.decimal ?? found }) } };
};
