import { logs, type Logging, type Reply } from '../src/contract/contract.ts';
import { entryStamp } from '../src/contract/entryStamp.ts';
import { firedReply } from '../src/replies/firing/firedReply.ts';
import { bisque, cone } from '../src/contract/kinds/bisque.ts';
import { bucket } from '../src/contract/kinds/bucket.ts';
import { piecesFired, result } from '../src/contract/kinds/fired.ts';
import { entry as entryKind } from '../src/contract/kinds/studioThings.ts';
import { note, text } from '../src/contract/kinds/texts.ts';
import { stretchPast } from '../src/contract/kinds/when.ts';
import { areSamePieces } from '../src/studio/resist/resistCoat.ts';
import { dipsOf } from '../src/studio/logbook/dipsOf.ts';
import { faults, type Fault, type FiredSaid, type Stretch } from '../src/studio/firing/firedEvent.ts';
import { notUndoable } from '../src/studio/logbook/undoable.ts';
import { coatStream, entryId, readEntryId, type MemberId } from '../src/studio/ids.ts';
import { pieceNamed } from '../src/studio/piece/pieceNamed.ts';

/** As far back as a coat is looked for. */
const coatEntries = 1000;

const isFault = (one: 'good' | Fault): one is Fault => faults.some((fault) => fault === one);

/** The plan and the resist coat that a piece's name stands for. */
const prepared = async (
  typed: string,
  dipped: Stretch | undefined,
  { book, member, happenedAt }: Logging,
): Promise<Pick<FiredSaid, 'plan' | 'coat'>> => {
  const plan = pieceNamed(typed, await book.pieces(), member);
  const [by, name]: [MemberId, string] = plan ? [plan.by, plan.said.name] : [member, typed];
  const named = readEntryId(typed);
  const coat = (await book.entries(coatStream, { most: coatEntries })).find(
    (entry) =>
      entry.undoneBy === undefined &&
      entry.event.kind === 'on' &&
      entry.at <= (dipped?.to ?? happenedAt) &&
      (named?.stream === coatStream
        ? entry.seq === named.seq
        : entry.by === by && areSamePieces(entry.event.pieces, name)),
  );
  return { ...(plan && { plan: plan.seq }), ...(coat && { coat: coat.seq }) };
};

export const fired = logs({
  name: 'fired',
  about: (w) => w.fired.about,
  who: 'member',
  form: ['bucket', 'result', 'pieces', 'dipped', 'note'],
  options: {
    bucket: { kind: bucket, needed: true, about: (w) => w.fired.bucket },
    result: { kind: result, needed: true, about: (w) => w.fired.result },
    pieces: { kind: piecesFired, needed: false, about: (w) => w.fired.pieces },
    dipped: { kind: stretchPast, needed: false, about: (w) => w.fired.dipped },
    over: { kind: bucket, needed: false, about: (w) => w.fired.over },
    piece: { kind: text(120, 'tall jug'), needed: false, about: (w) => w.fired.piece },
    body: { kind: text(40, 'buff stoneware'), needed: false, about: (w) => w.fired.body },
    cone: { kind: cone, needed: false, about: (w) => w.fired.cone },
    kiln: { kind: text(40, 'the big one'), needed: false, about: (w) => w.fired.kiln },
    bisque: { kind: bisque, needed: false, about: (w) => w.fired.bisque },
    instead: { kind: entryKind, needed: false, about: (w) => w.fired.instead },
    note: { kind: note, needed: false, about: (w) => w.note },
  },
  async run(v, context) {
    const { words, book, now, member, role } = context;
    const w = words.fired;
    const refuse = (title: Reply['title']): Reply => ({ kind: 'refusal', title, data: {} });
    const found = v.result.filter(isFault);
    if (found.length > 0 && found.length < v.result.length)
      return refuse(w.goodAndFaults(v.result.join(', ')));
    if (found.length === 0 && (v.pieces?.faulty ?? 0) > 0) return refuse(w.goodWithFaulty);
    if (v.over?.no === v.bucket.no) return refuse(w.sameLayer);
    const instead = v.instead && entryId(v.instead.stream, v.instead.seq);
    const replaced = instead && (await book.entry(instead));
    if (instead && replaced?.event.kind !== 'fired') return refuse(w.noResult(instead));
    const keeps = replaced && notUndoable(replaced, { member, role, now });
    if (instead && keeps) return refuse(words.undo.not(keeps, instead));
    const piece = v.piece === undefined ? {} : await prepared(v.piece, v.dipped, context);
    if (v.piece !== undefined && piece.plan === undefined && piece.coat === undefined)
      return refuse(w.noPiece(v.piece));
    const said: FiredSaid = {
      bucket: v.bucket.no,
      faults: found,
      ...(v.over && { over: v.over.no }),
      ...(v.pieces && { pieces: v.pieces.pieces }),
      ...(v.pieces?.faulty !== undefined && found.length > 0 && { faulty: v.pieces.faulty }),
      ...(v.dipped && { dipped: v.dipped }),
      ...piece,
      ...(v.body !== undefined && { body: v.body }),
      ...(v.cone !== undefined && { cone: v.cone }),
      ...(v.kiln !== undefined && { kiln: v.kiln }),
      ...v.bisque,
    };
    if (replaced) await book.logFired({ kind: 'undo', of: replaced.seq }, entryStamp(context, {}));
    const { entry } = await book.logFired({ kind: 'fired', fired: said }, entryStamp(context, v));
    const [dip] = await dipsOf([{ id: entry.id, seq: entry.seq, by: member, at: entry.at, said }], book);
    if (!dip) throw new Error(`${entry.id} was kept and is not there`);
    return firedReply(dip, v.bucket.settings.name, context);
  },
});
