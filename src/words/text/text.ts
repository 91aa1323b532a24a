import type { Instant, MemberId } from '../../studio/ids.ts';

/** A piece of text that each platform shows in its own way: a member's words escaped, times in the reader's zone. */
export type Part =
  { said: string } | { at: Instant; show: 'ago' | 'clock' | 'day' } | { member: MemberId; name: string };

/** What a person reads. Bare strings are ours; a member's are `said`. */
export type Text = (string | Part)[];

/** Our sentence with parts in it. It refuses a bare string, so that a member's words are never taken for ours. */
export const t = (ours: TemplateStringsArray, ...parts: (Part | Text | number)[]): Text => {
  const text: Text = [];
  ours.forEach((string, i) => {
    if (string !== '') text.push(string);
    const part = parts[i];
    if (part === undefined) return;
    if (typeof part === 'number') text.push(String(part));
    else if (Array.isArray(part)) text.push(...part);
    else text.push(part);
  });
  return text;
};

export const said = (typed: string): Part => ({ said: typed });

export const join = (texts: Text[], between: string): Text =>
  texts.flatMap((text, i) => (i === 0 ? text : [between, ...text]));

/** Names that somebody typed, commas between. */
export const saidNames = (names: readonly string[]): Text =>
  join(
    names.map((name) => [said(name)]),
    ', ',
  );

/** The same, each in quotes. */
export const quotedNames = (names: readonly string[]): Text =>
  join(
    names.map((name) => t`“${said(name)}”`),
    ', ',
  );
