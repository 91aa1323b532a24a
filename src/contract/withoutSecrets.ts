import { isGroup, type Command, type Leaf } from './contract.ts';
import { parseLine, printLine } from './parseLine.ts';

const hides = (leaf: Leaf): boolean => Object.values(leaf.options).some(({ kind }) => kind.secret === true);

/** Stands where a secret was typed. */
const mark = '…';

/** A line as it may be kept and shown again: a code that was typed is not in it. */
export const withoutSecrets = (line: string, commands: readonly Command[]): string => {
  const [, name = ''] = /^\s*\/?(\S+)/.exec(line) ?? [];
  const command = commands.find((one) => one.name === name.toLowerCase());
  if (!command || isGroup(command) || !hides(command)) return line;
  const parsed = parseLine(line, commands);
  // Where it stands in a line that cannot be read, nobody knows.
  if (!parsed.ok) return `/${command.name} ${mark}`;
  const typed = Object.entries(parsed.value.typed).map(([option, value]) => [
    option,
    command.options[option]?.kind.secret === true ? mark : value,
  ]);
  return printLine(parsed.value.path, Object.fromEntries(typed), parsed.value.after);
};
