import { withoutControls } from '../contract/plainText.ts';
import { decodeText } from '../notebook/decodeText.ts';
import { settleNotebook } from '../notebook/notebookSettings.ts';
import { readTable, type Table } from '../notebook/readTable.ts';
import { takeNotebookIn, type LineProblem, type NotebookOutcome } from '../notebook/takeNotebookIn.ts';
import type { NotebookPort, NotebookSent } from '../room/ports.ts';
import type { WireNotebook } from '../room/wire.ts';
import type { MemberId, StudioId } from '../studio/ids.ts';
import { en } from '../words/en.ts';
import { roomNotebookWords as w } from '../words/platform/roomNotebookWords.ts';
import type { App } from './app.ts';
import { columnsSentence, lineSentence, tableSentence } from './imports/notebookSentences.ts';
import { commands } from './registry.ts';
import { bucketQuestion, newBucketsQuestion, questionOf } from './imports/notebookQuestions.ts';

/** Lines in one go: others wait for the logbook meanwhile. */
const mostLines = 2_000;
const shown = 30;

const nothing = (said: string, more: Partial<WireNotebook> = {}): WireNotebook => ({
  said,
  questions: [],
  refused: [],
  becomes: [],
  more: 0,
  about: [],
  fits: false,
  ...more,
});

const readBytes = (bytes: Uint8Array): { table: Table } | { why: string } => {
  const decoded = decodeText(bytes);
  if (!decoded.ok) return { why: decoded.why === 'archive' ? w.archive : w.binary(decoded.line) };
  const read = readTable(decoded.text);
  if (!read.ok) return { why: tableSentence(read.why, w.name) };
  const { length } = read.table.rows;
  return length > mostLines ? { why: w.tooMany(length, mostLines) } : { table: read.table };
};

const lineProblem = (why: LineProblem): string =>
  typeof why === 'object' && why.kind === 'no-bucket' ? w.noBucket(why.typed) : lineSentence(why);

const headline = ({ refused, lines, known }: NotebookOutcome, no: number | undefined): string => {
  if (refused.length > 0) return w.refused(refused.length, lines);
  if (known === lines) return w.allKnown;
  return no === undefined ? w.ready(lines, known) : w.brought(lines - known);
};

/** Notebooks for the room's page: each is tried first, and kept as a whole or not at all. */
export const roomNotebook = (
  { store, clock, handbook }: Pick<App, 'store' | 'clock' | 'handbook'>,
  studio: StudioId,
): NotebookPort => {
  const settledZone = () =>
    store.books.read(studio, async (book) => {
      const { zone, zoneSet } = await book.studio();
      return zoneSet === true ? zone : undefined;
    });
  const take = async (
    { said, keep }: NotebookSent,
    by: MemberId,
    as: string,
    table: Table,
  ): Promise<WireNotebook> => {
    const found = settleNotebook(table, said);
    const zone = await settledZone();
    if (zone === undefined) return nothing(w.noZone);
    if (!found.ok && 'questions' in found)
      return nothing(w.asks, { questions: found.questions.map(questionOf) });
    if (!found.ok) {
      const { problem } = found;
      if (problem.kind !== 'none-means' || problem.meaning !== 'bucket')
        return nothing(columnsSentence(problem));
      const buckets = await store.books.read(studio, (book) => book.buckets());
      return nothing(w.asks, { questions: [bucketQuestion(buckets)] });
    }
    const becomes: string[] = [];
    const { value: outcome, no } = await store.imports.run(studio, async (book) => {
      const value = await takeNotebookIn(table.rows, book, {
        ...found.settings,
        ...(said.bucket !== undefined && { bucket: said.bucket }),
        studio,
        as,
        by,
        newBuckets: said.newBuckets,
        now: clock.now(),
        words: en,
        handbook,
        commands,
        width: table.header.length,
        onLine: (line, bucket, what) => {
          if (becomes.length < shown) becomes.push(`${line} · ${bucket}: ${what().join('; ')}`);
        },
      });
      return { keep: keep && value.refused.length === 0, value };
    });
    const { lines, refused, known, opened, people, hazards } = outcome;
    const lacksBuckets = refused.some(({ why }) => typeof why === 'object' && why.kind === 'no-bucket');
    return nothing(headline(outcome, no), {
      questions: lacksBuckets && !said.newBuckets ? [newBucketsQuestion] : [],
      refused: refused.slice(0, shown).map(({ line, why }) => `${line} · ${lineProblem(why)}`),
      becomes,
      more: Math.max(0, lines - refused.length - becomes.length),
      about: [
        ...hazards.slice(0, shown).map(({ line, bucket, marks }) => w.hazard(line, bucket, marks)),
        ...opened.map((name) => w.newBucket(name, no !== undefined)),
        ...people.map((name) => w.newMember(name, no !== undefined)),
        w.zone(zone),
      ],
      fits: refused.length === 0 && known < lines && no === undefined,
      ...(no !== undefined && { no }),
    });
  };
  const clean = (answer: WireNotebook): WireNotebook => ({
    ...answer,
    said: withoutControls(answer.said),
    refused: answer.refused.map(withoutControls),
    becomes: answer.becomes.map(withoutControls),
    about: answer.about.map(withoutControls),
  });
  return {
    async read(sent, by, as) {
      const read = readBytes(sent.bytes);
      return clean('why' in read ? nothing(read.why) : await take(sent, by, as, read.table));
    },
    async takeBack(no, by) {
      const done = await store.imports.takeBack(studio, no, by);
      return nothing(done.ok ? w.undone(done.entries) : w.notUndone);
    },
  };
};
