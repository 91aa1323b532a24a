import type { Instant } from '../../studio/ids.ts';
import { exportFormat } from '../../studio/logbook/exportFormat.ts';
import type { Logbook } from '../../studio/logbook/ports.ts';
import { exportEntries, type ExportScope } from './exportEntries.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';

/** Everything but the entries: what is told in few words, or follows from them. */
export const exportHead = async (book: Logbook, now: Instant, scope: ExportScope) => {
  const buckets = (await book.buckets())
    .filter(({ no }) => scope.bucket === undefined || no === scope.bucket)
    // A few matrices that nobody reads: they follow from the entries.
    .map(({ belief: _, ...state }) => state);
  const whole = scope.bucket === undefined;
  const { seq: _, ...studio } = await book.studio();
  return {
    format: exportFormat,
    exportedAt: isoInstant(now),
    ...(scope.since !== undefined && { since: isoInstant(scope.since) }),
    studio,
    members: await book.members(),
    buckets,
    coats: whole ? await book.coats() : [],
    pieces: whole ? await book.pieces() : [],
    notes: whole ? await book.notes() : [],
  };
};

/** One JSON document in small chunks, one entry on each line. */
export async function* exportJson(
  book: Logbook,
  now: Instant,
  scope: ExportScope,
): AsyncGenerator<{ text: string; entries: number }> {
  const part = (text: string, entries = 0) => ({ text, entries });
  const head = await exportHead(book, now, scope);
  yield part(`${JSON.stringify(head).slice(0, -1)},"entries":[`);
  let between = '\n';
  for await (const entries of exportEntries(book, scope)) {
    const lines = entries.map(({ id, at, loggedAt, ...entry }) =>
      JSON.stringify({ entry: id, at: isoInstant(at), loggedAt: isoInstant(loggedAt), ...entry }),
    );
    if (lines.length === 0) continue;
    yield part(`${between}${lines.join(',\n')}`, lines.length);
    between = ',\n';
  }
  yield part('\n]}\n');
}
