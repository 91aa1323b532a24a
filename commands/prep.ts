import { logs, type Logging, type Reply } from '../src/contract/contract.ts';
import { entryStamp } from '../src/contract/entryStamp.ts';
import { cone } from '../src/contract/kinds/bisque.ts';
import { bucket } from '../src/contract/kinds/bucket.ts';
import { pick, several, yesNo } from '../src/contract/kinds/picks.ts';
import { pieces } from '../src/contract/kinds/pieces.ts';
import { length, percent } from '../src/contract/kinds/quantities.ts';
import { text } from '../src/contract/kinds/texts.ts';
import { hourAhead } from '../src/contract/kinds/when.ts';
import { pieceReply } from '../src/replies/piece/pieceReply.ts';
import type { PieceState } from '../src/studio/piece/foldPieces.ts';
import { resists } from '../src/studio/resist/overnight.ts';
import { prepSteps, surfaces, underglazes, type PieceSaid, type PrepStep } from '../src/studio/piece/pieceEvent.ts';
import { pieceNamed } from '../src/studio/piece/pieceNamed.ts';
import { planPiece } from '../src/studio/piece/planPiece.ts';
import { choiceWords } from '../src/words/desk/choiceWords.ts';

const tick = async (piece: PieceState, steps: PrepStep[], context: Logging): Promise<Reply> => {
  const { words, book, member, role } = context;
  const refuse = (title: Reply['title']): Reply => ({ kind: 'refusal', title, data: { piece: piece.id } });
  if (piece.by !== member && role !== 'keeper') return refuse(words.prep.notYours(piece.id));
  if (steps.some((step) => !piece.steps.includes(step))) return refuse(words.prep.noSuchStep(piece.steps));
  const fresh = steps.filter((step) => !piece.done.some((one) => one.step === step));
  if (fresh.length === 0) return refuse(words.prep.allDone);
  const { entry } = await book.logPiece(
    { kind: 'done', of: piece.seq, steps: fresh },
    entryStamp(context, {}),
  );
  const after = (await book.pieces()).find(({ seq }) => seq === piece.seq);
  return pieceReply(after ?? piece, context, entry.id);
};

/** A plan made before, said to be one: whoever typed a name may have meant a new piece. */
const goOn = async (piece: PieceState, context: Logging): Promise<Reply> => {
  const w = context.words.prep;
  const reply = await pieceReply(piece, context);
  return {
    ...reply,
    title: w.goesOn(piece.id, piece.done.length === piece.steps.length, reply.title),
    reasons: [...(reply.reasons ?? []), w.another],
  };
};

const plan = async (said: PieceSaid, context: Logging): Promise<Reply> => {
  const { book, now, member } = context;
  const around = {
    now,
    studio: await book.studio(),
    bucket: await book.bucket(said.bucket),
    second: said.second === undefined ? undefined : await book.bucket(said.second),
    coats: (await book.coats()).filter(({ by }) => by === member),
    done: [],
  };
  if (!around.bucket) throw new Error(`bucket ${said.bucket} was read and is not there`);
  const steps = planPiece(said, { ...around, bucket: around.bucket }).steps.map(({ step }) => step);
  const { entry } = await book.logPiece({ kind: 'piece', piece: said, steps }, entryStamp(context, {}));
  const piece = { id: entry.id, seq: entry.seq, by: member, at: entry.at, said, steps, done: [] };
  return pieceReply(piece, context, entry.id);
};

export const prep = logs({
  name: 'prep',
  about: (w) => w.prep.about,
  who: 'member',
  private: true,
  form: ['piece', 'bucket', 'resist', 'thickness', 'when'],
  options: {
    piece: { kind: pieces, needed: true, about: (w) => w.prep.piece },
    bucket: { kind: bucket, needed: false, about: (w) => w.prep.bucket },
    done: {
      kind: several(prepSteps, {
        dusted: 'dust',
        dry: 'night',
        wetted: 'wet',
        dipped: 'dip',
        peeled: 'peel',
      }),
      needed: false,
      about: (w) => w.prep.done,
    },
    surface: {
      kind: pick(surfaces, { texture: 'textured', carving: 'carved', plain: 'smooth' }),
      needed: false,
      about: (w) => w.prep.surface,
    },
    underglaze: {
      kind: pick(underglazes, { no: 'none', yes: 'thin', stain: 'thin' }),
      needed: false,
      about: (w) => w.prep.underglaze,
    },
    resist: {
      kind: pick(resists, { 'melted-wax': 'hot-wax', emulsion: 'wax' }, choiceWords.resist),
      needed: false,
      about: (w) => w.prep.resist,
    },
    second: { kind: bucket, needed: false, about: (w) => w.prep.second },
    thickness: { kind: length(0.05, 10, 'mm', '1mm'), needed: false, about: (w) => w.prep.thickness },
    absorption: { kind: percent(0.1, 40, '12'), needed: false, about: (w) => w.prep.absorption },
    cone: { kind: cone, needed: false, about: (w) => w.prep.cone },
    body: { kind: text(40, 'buff stoneware'), needed: false, about: (w) => w.prep.body },
    wall: { kind: length(0.5, 100, 'mm', '6mm'), needed: false, about: (w) => w.prep.wall },
    runny: { kind: yesNo, needed: false, about: (w) => w.prep.runny },
    when: { kind: hourAhead, needed: false, about: (w) => w.prep.when },
  },
  async run(v, context) {
    const { words, book } = context;
    const w = words.prep;
    const refuse = (title: Reply['title']): Reply => ({ kind: 'refusal', title, data: {} });
    if (!v.bucket) {
      const before = pieceNamed(v.piece, await book.pieces(), context.member);
      if (before && v.done) return tick(before, v.done, context);
      if (before) return goOn(before, context);
      return refuse(v.done ? w.noPiece(v.piece) : w.noBucket);
    }
    if (v.second?.no === v.bucket.no) return refuse(w.sameSecond);
    const planned = await plan(
      {
        name: v.piece,
        bucket: v.bucket.no,
        surface: v.surface ?? 'smooth',
        underglaze: v.underglaze ?? 'none',
        ...(v.second && { second: v.second.no }),
        ...(v.resist && { resist: v.resist }),
        ...(v.body !== undefined && { body: v.body }),
        ...(v.absorption !== undefined && { absorption: v.absorption }),
        ...(v.cone !== undefined && { cone: v.cone }),
        ...(v.wall !== undefined && { wall: v.wall }),
        ...(v.thickness !== undefined && { thickness: v.thickness }),
        ...(v.runny !== undefined && { runny: v.runny }),
        ...(v.when !== undefined && { plannedFor: v.when }),
      },
      context,
    );
    const piece = v.done && (await book.pieces()).findLast(({ by }) => by === context.member);
    return piece && v.done ? tick(piece, v.done, context) : planned;
  },
});
