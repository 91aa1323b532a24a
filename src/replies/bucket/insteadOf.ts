import { pressToRun } from '../../contract/replyParts.ts';
import { entryId } from '../../studio/ids.ts';
import { notUndoable } from '../../studio/logbook/undoable.ts';
import type { Entry } from '../../studio/entry.ts';
import type { BucketEvent, BucketEntry } from '../../studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { isFlagged } from '../../studio/bucket/withoutFlagged.ts';
import { refusal, type Action, type Logging, type Reply } from '../../contract/contract.ts';
import type { ReadGravity } from './readGravity.ts';
import { perhapsOf } from '../../studio/measure/whichBucket.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';
import type { Text } from '../../words/text/text.ts';

export type Replaced =
  | { kind: 'none' }
  | { kind: 'reading'; entry: Entry<unknown>; takeBack: () => Promise<BucketState> }
  | { kind: 'refused'; reply: Reply };

/** The reading that a new one replaces, and how to take it back. */
export const readingReplaced = async (
  named: { stream: BucketState['no']; seq: BucketEntry['seq'] } | undefined,
  { words, book, now, member, role }: Logging,
): Promise<Replaced> => {
  if (!named) return { kind: 'none' };
  const id = entryId(named.stream, named.seq);
  const entry = await book.entry(id);
  if (entry?.event.kind !== 'reading')
    return { kind: 'refused', reply: refusal(words.reading.noReading(id)) };
  const keeps = notUndoable(entry, { member, role, now });
  if (keeps) return { kind: 'refused', reply: refusal(words.undo.not(keeps, id)) };
  return {
    kind: 'reading',
    entry,
    takeBack: async () => {
      const logged = { at: now, loggedAt: now, by: member };
      return (await book.log(named.stream, { kind: 'undo', of: named.seq }, logged)).state;
    },
  };
};

/** The same reading logged otherwise, and this one taken back. */
export const logInstead = (
  { id, at }: Pick<BucketEntry, 'id' | 'at'>,
  changed: Record<string, string>,
  { label, after, typed }: { label: Text; after: BucketState['seq']; typed: Record<string, string> },
): Action => pressToRun(label, 'reading', { ...typed, ...changed, when: isoInstant(at), instead: id }, after);

interface Read {
  entry: BucketEntry;
  event: Extract<BucketEvent, { kind: 'reading' }>;
  before: BucketState;
  after: BucketState;
  isReplaced: boolean;
}

/** Asks whether a reading that is odd for its bucket was of another, which it fits. */
export const wasItThat = async (
  entry: BucketEntry,
  event: Extract<BucketEvent, { kind: 'reading' }>,
  { before, after }: { before: BucketState; after: BucketState },
  { words, book, typed }: Logging,
): Promise<{ reasons: Text[]; actions: Action[] }> => {
  const none = { reasons: [], actions: [] };
  if (!event.gravity || after.believed?.seq !== entry.seq) return none;
  // Two odd readings that agree are of one bucket.
  if (isFlagged(before) && !isFlagged(after)) return none;
  const other = perhapsOf(event, { before, others: await book.buckets(), at: entry.at });
  if (!other) return none;
  const { name } = other.settings;
  const label = words.reading.itWas(name);
  return {
    reasons: [words.reading.wasItThat(name, before.settings.name)],
    actions: [logInstead(entry, { bucket: String(other.no) }, { label, after: other.seq, typed })],
  };
};

/** What a reading asks back: how else its weight could be meant, or whether it was of another bucket. */
export const askAgain = async (
  found: ReadGravity,
  { entry, event, before, after, isReplaced }: Read,
  context: Logging,
): Promise<{ reasons: Text[]; actions: Action[] }> => {
  // Who has just said that it was another bucket is not asked again.
  if (isReplaced) return { reasons: [], actions: [] };
  if (found.kind !== 'gravity' || !found.otherWay) return wasItThat(entry, event, { before, after }, context);
  const { weighed, gravity } = found.otherWay;
  const label = context.words.reading.weighedWay(weighed, gravity);
  const line = logInstead(entry, { weighed }, { label, after: after.seq, typed: context.typed });
  return { reasons: [], actions: [line] };
};
