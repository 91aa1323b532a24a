import {
  optional,
  toRun,
  type Action,
  type Asking,
  type More,
  type Option,
  type Reply,
} from '../contract.ts';
import { text } from './texts.ts';
import { printLine } from '../parseLine.ts';

// Leaves room for options after it.
const { prose: _prose, ...rowName } = text(200, '26');

/** The option for the row at which a list continues. */
export const fromOption: Option<string, false> = optional({ ...rowName, pressed: true }, (w) => w.desk.from);

/** A list's rows from one on, and the line for each; from the first if that one is gone: rather repeated than missed. */
export const longList = <T>(
  all: readonly T[],
  keyOf: (row: T) => string,
  from: string | undefined,
  path: string[],
  { typed, words }: Asking,
): { rows: readonly T[]; more: More } => {
  const at = all.findIndex((row) => keyOf(row) === from);
  const rows = at < 0 ? all : all.slice(at);
  return {
    rows,
    more: {
      of: 'facts',
      label: words.desk.more,
      from: rows.map((row) => printLine(path, { ...typed, from: keyOf(row) })),
    },
  };
};

/** The button that shows the rest of a list after the rows that were shown; by default, after all of them. */
export const moreAction = (
  { more, ...parts }: Pick<Reply, 'more' | 'facts' | 'reasons'>,
  shown?: number,
): Action[] => {
  if (!more) return [];
  const line = more.from[shown ?? parts[more.of]?.length ?? 0];
  return line === undefined ? [] : [toRun(more.label, line)];
};
