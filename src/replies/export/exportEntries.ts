import type { Entry } from '../../studio/entry.ts';
import { seq, type Instant, type StreamNo } from '../../studio/ids.ts';
import type { LoggedEvent, Logbook, Notes } from '../../studio/logbook/ports.ts';

/** The part of the logbook to export. */
export interface ExportScope {
  bucket?: StreamNo;
  /** Only what happened from then on. */
  since?: Instant;
}

/** Read in small batches, so that nobody waits long for them. */
const stretch = 250;

/** Every entry in scope, undone ones too: stream by stream, in logged order. */
export async function* exportEntries(
  book: Logbook,
  { bucket, since }: ExportScope,
): AsyncGenerator<(Entry<LoggedEvent> & Notes)[]> {
  const streams = bucket === undefined ? await book.streams() : [bucket];
  for (const stream of streams)
    for (let after = seq(0); ;) {
      const entries = await book.history(stream, { after, most: stretch });
      const last = entries.at(-1);
      if (!last) break;
      yield since === undefined ? entries : entries.filter(({ at }) => at >= since);
      after = last.seq;
    }
}
