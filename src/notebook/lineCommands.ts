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

/** A tick, or a yes or no in a few languages; as it stands, when it is neither. */
const ticked = (cell: string | undefined): 'yes' | 'no' | { neither: string } | undefined => {
  if (cell === undefined) return undefined;
  if (/^(?:[x✓✔☑1]|y|yes|yep|yeah|true|on|si|sí|ja|oui)$/i.test(cell)) return 'yes';
  return /^(?:n|no|nope|false|off|0|nein|non)$/i.test(cell) ? 'no' : { neither: cell };
};

/** A word that should have been yes or no. */
export type NotTicked = { kind: 'yes-or-no'; typed: string };

/** The commands that a member would have typed for a line, in the order in which it was done. */
export const lineCommands = (line: Line): LineCommand[] | NotTicked => {
  const [stirred, sieved] = [ticked(line.get('stirred')), ticked(line.get('sieved'))];
  for (const each of [stirred, sieved])
    if (typeof each === 'object') return { kind: 'yes-or-no', typed: each.neither };
  const isRead = measured.some((name) => line.has(name));
  const isStirred = line.has('minutes') || (stirred === 'yes' && !isRead);
  const [before, after]: [LineCommand[], LineCommand[]] = [[], []];
  // What is measured of a stirred bucket is measured after the stir; a stir in a line without a reading comes last.
  if (isStirred && stirred !== 'no')
    (isRead ? before : after).push({ path: ['stirred'], typed: optionsOf(line, ['minutes']) });
  if (isRead)
    before.push({
      path: ['reading'],
      typed: { ...optionsOf(line, readingOptions), ...(typeof stirred === 'string' && { stirred }) },
    });
  const sure = optionsOf(line, ['sure']);
  const added = addedMeanings.flatMap((what): LineCommand[] => {
    const amount = line.get(what);
    return amount === undefined ? [] : [{ path: ['added'], typed: { what, amount, ...sure } }];
  });
  if (line.has('what') || line.has('amount'))
    added.push({ path: ['added'], typed: { ...optionsOf(line, ['what', 'amount']), ...sure } });
  if (sieved === 'yes' || (line.has('mesh') && sieved !== 'no'))
    after.push({ path: ['sieved'], typed: optionsOf(line, ['mesh']) });
  const commands = [...before, ...added, ...after];
  const note = line.get('note');
  if (note === undefined) return commands;
  // A note about what went in can put a bucket on hold.
  const about = added.at(-1) ?? commands[0];
  if (!about) return [{ path: ['reading'], typed: { note } }];
  about.typed['note'] = note;
  return commands;
};
