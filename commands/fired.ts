import { definedOnly } from '../src/definedOnly.ts';
import { logs, needed, optional, refusal, type Logging } from '../src/contract/contract.ts';
import { entryStamp } from '../src/contract/entryStamp.ts';
import { firedReply } from '../src/replies/firing/firedReply.ts';
import { bisque, cone } from '../src/contract/kinds/bisque.ts';
import { bucket } from '../src/contract/kinds/bucket.ts';
import { piecesFired, result } from '../src/contract/kinds/fired.ts';
import { entry as entryKind } from '../src/contract/kinds/studioThings.ts';
import { text } from '../src/contract/kinds/texts.ts';
import { stretchPast, whenPast } from '../src/contract/kinds/when.ts';
import { noteOption } from '../src/contract/kinds/usualOptions.ts';
import { areSamePieces } from '../src/studio/resist/resistCoat.ts';
import { dipsOf } from '../src/studio/logbook/dipsOf.ts';
import type { FiredSaid } from '../src/studio/firing/firedEvent.ts';
import { notUndoable } from '../src/studio/logbook/undoable.ts';
import { coatStream, entryId, readEntryId, type Instant, type MemberId } from '../src/studio/ids.ts';
import { pieceNamed } from '../src/studio/piece/pieceNamed.ts';

/** How many entries back a coat is looked for. */
const coatEntries = 1000;

/** The plan and the resist coat that go by a piece's name, from before the dip or the firing. */
const prepared = async (
  typed: string,
  before: Instant,
  { book, member }: Logging,
): Promise<Pick<FiredSaid, 'plan' | 'coat'>> => {
  const plan = pieceNamed(typed, await book.pieces(), member);
  const [by, name]: [MemberId, string] = plan ? [plan.by, plan.said.name] : [member, typed];
  const named = readEntryId(typed);
  const coat = (await book.entries(coatStream, { most: coatEntries })).find(
    (entry) =>
      entry.undoneBy === undefined &&
      entry.event.kind === 'on' &&
      entry.at <= before &&
      (named?.stream === coatStream
        ? entry.seq === named.seq
        : entry.by === by && areSamePieces(entry.event.pieces, name)),
  );
  return definedOnly({ plan: plan?.seq, coat: coat?.seq });
};

export const fired = logs({
  name: 'fired',
  about: (w) => w.fired.about,
  who: 'member',
  form: ['bucket', 'result', 'pieces', 'dipped', 'note'],
  options: {
    bucket: needed(bucket, (w) => w.fired.bucket),
    result: needed(result, (w) => w.fired.result),
    pieces: optional(piecesFired, (w) => w.fired.pieces),
    dipped: optional(stretchPast, (w) => w.fired.dipped),
    over: optional(bucket, (w) => w.fired.over),
    piece: optional(text(120, 'tall jug'), (w) => w.fired.piece),
    body: optional(text(40, 'buff stoneware'), (w) => w.fired.body),
    cone: optional(cone, (w) => w.fired.cone),
    kiln: optional(text(40, 'the big one'), (w) => w.fired.kiln),
    bisque: optional(bisque, (w) => w.fired.bisque),
    instead: optional(entryKind, (w) => w.fired.instead),
    when: optional(whenPast, (w) => w.fired.when),
    note: noteOption,
  },
  async run(v, context) {
    const { words, book, now, member, role } = context;
    const stamp = entryStamp(context, v);
    const w = words.fired;
    const found = v.result.filter((one) => one !== 'good');
    if (found.length > 0 && found.length < v.result.length)
      return refusal(w.goodAndFaults(v.result.join(', ')));
    if (found.length === 0 && (v.pieces?.faulty ?? 0) > 0) return refusal(w.goodWithFaulty);
    if (v.over?.no === v.bucket.no) return refusal(w.sameLayer);
    const instead = v.instead && entryId(v.instead.stream, v.instead.seq);
    const replaced = instead && (await book.entry(instead));
    if (instead && replaced?.event.kind !== 'fired') return refusal(w.noResult(instead));
    const keeps = replaced && notUndoable(replaced, { member, role, now });
    if (instead && keeps) return refusal(words.undo.not(keeps, instead));
    const piece = v.piece === undefined ? {} : await prepared(v.piece, v.dipped?.to ?? stamp.at, context);
    if (v.piece !== undefined && piece.plan === undefined && piece.coat === undefined)
      return refusal(w.noPiece(v.piece));
    const said: FiredSaid = {
      bucket: v.bucket.no,
      faults: found,
      ...definedOnly({
        over: v.over?.no,
        pieces: v.pieces?.pieces,
        faulty: found.length > 0 ? v.pieces?.faulty : undefined,
        dipped: v.dipped,
        ...piece,
        body: v.body,
        cone: v.cone,
        kiln: v.kiln,
      }),
      ...v.bisque,
    };
    if (replaced) await book.logFired({ kind: 'undo', of: replaced.seq }, entryStamp(context, {}));
    const { entry } = await book.logFired({ kind: 'fired', fired: said }, stamp);
    const [dip] = await dipsOf([{ id: entry.id, seq: entry.seq, by: member, at: entry.at, said }], book);
    if (!dip) throw new Error(`${entry.id} was kept and is not there`);
    return firedReply(dip, v.bucket.settings.name, context);
  },
});
