import type { Command, Logging, Reply } from '../contract/contract.ts';
import { leafAt } from '../contract/parseLine.ts';
import { plainText } from '../contract/plainText.ts';
import { runLeaf } from '../desk/runLeaf.ts';
import { marksInText } from '../studio/bucket/bucketHazards.ts';
import type { BucketState } from '../studio/bucket/bucketState.ts';
import type { Handbook } from '../studio/handbook.ts';
import type { Instant, MemberId, StreamNo, StudioId } from '../studio/ids.ts';
import type { BucketCaution } from '../studio/settings/bucketSettings.ts';
import type { WritableLogbook } from '../studio/logbook/ports.ts';
import { normalizedName } from '../text/normalizedName.ts';
import type { Text } from '../words/text/text.ts';
import type { Words } from '../words/words.ts';
import { lineCommands, lineOf, type Line, type LineCommand, type NotTicked } from './lineCommands.ts';
import type { NotebookSettings } from './notebookSettings.ts';
import { readDay, type DayProblem } from './readDay.ts';
import type { Row } from './readTable.ts';

/** A logbook that takes entries from long ago, in the order in which they happened. */
export interface NotebookLogbook extends WritableLogbook {
  /** From here on the bucket is shown as it was at that moment. */
  moveTo(bucket: StreamNo, at: Instant): Promise<void>;
  /** The member with that name, new if there is none; undefined when there are several. */
  memberNamed(name: string, now: Instant): Promise<{ id: MemberId; isNew: boolean } | undefined>;
  /** How many entries were in the logbook already, and are not logged again. */
  readonly known: number;
}

export type LineProblem =
  | DayProblem
  | { kind: 'cells'; found: number; wanted: number }
  | { kind: 'no-bucket'; typed: string }
  | { kind: 'which-bucket'; typed: string }
  | { kind: 'which-member'; typed: string }
  | NotTicked
  | 'nothing'
  /** What the command answers to whoever types it. */
  | { kind: 'answer'; text: string };

export interface NotebookOutcome {
  lines: number;
  /** Lines whose entries are all in the logbook already. */
  known: number;
  refused: { line: number; why: LineProblem }[];
  /** How the notebook calls each bucket, and how many lines it has. */
  buckets: { typed: string; bucket: string; lines: number }[];
  opened: string[];
  /** Members whom the logbook did not know. */
  people: string[];
  /** Notes that name a hazard which their bucket is not marked with. */
  hazards: { line: number; bucket: string; marks: BucketCaution[] }[];
}

export interface NotebookOptions extends NotebookSettings {
  studio: StudioId;
  /** The name of whoever brings it in: the author of the lines that name nobody. */
  as: string;
  /** Their account, if it is known: names can be shared. */
  by?: MemberId;
  now: Instant;
  words: Words;
  handbook: Handbook;
  commands: Command[];
  /** All lines are about this bucket. */
  bucket?: string;
  /** Makes the buckets that are not there. */
  newBuckets: boolean;
  width: number;
  /** Is told of each line, in the order in which they happened, and can ask what it becomes. */
  onLine(line: number, bucket: string, becomes: () => readonly string[]): void;
}

interface Dated {
  row: Row;
  line: Line;
  at: Instant;
}

/** The bucket with exactly that name, nickname or number: a beginning is not enough. */
const bucketsCalled = async (book: WritableLogbook, typed: string) => {
  const name = normalizedName(typed);
  const all = await book.buckets();
  const named = all.filter(
    ({ settings }) => normalizedName(settings.name) === name || normalizedName(settings.nick ?? '') === name,
  );
  return named.length > 0 || name === '' ? named : all.filter(({ no }) => String(no) === name);
};

type BucketFound =
  { ok: true; no: StreamNo; use: NotebookOutcome['buckets'][number] } | { ok: false; why: LineProblem };

class NotebookReader {
  readonly outcome: NotebookOutcome = {
    lines: 0,
    known: 0,
    refused: [],
    buckets: [],
    opened: [],
    people: [],
    hazards: [],
  };
  readonly #book: NotebookLogbook;
  readonly #options: NotebookOptions;
  readonly #zone: string;
  readonly #buckets = new Map<string, BucketFound>();
  readonly #members = new Map<string, MemberId | undefined>();

  constructor(book: NotebookLogbook, options: NotebookOptions, zone: string) {
    this.#book = book;
    this.#options = options;
    this.#zone = zone;
    if (options.by !== undefined) this.#members.set(options.as, options.by);
  }

  refuse(row: Row, why: LineProblem): void {
    this.outcome.refused.push({ line: row.line, why });
  }

  dated(row: Row): Dated | undefined {
    const { columns, decimal, order, now, width } = this.#options;
    if (row.cells.slice(width).some((cell) => cell.trim() !== '')) {
      this.refuse(row, { kind: 'cells', found: row.cells.length, wanted: width });
      return undefined;
    }
    const line = lineOf(row, columns, decimal);
    const said = { date: line.get('date') ?? '', time: line.get('time') ?? '' };
    const at = readDay(said, { order, zone: this.#zone, now });
    if (typeof at !== 'number') {
      this.refuse(row, at);
      return undefined;
    }
    return { row, line, at };
  }

  async take({ row, line, at }: Dated): Promise<void> {
    const typed = this.#options.bucket ?? line.get('bucket') ?? '';
    const bucket = await this.#bucketCalled(typed);
    if (!bucket.ok) return this.refuse(row, bucket.why);
    bucket.use.lines += 1;
    const who = line.get('who') ?? this.#options.as;
    const member = await this.#memberNamed(who);
    if (member === undefined) return this.refuse(row, { kind: 'which-member', typed: who });
    const commands = lineCommands(line);
    if (!Array.isArray(commands)) return this.refuse(row, commands);
    if (commands.length === 0) return this.refuse(row, 'nothing');
    await this.#book.moveTo(bucket.no, at);
    const before = this.#book.known;
    const replies: Reply[] = [];
    for (const { path, typed } of commands) {
      const reply = await this.#run(path, { bucket: String(bucket.no), ...typed }, member, at);
      if (reply.kind !== 'answer')
        return this.refuse(row, { kind: 'answer', text: this.#plain(reply.title) });
      replies.push(reply);
    }
    if (this.#book.known - before === commands.length) this.outcome.known += 1;
    await this.#lookForHazards(row.line, bucket.no, line.get('note'));
    this.#options.onLine(row.line, bucket.use.bucket, () =>
      replies.map(({ logged, title }) => this.#plain(logged?.text ?? title)),
    );
  }

  #plain(text: Text): string {
    return plainText(text, { now: this.#options.now, zone: this.#zone });
  }

  /** Runs a command as the desk does, within the notebook's one transaction. */
  async #run(path: string[], typed: LineCommand['typed'], member: MemberId, at: Instant): Promise<Reply> {
    const { studio, now, words, handbook, commands } = this.#options;
    const leaf = leafAt(commands, path);
    if (leaf?.effect !== 'logs') throw new Error(`/${path.join(' ')} logs nothing.`);
    const request = { key: '', studio, member, role: 'keeper' as const, now, happenedAt: at, path, typed };
    const context: Logging = { ...request, words, handbook, book: this.#book };
    return runLeaf(leaf, request, context);
  }

  async #bucketCalled(typed: string): Promise<BucketFound> {
    const known = this.#buckets.get(typed);
    if (known) return known;
    const found = await this.#findBucket(typed);
    this.#buckets.set(typed, found);
    if (found.ok) this.outcome.buckets.push(found.use);
    return found;
  }

  async #findBucket(typed: string): Promise<BucketFound> {
    const foundAs = ({ no, settings: { name } }: BucketState): BucketFound => ({
      ok: true,
      no,
      use: { typed, bucket: name, lines: 0 },
    });
    const [one, ...others] = await bucketsCalled(this.#book, typed);
    if (others.length > 0) return { ok: false, why: { kind: 'which-bucket', typed } };
    if (one) return foundAs(one);
    const { newBuckets, as, now } = this.#options;
    const member = await this.#memberNamed(as);
    if (member === undefined) return { ok: false, why: { kind: 'which-member', typed: as } };
    if (!newBuckets || typed === '') return { ok: false, why: { kind: 'no-bucket', typed } };
    const reply = await this.#run(['bucket', 'add'], { name: typed }, member, now);
    const [made] = await bucketsCalled(this.#book, typed);
    if (reply.kind !== 'answer' || !made)
      return { ok: false, why: { kind: 'answer', text: this.#plain(reply.title) } };
    this.outcome.opened.push(made.settings.name);
    return foundAs(made);
  }

  async #memberNamed(typed: string): Promise<MemberId | undefined> {
    if (this.#members.has(typed)) return this.#members.get(typed);
    const found = await this.#book.memberNamed(typed, this.#options.now);
    this.#members.set(typed, found?.id);
    if (found?.isNew) this.outcome.people.push(typed);
    return found?.id;
  }

  async #lookForHazards(line: number, no: StreamNo, note: string | undefined): Promise<void> {
    const named = note === undefined ? [] : marksInText(note);
    if (named.length === 0) return;
    const settings = (await this.#book.bucket(no))?.settings;
    const marks = named.filter((mark) => settings?.cautions.includes(mark) !== true);
    if (settings && marks.length > 0) this.outcome.hazards.push({ line, bucket: settings.name, marks });
  }
}

/** Logs every line of a notebook, each as what a member would have typed then. The caller keeps all of it, or nothing. */
export const takeNotebookIn = async (
  rows: readonly Row[],
  book: NotebookLogbook,
  options: NotebookOptions,
): Promise<NotebookOutcome> => {
  const reader = new NotebookReader(book, options, (await book.studio()).zone);
  const lines = rows.flatMap((row) => reader.dated(row) ?? []).sort((a, b) => a.at - b.at);
  for (const line of lines) await reader.take(line);
  reader.outcome.lines = rows.length;
  reader.outcome.refused.sort((a, b) => a.line - b.line);
  return reader.outcome;
};
