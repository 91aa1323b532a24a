import { addedMeanings, numberMeanings, type Column, type Meaning } from './meanings.ts';
import { withDecimalMark, type DecimalMark } from './decimalMark.ts';
import type { Row } from './readTable.ts';

/** One line of the notebook, by what its columns mean. */
export type Line = ReadonlyMap<Meaning, string>;

/** A command and its options, as a member would type them. */
export interface LineCommand {
  path: [string];
  typed: Record<string, string>;
}

const nothingNoted = /^(?:[-–—.]|n\/?a)?$/i;
const ticked = /^[x✓✔☑]$/i;

const withUnit = (cell: string, unit: string | undefined): string =>
  unit !== undefined && /\d$/.test(cell) ? `${cell} ${unit}` : cell;

/** What a row's cells say. Several columns of notes are one note. */
export const lineOf = ({ cells }: Row, columns: readonly Column[], mark: DecimalMark | undefined): Line => {
  const line = new Map<Meaning, string>();
  for (const { index, meaning, unit } of columns) {
    const cell = (cells[index] ?? '').trim();
    if (meaning === 'ignore' || nothingNoted.test(cell)) continue;
    if (meaning === 'note') line.set('note', [line.get('note') ?? '', cell].join('\n').trim());
    else
      line.set(
        meaning,
        numberMeanings.includes(meaning) ? withUnit(withDecimalMark(cell, mark), unit) : cell,
      );
  }
  return line;
};

const optionsOf = (line: Line, names: readonly Meaning[]): Record<string, string> =>
  Object.fromEntries(names.flatMap((name) => (line.has(name) ? [[name, line.get(name) ?? '']] : [])));

const measured = ['weight', 'gravity', 'seconds', 'look', 'gap', 'temperature', 'seen'] as const;
const readingOptions = [...measured, 'scale', 'vessel', 'cup'] as const;

const yes = (typed: string): string => (ticked.test(typed) ? 'yes' : typed);
const isNo = (typed: string | undefined): boolean =>
  typed === undefined || /^(?:n|no|nein|non|0|false)$/i.test(typed);

/** The commands that a member would have typed for a line, in the order in which it was done: measured, added, stirred. */
export const lineCommands = (line: Line): LineCommand[] => {
  const commands: LineCommand[] = [];
  const stirred = line.get('stirred');
  const [isRead, isStirred] = [
    measured.some((name) => line.has(name)),
    !isNo(stirred) || line.has('minutes'),
  ];
  if (isRead)
    commands.push({
      path: ['reading'],
      typed: { ...optionsOf(line, readingOptions), ...(stirred !== undefined && { stirred: yes(stirred) }) },
    });
  for (const what of addedMeanings) {
    const amount = line.get(what);
    if (amount !== undefined) commands.push({ path: ['added'], typed: { what, amount } });
  }
  if (line.has('what')) commands.push({ path: ['added'], typed: optionsOf(line, ['what', 'amount']) });
  if (isStirred && !isRead) commands.push({ path: ['stirred'], typed: optionsOf(line, ['minutes']) });
  if (!isNo(line.get('sieved')) || line.has('mesh'))
    commands.push({ path: ['sieved'], typed: optionsOf(line, ['mesh']) });
  const note = line.get('note');
  const [first] = commands;
  if (note === undefined) return commands;
  if (!first) return [{ path: ['reading'], typed: { note } }];
  first.typed['note'] = note;
  return commands;
};
