import { z } from 'zod';
import { definedOnly } from '../../definedOnly.ts';
import type { Entry } from '../../studio/entry.ts';
import {
  coatStream,
  entryId,
  firedStream,
  pieceStream,
  seq,
  studioStream,
  type Seq,
  type StreamNo,
} from '../../studio/ids.ts';
import { exportFormat } from '../../studio/logbook/exportFormat.ts';
import type { LoggedEvent, Notes } from '../../studio/logbook/ports.ts';
import { readIsoInstant } from '../../studio/time/isoInstant.ts';
import { readEvent } from '../entries/eventRow.ts';
import { aMember, anInstant, aSeq, aStream, text } from '../entries/scalarSchemas.ts';
import { ImportProblem } from './importProblem.ts';

const aName = aMember.refine((id) => id !== '' && id.length <= 100);

const differ = <T>(all: readonly T[], key: (one: T) => unknown): boolean =>
  new Set(all.map(key)).size === all.length;

const head = z.looseObject({
  studio: z.looseObject({ name: text.optional() }),
  members: z.array(z.object({ id: aName, name: text })).refine((all) => differ(all, ({ id }) => id)),
  buckets: z.array(z.looseObject({ no: aStream })),
  notes: z
    .array(z.object({ no: aSeq, title: text, text, words: text, by: aName, at: anInstant }))
    .refine((all) => differ(all, ({ no }) => no)),
});
export type ExportHead = z.infer<typeof head>;

const entryLine = z.object({
  entry: text,
  at: text,
  loggedAt: text,
  stream: aStream,
  seq: aSeq,
  by: aName,
  event: z.unknown(),
  note: text.optional(),
  noteRemoved: z.literal(true).optional(),
  undoneBy: aSeq.optional(),
});

const entriesBegin = ',"entries":[';
const isStream = (stream: StreamNo): boolean =>
  stream > studioStream || [studioStream, coatStream, pieceStream, firedStream].includes(stream);

/** Everything but the entries, from an export's first line. */
const readHead = (line: string, isLast: boolean): ExportHead => {
  const format = Number(/^\{"format":(\d+),/.exec(line)?.[1]);
  if (Number.isNaN(format)) throw new ImportProblem({ kind: 'not-an-export' });
  if (format > exportFormat) throw new ImportProblem({ kind: 'newer-format', format });
  if (!line.endsWith(entriesBegin))
    throw new ImportProblem(isLast ? { kind: 'cut-off', line: 1 } : { kind: 'damaged', line: 1 });
  try {
    const found = head.parse(JSON.parse(`${line.slice(0, -entriesBegin.length)}}`));
    if ('since' in found) throw new ImportProblem({ kind: 'a-part' });
    return found;
  } catch (error) {
    if (error instanceof ImportProblem) throw error;
    throw new ImportProblem({ kind: 'damaged', line: 1 });
  }
};

const entryOf = (json: string): Entry<LoggedEvent> & Notes => {
  const { entry, event, note, noteRemoved, undoneBy, ...rest } = entryLine.parse(JSON.parse(json));
  const [at, loggedAt] = [readIsoInstant(rest.at), readIsoInstant(rest.loggedAt)];
  const id = entryId(rest.stream, rest.seq);
  if (at === undefined || loggedAt === undefined || id !== entry || !isStream(rest.stream))
    throw new Error('no entry of ours');
  const read = readEvent(rest.stream, JSON.stringify(event));
  return { ...rest, id, at, loggedAt, event: read, ...definedOnly({ note, noteRemoved, undoneBy }) };
};

/** The entries after the head. It reads to the end of the file, and throws unless that is where an export ends. */
function* readEntries(lines: Iterator<string, unknown>): Generator<Entry<LoggedEvent> & Notes> {
  const last = new Map<StreamNo, Seq>();
  /** The first undo of each entry, by the undos themselves and by what is said of the undone. */
  const undos = new Map<string, Seq>();
  const undone = new Map<string, { by: Seq; line: number }>();
  let [line, comma] = [1, true];
  for (;;) {
    const next = lines.next();
    line += 1;
    if (next.done === true) throw new ImportProblem({ kind: 'cut-off', line: line - 1 });
    if (next.value === ']}') break;
    let entry: Entry<LoggedEvent> & Notes;
    try {
      if (!comma) throw new Error('no comma before it');
      comma = next.value.endsWith(',');
      entry = entryOf(comma ? next.value.slice(0, -1) : next.value);
      if (entry.seq !== (last.get(entry.stream) ?? 0) + 1) throw new Error('an entry is missing');
    } catch {
      throw new ImportProblem({ kind: lines.next().done === true ? 'cut-off' : 'damaged', line });
    }
    last.set(entry.stream, entry.seq);
    if (entry.undoneBy !== undefined) undone.set(entry.id, { by: entry.undoneBy, line });
    if (entry.event.kind === 'undo') {
      const of = entryId(entry.stream, seq(entry.event.of));
      if (!undos.has(of)) undos.set(of, entry.seq);
    }
    yield entry;
  }
  const rest = lines.next();
  if (rest.done !== true && rest.value !== '') throw new ImportProblem({ kind: 'damaged', line: line + 1 });
  for (const [id, { by, line: at }] of undone)
    if (undos.get(id) !== by) throw new ImportProblem({ kind: 'damaged', line: at });
}

/** An export, read line by line as it was written: the head at once, the entries when they are asked for. */
export const readExport = (
  lines: Iterator<string, unknown>,
): { head: ExportHead; entries: Iterable<Entry<LoggedEvent> & Notes> } => {
  const first = lines.next();
  if (first.done === true) throw new ImportProblem({ kind: 'not-an-export' });
  const bare = first.value.endsWith(entriesBegin);
  return { head: readHead(first.value, !bare && lines.next().done === true), entries: readEntries(lines) };
};
