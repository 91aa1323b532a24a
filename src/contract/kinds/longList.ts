import type { Action, Asking, More, Option, Reply } from '../contract.ts';
import { text } from './texts.ts';
import { printLine } from '../parseLine.ts';

// Options may come after it.
const { prose: _prose, ...rowName } = text(200, '26');

/** The option by which a list goes on: the row that it begins with. */
export const fromOption: Option<string, false> = {
  kind: { ...rowName, pressed: true },
  needed: false,
  about: (w) => w.desk.from,
};

/**
 * The rows of a list from the one that is asked for on, and the lines that show it from each of them. A row that is gone
 * meanwhile begins the list anew: rather twice than never.
 */
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

/** What shows the rest of a list of which so many rows were shown, all there are unless it is said. */
export const moreAction = (
  { more, ...parts }: Pick<Reply, 'more' | 'facts' | 'reasons'>,
  shown?: number,
): Action[] => {
  if (!more) return [];
  const line = more.from[shown ?? parts[more.of]?.length ?? 0];
  return line === undefined ? [] : [{ label: more.label, line, press: 'run' }];
};
