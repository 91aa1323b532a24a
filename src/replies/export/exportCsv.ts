import type { Added, BucketEvent } from '../../studio/bucket/bucketEvent.ts';
import type { Entry } from '../../studio/entry.ts';
import type { LoggedEvent, Logbook } from '../../studio/logbook/ports.ts';
import { csvLine, type CsvCell } from './csvLine.ts';
import { exportEntries, type ExportScope } from './exportEntries.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';

/** The columns: readings of a bucket and what was done to it. Units are in the names. */
export const csvColumns = [
  'entry',
  'bucket',
  'name',
  'at_utc',
  'logged_at_utc',
  'by',
  'kind',
  'gravity_sg',
  'gravity_u95_sg',
  'flow_cup',
  'flow_s',
  'look',
  'gap_mm',
  'temperature_c',
  'stirred',
  'seen',
  'added',
  'volume_ml',
  'mass_g',
  'heptahydrate_g',
  'stir_min',
  'tool',
  'mesh',
  'taken_back_by',
  'note',
] as const;
type Row = Partial<Record<(typeof csvColumns)[number], CsvCell>>;

const measure = (added: Added, name: 'volume' | 'mass' | 'heptahydrate'): number | undefined =>
  Object.entries(added).flatMap(([key, value]) =>
    key === name && typeof value === 'number' ? [value] : [],
  )[0];

const figures = (event: BucketEvent): Row | undefined => {
  switch (event.kind) {
    case 'reading':
      return {
        gravity_sg: event.gravity?.value,
        gravity_u95_sg: event.gravity?.u95,
        flow_cup: event.flow?.cup,
        flow_s: event.flow?.seconds,
        look: event.look,
        gap_mm: event.gap,
        volume_ml: event.level,
        temperature_c: event.temperature,
        stirred: event.stirred,
        seen: event.seen.join(' '),
      };
    case 'addition': {
      const { added } = event;
      return {
        added: added.what === 'other' ? (added.name ?? 'other') : added.what,
        volume_ml: measure(added, 'volume'),
        mass_g: measure(added, 'mass'),
        heptahydrate_g: measure(added, 'heptahydrate'),
      };
    }
    case 'stir':
      return {
        stir_min: event.minutes,
        tool: event.tool,
        look: event.look,
        seen: event.seen.join(' '),
      };
    case 'sieve':
      return { mesh: event.mesh };
    default:
      return undefined;
  }
};

const isOfBucket = (entry: Entry<LoggedEvent>): entry is Entry<BucketEvent> => entry.stream > 0;

/** Readings, additions, stirs and sievings as CSV, in chunks, one row for each entry. */
export async function* exportCsv(
  book: Logbook,
  scope: ExportScope,
  someone: string,
): AsyncGenerator<{ text: string; entries: number }> {
  const people = new Map((await book.members()).map(({ id, name }) => [id, name]));
  const buckets = new Map((await book.buckets()).map(({ no, settings }) => [no, settings.name]));
  yield { text: csvLine(csvColumns), entries: 0 };
  for await (const entries of exportEntries(book, scope)) {
    const lines = entries.flatMap((entry) => {
      const row = isOfBucket(entry) ? figures(entry.event) : undefined;
      if (!row) return [];
      const whole: Row = {
        entry: entry.id,
        bucket: entry.stream,
        name: buckets.get(entry.stream),
        at_utc: isoInstant(entry.at),
        logged_at_utc: isoInstant(entry.loggedAt),
        by: people.get(entry.by) ?? someone,
        kind: entry.event.kind,
        ...row,
        taken_back_by: entry.undoneBy === undefined ? undefined : `${entry.stream}-${entry.undoneBy}`,
        note: entry.note,
      };
      return [csvLine(csvColumns.map((name) => whole[name]))];
    });
    if (lines.length > 0) yield { text: lines.join(''), entries: lines.length };
  }
}
