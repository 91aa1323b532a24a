import { isGroup, type Command } from './contract.ts';
import { parseLine, printLine } from './parseLine.ts';

const secretMask = '…';

/** A line that is safe to store and show: option values that are secret are masked. */
export const withoutSecrets = (line: string, commands: readonly Command[]): string => {
  const [, name = ''] = /^\s*\/?(\S+)/.exec(line) ?? [];
  const command = commands.find((one) => one.name === name.toLowerCase());
  if (
    !command ||
    isGroup(command) ||
    !Object.values(command.options).some(({ kind }) => kind.secret === true)
  )
    return line;
  const parsed = parseLine(line, commands);
  // The line cannot be parsed, so the secret could be anywhere in it.
  if (!parsed.ok) return `/${command.name} ${secretMask}`;
  const typed = Object.entries(parsed.value.typed).map(([option, value]) => [
    option,
    command.options[option]?.kind.secret === true ? secretMask : value,
  ]);
  return printLine(parsed.value.path, Object.fromEntries(typed), parsed.value.after);
};
