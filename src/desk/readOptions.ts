import {
  refusal,
  typedOptions,
  toRun,
  type Action,
  type Asking,
  type Choice,
  type Kind,
  type Leaf,
  type Reply,
} from '../contract/contract.ts';
import type { Request } from '../contract/desk.ts';
import { printLine, quoted } from '../contract/parseLine.ts';

type ReadOptions = { ok: true; values: Record<string, unknown> } | { ok: false; reply: Reply };

/** Longer than any name, number or time. Parsing more would keep other members waiting. */
const usuallyLongest = 200;
const longestOf = ({ longest = usuallyLongest }: Kind<unknown>): number => longest;
export const isTooLong = (typed: string, kind: Kind<unknown>): boolean => typed.length > longestOf(kind);

/** A platform shows at most this many suggestions, each this long. */
export const mostChoices = 25;
export const shortChoice = (choice: Choice): Choice => ({ ...choice, name: choice.name.slice(0, 100) });

/** The other options of the leaf, as they are typed in a line. */
const otherOptions = (leaf: Leaf, but: string): string[] =>
  (leaf.form ?? typedOptions(leaf))
    .filter((name) => name !== but)
    .slice(0, 4)
    .map((name) => `${name}:${quoted(leaf.options[name]?.kind.example ?? '')}`);

/** Parses every option, and stops at the first that is wrong. */
export const readOptions = async (leaf: Leaf, request: Request, asking: Asking): Promise<ReadOptions> => {
  const { option: words, desk: w } = asking.words;
  const refused = (option: string, title: Reply['title']) =>
    ({ ok: false, reply: refusal(title, { option }) }) as const;
  const values: Record<string, unknown> = {};
  const unknown = Object.keys(request.typed).find((name) => !(name in leaf.options));
  if (unknown !== undefined) return refused(unknown, w.unknownOption(unknown, typedOptions(leaf)));
  for (const [name, { kind, needed, about }] of Object.entries(leaf.options)) {
    const typed = request.typed[name];
    if (typed === undefined || typed.trim() === '') {
      if (!needed) continue;
      return refused(name, w.missing(name, about(asking.words), kind.example));
    }
    if (isTooLong(typed, kind))
      return refused(name, w.wrong(name, words.tooLong(longestOf(kind), typed.length)));
    const read = await kind.read(typed, asking);
    if (read.ok) {
      values[name] = read.value;
      continue;
    }
    // Unknown `option:` after the value. Lists are exempt: their items may contain colons.
    const stray = /[,;\n]/.test(typed) ? undefined : /\s([a-z][a-z0-9-]{2,}):/i.exec(typed)?.[1];
    if (stray !== undefined)
      return refused(stray, w.line.noOption([...request.path], stray, typedOptions(leaf)));
    if (read.more)
      return refused(name, w.restNeedsOptions(read.more.known, read.more.rest, otherOptions(leaf, name)));
    const instead = (choices: readonly Choice[]): Action[] =>
      choices.map(({ name: label, value }) =>
        toRun([{ said: label }], printLine(request.path, { ...request.typed, [name]: value }, request.after)),
      );
    const { why, near } = read;
    const choices = read.choices?.slice(0, mostChoices).map(shortChoice);
    const reply: Reply = choices
      ? {
          kind: 'choice',
          title: why,
          private: true,
          actions: instead(choices),
          data: { option: name, choices: choices.map(({ name: label, value }) => ({ label, value })) },
        }
      : {
          ...refusal(w.wrong(name, why), { option: name, typed: typed.slice(0, 200) }),
          ...(near && { actions: instead(near) }),
        };
    return { ok: false, reply };
  }
  return { ok: true, values };
};
