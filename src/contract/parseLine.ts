import { editDistance } from '../studio/editDistance.ts';
import { definedOnly } from '../definedOnly.ts';
import { seq, type Seq } from '../studio/ids.ts';
import { isGroup, typedOptions, type Command, type Leaf } from './contract.ts';

export interface ParsedLine {
  path: string[];
  typed: Record<string, string>;
  after?: Seq;
}

export type LineProblem =
  | { kind: 'empty' }
  | { kind: 'unknown-command'; typed: string }
  | { kind: 'needs-leaf'; group: string; leaves: string[] }
  | { kind: 'twice'; option: string }
  | { kind: 'loose'; text: string }
  | { kind: 'unknown-option'; typed: string; near: string }
  | { kind: 'no-option'; path: string[]; typed: string; have: string[] };

/** The leaf that a path names. */
export const leafAt = (
  commands: readonly Command[],
  [name, sub, ...more]: readonly string[],
): Leaf | undefined => {
  const command = commands.find((one) => one.name === name);
  if (!command || more.length > 0) return undefined;
  if (isGroup(command)) return command.leaves.find((leaf) => leaf.name === sub);
  return sub === undefined ? command : undefined;
};

const closingQuotes: Record<string, string> = {
  '"': '"',
  '“': '”',
  '”': '”',
  '„': '“',
  '«': '»',
  "'": "'",
  '‘': '’',
};

/** Where each known `option:` starts, outside quotes, and where its value does. */
export const optionStarts = (text: string, names: ReadonlySet<string>) => {
  const found: { name: string; from: number; value: number }[] = [];
  let quote: string | undefined;
  for (let i = 0; i < text.length; i++) {
    const char = text.charAt(i);
    if (quote !== undefined) {
      if (char === '\\') i++;
      else if (char === quote || (quote === '”' && char === '"')) quote = undefined;
      continue;
    }
    const starts = i === 0 || /[\s:]/.test(text.charAt(i - 1));
    const mark = starts ? /^([a-z][a-z0-9-]*):/i.exec(text.slice(i, i + 40)) : null;
    const name = mark?.[1]?.toLowerCase();
    // A note is prose: “not sure: maybe more” ends none.
    const isProse = mark && found.at(-1)?.name === 'note' && /\s/.test(text.charAt(i + mark[0].length));
    if (mark && !isProse && name !== undefined && names.has(name)) {
      found.push({ name, from: i, value: i + mark[0].length });
      i += mark[0].length - 1;
    } else if (starts && char in closingQuotes && text.indexOf(closingQuotes[char] ?? char, i + 1) > 0) {
      quote = closingQuotes[char];
    }
  }
  return found;
};

/** The first `word:` outside quotes that is nearly a known option. Prose is skipped: it may contain any word. */
const misspelt = (text: string, names: ReadonlySet<string>): { typed: string; near: string } | undefined => {
  const words = new Set(
    Array.from(text.matchAll(/(?<!\S)([a-z][a-z0-9-]{2,}):/gi), ([, word = '']) => word.toLowerCase()),
  );
  for (const { name, from } of optionStarts(text, new Set([...names, ...words]))) {
    if (name === 'note') return undefined;
    if (names.has(name) || /\S/.test(text.charAt(from - 1))) continue;
    const [best] = [...names]
      .map((near) => ({ near, far: editDistance(name, near) }))
      .sort((a, b) => a.far - b.far);
    if (best && best.far <= Math.min(2, name.length - 3)) return { typed: name, near: best.near };
  }
  return undefined;
};

const unquoted = (raw: string): string => {
  const value = raw.trim();
  const close = closingQuotes[value.charAt(0)];
  if (close === undefined || value.length < 2) return value;
  const last = value.charAt(value.length - 1);
  if (last !== close && !(close === '”' && last === '"')) return value;
  return value.slice(1, -1).replace(/\\(["\\])/g, '$1');
};

/** A line without its slash and without NUL characters. */
export const afterSlash = (line: string): string => line.replaceAll('\0', '').trim().replace(/^\//, '');

/** Whether a line is a keeper's command that can be run. Its options are parsed only if it is one. */
export const isForKeepers = (line: string, commands: readonly Command[]): boolean => {
  const path = afterSlash(line).toLowerCase().split(/\s+/, 2);
  const leaf = leafAt(commands, path.slice(0, 1)) ?? leafAt(commands, path);
  return leaf?.who === 'keeper' && parseLine(line, commands).ok;
};

/** Parses a line as a member types it, without running it: `/reading bucket:"Gull Grey" weight:246.2g stirred:yes`. */
export const parseLine = (
  line: string,
  commands: readonly Command[],
): { ok: true; value: ParsedLine } | { ok: false; why: LineProblem } => {
  const refused = (why: LineProblem) => ({ ok: false, why }) as const;
  const [, first = '', rest = ''] = /^(\S+)\s*([\s\S]*)$/.exec(afterSlash(line)) ?? [];
  if (first === '') return refused({ kind: 'empty' });
  const command = commands.find(({ name }) => name === first.toLowerCase());
  if (!command) return refused({ kind: 'unknown-command', typed: first });
  const [, sub = '', more = ''] = /^(\S*)\s*([\s\S]*)$/.exec(rest) ?? [];
  const path = isGroup(command) ? [command.name, sub.toLowerCase()] : [command.name];
  const words = isGroup(command) ? more : rest;
  const leaf = leafAt([command], path);
  if (!leaf) {
    const leaves = isGroup(command) ? command.leaves.map(({ name }) => name) : [];
    return refused({ kind: 'needs-leaf', group: command.name, leaves });
  }
  const names = new Set([...Object.keys(leaf.options), 'after']);
  const unknown = misspelt(words, names);
  if (unknown) return refused({ kind: 'unknown-option', ...unknown });
  const found = optionStarts(words, names);
  const typed: Record<string, string> = {};
  const loose = unquoted(words.slice(0, found[0]?.from ?? words.length));
  if (loose !== '') {
    // Words before any option belong to the first option: `/water-or-stir gull grey`.
    const have = typedOptions(leaf);
    const [main] = have;
    const stray = /^([a-z][a-z0-9-]*):/i.exec(words)?.[1];
    if (stray !== undefined && (main === undefined || leaf.options[main]?.kind.prose !== true))
      return refused({ kind: 'no-option', path, typed: stray, have });
    if (main === undefined || found.some(({ name }) => name === main))
      return refused({ kind: 'loose', text: loose });
    typed[main] = loose;
  }
  let after: Seq | undefined;
  for (const [i, { name, value }] of found.entries()) {
    const text = unquoted(words.slice(value, found[i + 1]?.from ?? words.length));
    if (typed[name] !== undefined) return refused({ kind: 'twice', option: name });
    if (name === 'after' && !('after' in leaf.options)) {
      if (!/^\d{1,9}$/.test(text)) return refused({ kind: 'loose', text: `after:${text}` });
      after = seq(Number(text));
    } else typed[name] = text;
  }
  return { ok: true, value: { path, typed, ...definedOnly({ after }) } };
};

/** A value, quoted where a line needs it. */
export const quoted = (value: string): string =>
  /^[\p{L}\p{N}.,%+-]+$/u.test(value) ? value : `"${value.replace(/(["\\])/g, '\\$1')}"`;

/** The line that a member would type for these options. */
export const printLine = (
  path: readonly string[],
  typed: Readonly<Record<string, string | undefined>>,
  after?: Seq,
): string =>
  [
    `/${path.join(' ')}`,
    ...Object.entries(typed).flatMap(([name, value]) =>
      value === undefined ? [] : [`${name}:${quoted(value)}`],
    ),
    ...(after === undefined ? [] : [`after:${after}`]),
  ].join(' ');
