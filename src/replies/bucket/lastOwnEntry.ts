import { choice, pressToRun } from '../../contract/replyParts.ts';
import { refusal, type Asking, type Reply } from '../../contract/contract.ts';
import { coatStream, firedStream, pieceStream } from '../../studio/ids.ts';
import { notUndoable } from '../../studio/logbook/undoable.ts';
import { describeEntry } from './describeEntry.ts';

/** As many of the last entries are looked through, in the buckets and beside them. */
const most = 40;

/** “Undo” without an entry: the last one that this person logged and may take back, for one press. */
export const lastOwnEntry = async (asking: Asking): Promise<Reply> => {
  const { book, words, member } = asking;
  const beside = [coatStream, pieceStream, firedStream].map((stream) => book.entries(stream, { most }));
  const entries = (await Promise.all([book.latest({ most }), ...beside])).flat();
  const [last] = entries
    .filter((entry) => entry.by === member && notUndoable(entry, asking) === undefined)
    .sort((a, b) => b.loggedAt - a.loggedAt || b.seq - a.seq);
  if (!last) return refusal(words.undo.noneOfYours);
  const bucket = (await book.buckets()).find(({ no }) => no === last.stream);
  const title = bucket ? words.undo.lastIn(last.id, bucket.settings.name) : words.undo.last(last.id);
  return {
    ...choice(title, [pressToRun(words.undo.takeBack, 'undo', { entry: last.id })], { entry: last.id }),
    reasons: [await describeEntry(last, asking)],
  };
};
