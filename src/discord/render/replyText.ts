import type { Reply } from '../../contract/contract.ts';
import { discordWords } from '../../words/platform/discordWords.ts';
import { logWords } from '../../words/bucket/logWords.ts';
import type { Text } from '../../words/text/text.ts';
import { markdown, markdownPieces, markdownWithin } from './markdown.ts';

/** Discord's limit is 2,000; the rest is left for a mention and a remark. */
const CONTENT = 1_900;
const TITLE = 1_200;
/** The most characters in a row of a list; and how many are reserved for rows. */
const ROW = 600;
const ROWS = 700;
const MOST_PAGES = 5;

export interface ReplyText {
  content: string;
  /** What did not fit, for further messages. A list has a button for the rest instead. */
  rest: string[];
  /** How many rows of a list were shown. */
  shown: number;
}

interface Line {
  mark: string;
  text: Text;
}

const factLines = (facts: Reply['facts']): Line[] =>
  (facts ?? []).map(({ label, text }) => ({ mark: `**${markdown(label)}** `, text }));
const marked = (mark: string, texts: Text[] | undefined): Line[] =>
  (texts ?? []).map((text) => ({ mark, text }));

const linesOf = (reply: Reply): { others: Line[]; rows: Line[]; after: Line[] } => {
  const facts = factLines(reply.facts);
  const reasons = marked('-# ', reply.reasons);
  const before = reply.logged ? [{ mark: '', text: logWords.logged(reply.logged) }] : [];
  const warnings = [...marked('- ', reply.dont), ...marked('> ', reply.cautions)];
  switch (reply.more?.of) {
    case 'facts':
      return { others: before, rows: facts, after: [...warnings, ...reasons] };
    case 'reasons':
      return { others: [...before, ...facts, ...warnings], rows: reasons, after: [] };
    default:
      return { others: [...before, ...facts, ...warnings, ...reasons], rows: [], after: [] };
  }
};

/** A line; if it is longer than a message, several. */
const linePieces = ({ mark, text }: Line): string[] =>
  markdownPieces(text, CONTENT - mark.length).map(
    (piece, i) => (i === 0 ? mark : mark.replace(/^\*.*/, '')) + piece,
  );
const row = ({ mark, text }: Line): string => mark + markdownWithin(text, Math.max(1, ROW - mark.length));

const sizeOf = (lines: readonly string[]): number => lines.reduce((sum, { length }) => sum + length + 1, 0);

/** How many lines fit, counted from the first. */
const howManyFit = (lines: readonly string[], room: number): number => {
  let used = 0;
  const first = lines.findIndex(({ length }) => (used += length + 1) > room);
  return first < 0 ? lines.length : first;
};

const pages = (lines: readonly string[]): string[] => {
  const made: string[] = [];
  let left = lines;
  while (left.length > 0 && made.length < MOST_PAGES) {
    const many = Math.max(1, howManyFit(left, CONTENT));
    made.push(left.slice(0, many).join('\n'));
    left = left.slice(many);
  }
  const last = made.at(-1);
  return left.length === 0 || last === undefined
    ? made
    : [...made.slice(0, -1), `${last}\n-# ${discordWords.shortened}`];
};

/** The answer is the first line, which a phone's notification shows. Facts follow, then small print. */
export const replyText = (reply: Reply, notes: readonly string[]): ReplyText => {
  const title = markdownWithin(reply.title, TITLE);
  const small = notes.map((note) => `-# ${note}`);
  const { others, rows, after } = linesOf(reply);
  const room = CONTENT - title.length - sizeOf(small);
  const [above, below] = [others.flatMap(linePieces), after.flatMap(linePieces)];
  const spare = rows.length > 0 ? Math.max(0, room - ROWS) : room;
  const shownAbove = howManyFit(above, spare);
  const shownBelow = shownAbove < above.length ? 0 : howManyFit(below, spare - sizeOf(above));
  const [before, behind] = [above.slice(0, shownAbove), below.slice(0, shownBelow)];
  const listed = rows.map(row);
  const shown = howManyFit(listed, room - sizeOf([...before, ...behind]));
  return {
    content: [title, ...before, ...listed.slice(0, shown), ...behind, ...small].join('\n'),
    rest: pages([...above.slice(shownAbove), ...below.slice(shownBelow)]),
    shown,
  };
};

export const bareText = ({ title, logged }: Reply): string =>
  markdownWithin(title, 1_000) + (logged ? `\n${markdownWithin(logWords.logged(logged), 500)}` : '');
