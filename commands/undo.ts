import { definedOnly } from '../src/definedOnly.ts';
import { logs, optional, refusal } from '../src/contract/contract.ts';
import { describeEntry } from '../src/replies/bucket/describeEntry.ts';
import { entry as entryKind } from '../src/contract/kinds/studioThings.ts';
import { stampNow } from '../src/contract/entryStamp.ts';
import { lastOwnEntry } from '../src/replies/bucket/lastOwnEntry.ts';
import { verdictReply } from '../src/replies/verdict/verdictReply.ts';
import { coatStream, entryId, firedStream, pieceStream, studioStream } from '../src/studio/ids.ts';
import { lastKeeperGoes } from '../src/studio/settings/lastKeeper.ts';
import { otherHalf } from '../src/studio/logbook/otherHalf.ts';
import { notUndoable } from '../src/studio/logbook/undoable.ts';

export const undo = logs({
  name: 'undo',
  about: (w) => w.undo.about,
  who: 'member',
  options: { entry: optional(entryKind, (w) => w.undo.entry) },
  async run(v, context) {
    if (!v.entry) return lastOwnEntry(context);
    const { words, book, now, member, role } = context;
    const id = entryId(v.entry.stream, v.entry.seq);
    const found = await book.entry(id);
    const refuse = (title: ReturnType<typeof words.undo.none>) => refusal(title, { entry: id });
    if (!found) return refuse(words.undo.none(id));
    const why = notUndoable(found, { member, role, now });
    if (why) return refuse(words.undo.not(why, id));
    const logged = stampNow(context);
    const what = await describeEntry(found, context);
    if (v.entry.stream <= studioStream) {
      const undo = { kind: 'undo', of: v.entry.seq } as const;
      const studio = await book.studio();
      const own = v.entry.stream === coatStream || v.entry.stream === pieceStream;
      const { entry } =
        v.entry.stream === coatStream
          ? await book.logCoat(undo, logged)
          : v.entry.stream === pieceStream
            ? await book.logPiece(undo, logged)
            : v.entry.stream === firedStream
              ? await book.logFired(undo, logged)
              : await book.logStudio(undo, logged);
      if (lastKeeperGoes(studio, await book.studio(), member)) return refuse(words.studio.lastKeeper);
      return {
        kind: 'answer',
        title: words.undo.done(id),
        reasons: [what],
        ...(own && { private: true }),
        data: { entry: entry.id, undone: id },
      };
    }
    const before = await book.bucket(v.entry.stream);
    const { entry, state } = await book.log(v.entry.stream, { kind: 'undo', of: v.entry.seq }, logged);
    const other = await otherHalf(found, book);
    if (other) await book.log(other.stream, { kind: 'undo', of: other.seq }, logged);
    return verdictReply(state, context, {
      entry,
      ...definedOnly({ before }),
      first: words.undo.done(id, other?.id),
      text: words.undo.tookBack(what),
      reasons: [...(other ? [await describeEntry(other, context)] : [])],
      data: { undone: id, ...definedOnly({ alsoUndone: other?.id }) },
    });
  },
});
