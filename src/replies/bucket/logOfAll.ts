import { pressToEdit } from '../../contract/replyParts.ts';
import { definedOnly } from '../../definedOnly.ts';
import { entryId, readEntryId } from '../../studio/ids.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';
import type { Asking, Reply } from '../../contract/contract.ts';
import { printLine } from '../../contract/parseLine.ts';
import { describeEntry } from './describeEntry.ts';

/** What was logged in all buckets, the last first: a page from one entry on. */
export const logOfAll = async (
  { from, most }: { from?: string; most: number },
  asking: Asking,
): Promise<Reply> => {
  const { words, book } = asking;
  const place = from === undefined ? undefined : readEntryId(from);
  const first = place && (await book.entry(entryId(place.stream, place.seq)));
  // One more than is shown tells whether there is more.
  const entries = await book.latest({ most: most + 1, ...(first && { from: first }) });
  const shown = entries.slice(0, most);
  const names = new Map((await book.buckets()).map(({ no, settings }) => [no, settings.name]));
  const lines = await Promise.all(shown.map((entry) => describeEntry(entry, asking)));
  const onFrom = (id: string) => printLine(['bucket', 'log'], { ...asking.typed, from: id });
  return {
    kind: 'answer',
    title: words.bucket.logOfAll(shown.length),
    facts: shown.map(({ stream }, i) => ({
      label: words.round.bucket(stream, names.get(stream) ?? ''),
      text: lines[i] ?? [],
    })),
    actions: [pressToEdit(words.bucket.logOfOne, 'bucket log')],
    more: { of: 'facts', label: words.bucket.older, from: entries.map(({ id }) => onFrom(id)) },
    data: {
      entries: shown.map((entry) => ({
        entry: entry.id,
        at: isoInstant(entry.at),
        ...definedOnly({ note: entry.note, undoneBy: entry.undoneBy }),
        kind: entry.event.kind,
      })),
    },
  };
};
