import type { Reply } from '../../contract/contract.ts';
import { discordWords } from '../../words/platform/discordWords.ts';
import { logWords } from '../../words/bucket/logWords.ts';
import type { Text } from '../../words/text/text.ts';
import { markdown, markdownPieces, markdownWithin } from './markdown.ts';

/** The platform takes 2,000: a mention before it and a remark after it must find room too. */
const CONTENT = 1_900;
const TITLE = 1_200;
/** What a row of a list may have; and what is kept free for rows, whatever else there is to say. */
const ROW = 600;
const ROWS = 700;
const MOST_PAGES = 5;

export interface ReplyText {
  content: string;
  /** What did not fit, for messages of their own; lists go on by a press instead. */
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

/** A line as one or, where it is longer than a message, as several. */
const whole = ({ mark, text }: Line): string[] =>
  markdownPieces(text, CONTENT - mark.length).map(
    (piece, i) => (i === 0 ? mark : mark.replace(/^\*.*/, '')) + piece,
  );
const row = ({ mark, text }: Line): string => mark + markdownWithin(text, Math.max(1, ROW - mark.length));

const sizeOf = (lines: readonly string[]): number => lines.reduce((sum, { length }) => sum + length + 1, 0);

/** How many of the lines fit, from the first on. */
const fitting = (lines: readonly string[], room: number): number => {
  let used = 0;
  const first = lines.findIndex(({ length }) => (used += length + 1) > room);
  return first < 0 ? lines.length : first;
};

const pages = (lines: readonly string[]): string[] => {
  const made: string[] = [];
  let left = lines;
  while (left.length > 0 && made.length < MOST_PAGES) {
    const many = Math.max(1, fitting(left, CONTENT));
    made.push(left.slice(0, many).join('\n'));
    left = left.slice(many);
  }
  const last = made.at(-1);
  return left.length === 0 || last === undefined
    ? made
    : [...made.slice(0, -1), `${last}\n-# ${discordWords.shortened}`];
};

/** The answer on the first line, where a phone's notification shows it; below it facts, then the small type. */
export const replyText = (reply: Reply, notes: readonly string[]): ReplyText => {
  const title = markdownWithin(reply.title, TITLE);
  const small = notes.map((note) => `-# ${note}`);
  const { others, rows, after } = linesOf(reply);
  const room = CONTENT - title.length - sizeOf(small);
  const said = [others, after].map((lines) => lines.flatMap(whole));
  const [above = [], below = []] = said;
  const spare = rows.length > 0 ? Math.max(0, room - ROWS) : room;
  const shownAbove = fitting(above, spare);
  const shownBelow = shownAbove < above.length ? 0 : fitting(below, spare - sizeOf(above));
  const around = [...above.slice(0, shownAbove), ...below.slice(0, shownBelow)];
  const listed = rows.map(row);
  const shown = fitting(listed, room - sizeOf(around));
  return {
    content: [
      title,
      ...above.slice(0, shownAbove),
      ...listed.slice(0, shown),
      ...below.slice(0, shownBelow),
      ...small,
    ].join('\n'),
    rest: pages([...above.slice(shownAbove), ...below.slice(shownBelow)]),
    shown,
  };
};

/** The answer alone, and what was logged. */
export const bareText = ({ title, logged }: Reply): string =>
  [markdownWithin(title, 1_000), ...(logged ? [markdownWithin(logWords.logged(logged), 500)] : [])].join(
    '\n',
  );
