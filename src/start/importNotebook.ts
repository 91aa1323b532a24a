import { readFileSync, statSync } from 'node:fs';
import { definedOnly } from '../definedOnly.ts';
import { withoutControls } from '../contract/plainText.ts';
import { decimalMarks } from '../notebook/decimalMark.ts';
import { decodeText, type Encoding } from '../notebook/decodeText.ts';
import { readMeaning } from '../notebook/meanings.ts';
import {
  settleNotebook,
  type NotebookSaid,
  type NotebookSettings,
  type Question,
} from '../notebook/notebookSettings.ts';
import { dayOrders } from '../notebook/readDay.ts';
import { readTable, type Separator, type Table } from '../notebook/readTable.ts';
import { takeNotebookIn, type NotebookOutcome } from '../notebook/takeNotebookIn.ts';
import { openHandbook } from '../search/openHandbook.ts';
import { loadNotes } from '../seed/loadNotes.ts';
import type { StudioId } from '../studio/ids.ts';
import { en } from '../words/en.ts';
import { notebookWords as w } from '../words/platform/notebookWords.ts';
import type { App } from './app.ts';
import {
  columnsSentence,
  lineSentence,
  questionSentences,
  tableSentence,
} from './imports/notebookSentences.ts';
import { commands } from './registry.ts';

/** Where an import prints, and whom it can ask. */
export interface ImportOutput {
  say(text: string): void;
  refuse(text: string): void;
  progress(done: number, lines: number): void;
  /** Asks whoever sits at the terminal; undefined when nobody does. */
  ask?: ((question: string) => Promise<string | undefined>) | undefined;
  /** How many lines of each kind to show. */
  most: number;
}

const mostBytes = 100_000_000;

/** The file as a table, or why it is none. */
export const readNotebook = (
  file: string,
  { encoding, separator }: { encoding?: Encoding; separator?: Separator },
): { ok: true; table: Table } | { ok: false; why: string } => {
  if (statSync(file).size > mostBytes) return { ok: false, why: w.tooBig(file, mostBytes) };
  const decoded = decodeText(readFileSync(file), encoding);
  if (!decoded.ok)
    return { ok: false, why: decoded.why === 'archive' ? w.archive(file) : w.binary(file, decoded.line) };
  const read = readTable(decoded.text, separator);
  return read.ok ? read : { ok: false, why: tableSentence(read.why, file) };
};

/** What was said, and one more answer; undefined when it answers nothing. */
const withAnswer = (said: NotebookSaid, question: Question, answer: string): NotebookSaid | undefined => {
  const typed = answer.trim();
  switch (question.kind) {
    case 'meaning':
      return readMeaning(typed) && { ...said, columns: new Map(said.columns).set(question.column, typed) };
    case 'unit': {
      const meant = `${question.meaning} ${typed}`;
      return readMeaning(meant) && { ...said, columns: new Map(said.columns).set(question.column, meant) };
    }
    case 'dates': {
      const dates = dayOrders.find((order) => order === typed.toLowerCase());
      return dates && { ...said, dates };
    }
    case 'decimal': {
      const decimal = decimalMarks.find((mark) => mark === typed);
      return decimal && { ...said, decimal };
    }
  }
};

/** Asks until it is settled what the notebook means. Undefined when nobody can answer: then the questions are printed. */
export const settleByAsking = async (
  table: Table,
  first: NotebookSaid,
  { refuse, ask }: ImportOutput,
): Promise<NotebookSettings | undefined> => {
  let said = first;
  for (;;) {
    const found = settleNotebook(table, said);
    if (found.ok) return found.settings;
    if ('problem' in found) {
      refuse(withoutControls(columnsSentence(found.problem)));
      return undefined;
    }
    const [question] = found.questions;
    if (!ask || !question) {
      for (const each of found.questions) refuse(withoutControls(questionSentences(each).join(' ')));
      return undefined;
    }
    const answer = await ask(`${withoutControls(questionSentences(question)[0])} `);
    if (answer === undefined) return undefined;
    said = withAnswer(said, question, answer) ?? said;
  }
};

/** The first of many lines, and how many more there are. */
const showSome = (lines: readonly string[], { refuse, most }: ImportOutput): void => {
  for (const line of lines.slice(0, most)) refuse(withoutControls(line));
  if (lines.length > most) refuse(w.andMore(lines.length - most));
};

const showRefused = ({ refused }: NotebookOutcome, output: ImportOutput): void =>
  showSome(
    refused.map(({ line, why }) => w.refusedLine(line, lineSentence(why))),
    output,
  );

const showDryRun = (outcome: NotebookOutcome, output: ImportOutput, shown: number, zone: string): void => {
  const { lines, known, refused, buckets, opened, people } = outcome;
  const { say } = output;
  const became = lines - refused.length;
  if (became > shown) say(w.andMore(became - shown));
  for (const { typed, bucket, lines: count } of buckets)
    say(withoutControls(w.bucketLines(typed, bucket, count)));
  for (const name of opened) say(withoutControls(w.madeBucket(name)));
  for (const name of people) say(withoutControls(w.newMember(name)));
  say(w.zoneIs(zone));
  showRefused(outcome, output);
  say(w.dryRun(lines, known, refused.length));
};

export interface NotebookImport {
  /** Undefined in an empty logbook. */
  studio: StudioId | undefined;
  /** The name of whoever brings it in. */
  as: string;
  table: Table;
  settings: NotebookSettings;
  bucket?: string | undefined;
  newBuckets: boolean;
  dryRun: boolean;
}

/** Brings a notebook in, or shows what it would become. Returns the exit code: 1 when a line is refused. */
export const importNotebook = async (
  { store, clock }: Pick<App, 'store' | 'clock'>,
  { studio, as, table, settings, bucket, newBuckets, dryRun }: NotebookImport,
  output: ImportOutput,
): Promise<number> => {
  const settled = studio && (await store.books.read(studio, (book) => book.studio()));
  if (!settled?.zoneSet || studio === undefined) {
    output.refuse(w.noZone);
    return 1;
  }
  let [done, shown] = [0, 0];
  const { value: outcome, no } = await store.imports.run(studio, async (book) => {
    const value = await takeNotebookIn(table.rows, book, {
      ...settings,
      ...definedOnly({ bucket }),
      studio,
      as,
      newBuckets,
      now: clock.now(),
      words: en,
      handbook: openHandbook(loadNotes),
      commands,
      width: table.header.length,
      onLine: (line, name, becomes) => {
        done += 1;
        output.progress(done, table.rows.length);
        if (!dryRun || shown >= output.most) return;
        shown += 1;
        output.say(withoutControls(w.becomes(line, name, becomes())));
      },
    });
    return { keep: !dryRun && value.refused.length === 0, value };
  });
  const refused = outcome.refused.length;
  showSome(
    outcome.hazards.map(({ line, bucket: of, marks }) => w.hazard(line, of, marks)),
    output,
  );
  if (dryRun) showDryRun(outcome, output, shown, settled.zone);
  else if (refused > 0) {
    showRefused(outcome, output);
    output.refuse(w.refused(refused, outcome.lines));
  } else output.say(w.brought(outcome.lines, outcome.known, no));
  return refused > 0 ? 1 : 0;
};
