import type { Command } from './contract.ts';
import { afterSlash, leafAt, parseLine, printLine } from './parseLine.ts';

const secretMask = '…';

/** A line that is safe to store and show: option values that are secret are masked. */
export const withoutSecrets = (line: string, commands: readonly Command[]): string => {
  const [name = ''] = afterSlash(line).toLowerCase().split(/\s+/, 1);
  const leaf = leafAt(commands, [name]);
  const isSecret = (option: string) => leaf?.options[option]?.kind.secret === true;
  if (!leaf || !Object.keys(leaf.options).some(isSecret)) return line;
  const parsed = parseLine(line, commands);
  // The line cannot be parsed, so the secret could be anywhere in it.
  if (!parsed.ok) return `/${name} ${secretMask}`;
  const { path, typed, after } = parsed.value;
  const masked = Object.entries(typed).map(([option, value]) => [
    option,
    isSecret(option) ? secretMask : value,
  ]);
  return printLine(path, Object.fromEntries(masked), after);
};
