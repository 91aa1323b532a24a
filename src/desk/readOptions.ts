import {
  type Action,
  type Asking,
  type Choice,
  type Kind,
  type Leaf,
  type Reply,
  typedOptions,
} from '../contract/contract.ts';
import type { Request } from '../contract/desk.ts';
import { printLine, quoted } from '../contract/parseLine.ts';
import { refuse } from './refuse.ts';

type ReadOptions = { ok: true; values: Record<string, unknown> } | { ok: false; reply: Reply };

/** Longer than any name, number or time. Parsing more would keep other members waiting. */
const usuallyLongest = 200;
const longestOf = ({ longest = usuallyLongest }: Kind<unknown>): number => longest;
export const isTooLong = (typed: string, kind: Kind<unknown>): boolean => typed.length > longestOf(kind);

/** The other options of the leaf, as they are typed in a line. */
const otherOptions = (leaf: Leaf, but: string): string[] =>
  (leaf.form ?? typedOptions(leaf))
    .filter((name) => name !== but)
    .slice(0, 4)
    .map((name) => `${name}:${quoted(leaf.options[name]?.kind.example ?? '')}`);

/** Parses every option, and stops at the first that is wrong. */
export const readOptions = async (leaf: Leaf, request: Request, asking: Asking): Promise<ReadOptions> => {
  const { words } = asking;
  const values: Record<string, unknown> = {};
  for (const name of Object.keys(request.typed))
    if (!(name in leaf.options))
      return {
        ok: false,
        reply: refuse(words.desk.unknownOption(name, typedOptions(leaf)), { option: name }),
      };
  for (const [name, option] of Object.entries(leaf.options)) {
    const typed = request.typed[name];
    if (typed === undefined || typed.trim() === '') {
      if (!option.needed) continue;
      return {
        ok: false,
        reply: refuse(words.desk.missing(name, option.about(words), option.kind.example), { option: name }),
      };
    }
    if (isTooLong(typed, option.kind)) {
      const why = words.option.tooLong(longestOf(option.kind), typed.length);
      return { ok: false, reply: refuse(words.desk.wrong(name, why), { option: name }) };
    }
    const read = await option.kind.read(typed, asking);
    if (read.ok) values[name] = read.value;
    else {
      const instead = (choices: readonly Choice[]): Action[] =>
        choices.map(({ name: label, value }) => ({
          label: [{ said: label }],
          line: printLine(request.path, { ...request.typed, [name]: value }, request.after),
          press: 'run',
        }));
      // Unknown `option:` after the value. Lists are exempt: their items may contain colons.
      const stray = /[,;\n]/.test(typed) ? undefined : /\s([a-z][a-z0-9-]{2,}):/i.exec(typed)?.[1];
      if (stray !== undefined)
        return {
          ok: false,
          reply: refuse(words.desk.line.noOption([...request.path], stray, typedOptions(leaf)), {
            option: stray,
          }),
        };
      if (read.more) {
        const { known, rest } = read.more;
        return {
          ok: false,
          reply: refuse(words.desk.restNeedsOptions(known, rest, otherOptions(leaf, name)), {
            option: name,
          }),
        };
      }
      if (!read.choices)
        return {
          ok: false,
          reply: {
            ...refuse(words.desk.wrong(name, read.why), { option: name, typed: typed.slice(0, 200) }),
            ...(read.near && { actions: instead(read.near) }),
          },
        };
      return {
        ok: false,
        reply: {
          kind: 'choice',
          title: read.why,
          private: true,
          actions: instead(read.choices),
          data: { option: name, choices: read.choices.map(({ name: label, value }) => ({ label, value })) },
        },
      };
    }
  }
  return { ok: true, values };
};
