import { isGroup, typedOptions, type Choice, type Leaf } from '../contract/contract.ts';
import type { Desk, Request } from '../contract/desk.ts';
import { leafAt, optionStarts, parseLine, quoted } from '../contract/parseLine.ts';

export type Asker = Pick<Request, 'studio' | 'member' | 'role' | 'now'>;

/** The candidates, and the end of the line that they would replace. */
export type Completion = [candidates: string[], end: string];

const startingWith = (names: readonly string[], typed: string): string[] =>
  names.filter((name) => name.toLowerCase().startsWith(typed.toLowerCase())).map((name) => `${name} `);

const namesOf = (all: readonly { name: string }[]): string[] => all.map(({ name }) => name);

/** An opening quotation mark without its closing one. */
const openQuote = /^["“](?=[^"”]*$)/;

const textOf = ({ value, typed }: Choice): string => typed ?? value;
/** Completes the values and option names of one command. */
const completeOptions = async (
  leaf: Leaf,
  path: string[],
  rest: string,
  asker: Asker,
  desk: Desk,
): Promise<Completion> => {
  const names = Object.keys(leaf.options);
  const found = optionStarts(rest, new Set(names));
  const last = found.at(-1);
  const option = last?.name ?? typedOptions(leaf)[0];
  const raw = rest.slice(last?.value ?? 0);
  const word = /\S*$/.exec(raw)?.[0] ?? '';
  const isOpen = openQuote.test(raw);
  if (!isOpen && (last === undefined || /\s/.test(raw))) {
    const unused = typedOptions(leaf).filter((name) => !found.some((mark) => mark.name === name));
    const fitting = unused.filter((name) => name.startsWith(word.toLowerCase())).map((name) => `${name}:`);
    if (fitting.length > 0) return [fitting, word];
  }
  const typed = raw.replace(openQuote, '');
  if (option === undefined || (!isOpen && /["”]\s*$/.test(raw))) return [[], word];
  const before = parseLine(`/${path.join(' ')} ${rest.slice(0, last?.from ?? 0)}`, desk.commands);
  const options = { ...(before.ok && before.value.typed), [option]: typed };
  const texts = (await desk.suggest({ ...asker, key: '', path, typed: options }, option)).map(textOf);
  // Similar names are offered only if none starts with what was typed.
  const begun = texts.filter((text) => text.toLowerCase().startsWith(typed.toLowerCase()));
  return [(begun.length > 0 ? begun : texts).map(quoted), raw];
};

/** A line in plain words begins with a bucket: those whose names begin like it. */
const bucketsBegun = async (typed: string, asker: Asker, desk: Desk): Promise<string[]> => {
  const request = { ...asker, key: '', path: ['water-or-stir'], typed: { bucket: typed } };
  const choices = await desk.suggest(request, 'bucket');
  return startingWith(choices.map(textOf), typed);
};

/** Completes the end of a line: a command, a subcommand, an option or a value. */
export const completeLine = async (line: string, asker: Asker, desk: Desk): Promise<Completion> => {
  const [, slash = '', first = '', gap = '', rest = ''] = /^(\s*\/?)(\S*)(\s*)([\s\S]*)$/.exec(line) ?? [];
  const isPlain = !slash.includes('/') && first !== '';
  if (gap === '') {
    const names = startingWith(namesOf(desk.commands), first).map((name) => `${slash || '/'}${name}`);
    const buckets = isPlain ? await bucketsBegun(first, asker, desk) : [];
    return [[...names, ...buckets], `${slash}${first}`];
  }
  const command = desk.commands.find(({ name }) => name === first.toLowerCase());
  if (!command) return [isPlain ? await bucketsBegun(line.trimStart(), asker, desk) : [], line];
  if (!isGroup(command)) return completeOptions(command, [command.name], rest, asker, desk);
  const [, sub = '', space = '', more = ''] = /^(\S*)(\s*)([\s\S]*)$/.exec(rest) ?? [];
  if (space === '') return [startingWith(namesOf(command.leaves), sub), sub];
  const path = [command.name, sub.toLowerCase()];
  const leaf = leafAt(desk.commands, path);
  return leaf ? completeOptions(leaf, path, more, asker, desk) : [[], line];
};
