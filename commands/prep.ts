import { definedOnly } from '../src/definedOnly.ts';
import { logs, needed, optional, refusal, type Logging, type Reply } from '../src/contract/contract.ts';
import { entryStamp } from '../src/contract/entryStamp.ts';
import { cone } from '../src/contract/kinds/bisque.ts';
import { bucket } from '../src/contract/kinds/bucket.ts';
import { pick, several, yesNo } from '../src/contract/kinds/picks.ts';
import { pieces } from '../src/contract/kinds/pieces.ts';
import { length, percent } from '../src/contract/kinds/quantities.ts';
import { text } from '../src/contract/kinds/texts.ts';
import { hourAhead, whenPast } from '../src/contract/kinds/when.ts';
import type { Logged } from '../src/studio/logbook/ports.ts';
import { pieceReply } from '../src/replies/piece/pieceReply.ts';
import type { PieceState } from '../src/studio/piece/foldPieces.ts';
import { resists } from '../src/studio/resist/overnight.ts';
import {
  prepSteps,
  surfaces,
  underglazes,
  type PieceSaid,
  type PrepStep,
} from '../src/studio/piece/pieceEvent.ts';
import { pieceNamed } from '../src/studio/piece/pieceNamed.ts';
import { planPiece } from '../src/studio/piece/planPiece.ts';
import { choiceWords } from '../src/words/desk/choiceWords.ts';

const tickStep = async (
  piece: PieceState,
  steps: PrepStep[],
  stamp: Logged,
  context: Logging,
): Promise<Reply> => {
  const { words, book, member, role } = context;
  const about = { piece: piece.id };
  if (piece.by !== member && role !== 'keeper') return refusal(words.prep.notYours(piece.id), about);
  if (steps.some((step) => !piece.steps.includes(step)))
    return refusal(words.prep.noSuchStep(piece.steps), about);
  const fresh = steps.filter((step) => !piece.done.some((one) => one.step === step));
  if (fresh.length === 0) return refusal(words.prep.allDone, about);
  const { entry } = await book.logPiece({ kind: 'done', of: piece.seq, steps: fresh }, stamp);
  const after = (await book.pieces()).find(({ seq }) => seq === piece.seq);
  return pieceReply(after ?? piece, context, entry.id);
};

/** Shows an existing plan and says so: the same name may have been meant for a new piece. */
const showExistingPlan = async (piece: PieceState, context: Logging): Promise<Reply> => {
  const w = context.words.prep;
  const reply = await pieceReply(piece, context);
  return {
    ...reply,
    title: w.goesOn(piece.id, piece.done.length === piece.steps.length, reply.title),
    reasons: [...(reply.reasons ?? []), w.another],
  };
};

const makePlan = async (said: PieceSaid, stamp: Logged, context: Logging): Promise<Reply> => {
  const { book, now, member } = context;
  const bucket = await book.bucket(said.bucket);
  if (!bucket) throw new Error(`bucket ${said.bucket} was read and is not there`);
  const second = said.second === undefined ? undefined : await book.bucket(said.second);
  const coats = (await book.coats()).filter(({ by }) => by === member);
  const around = { now, studio: await book.studio(), bucket, second, coats, done: [] };
  const steps = planPiece(said, around).steps.map(({ step }) => step);
  const { entry } = await book.logPiece({ kind: 'piece', piece: said, steps }, stamp);
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
    piece: needed(pieces, (w) => w.prep.piece),
    bucket: optional(bucket, (w) => w.prep.bucket),
    done: optional(
      several(prepSteps, { dusted: 'dust', dry: 'night', wetted: 'wet', dipped: 'dip', peeled: 'peel' }),
      (w) => w.prep.done,
    ),
    surface: optional(
      pick(surfaces, { texture: 'textured', carving: 'carved', plain: 'smooth' }),
      (w) => w.prep.surface,
    ),
    underglaze: optional(
      pick(underglazes, { no: 'none', yes: 'thin', stain: 'thin' }),
      (w) => w.prep.underglaze,
    ),
    resist: optional(
      pick(resists, { 'melted-wax': 'hot-wax', emulsion: 'wax' }, choiceWords.resist),
      (w) => w.prep.resist,
    ),
    second: optional(bucket, (w) => w.prep.second),
    thickness: optional(length(0.05, 10, 'mm', '1mm'), (w) => w.prep.thickness),
    absorption: optional(percent(0.1, 40, '12'), (w) => w.prep.absorption),
    cone: optional(cone, (w) => w.prep.cone),
    body: optional(text(40, 'buff stoneware'), (w) => w.prep.body),
    wall: optional(length(0.5, 100, 'mm', '6mm'), (w) => w.prep.wall),
    runny: optional(yesNo, (w) => w.prep.runny),
    when: optional(hourAhead, (w) => w.prep.when),
    'done-at': optional(whenPast, (w) => w.prep.doneAt),
  },
  async run(v, context) {
    const { words, book } = context;
    const { resist, body, absorption, cone, wall, thickness, runny } = v;
    const stamp = entryStamp(context, { when: v['done-at'] });
    const w = words.prep;
    if (!v.bucket) {
      const before = pieceNamed(v.piece, await book.pieces(), context.member);
      if (before && v.done) return tickStep(before, v.done, stamp, context);
      if (before) return showExistingPlan(before, context);
      return refusal(v.done ? w.noPiece(v.piece) : w.noBucket);
    }
    if (v.second?.no === v.bucket.no) return refusal(w.sameSecond);
    const planned = await makePlan(
      {
        name: v.piece,
        bucket: v.bucket.no,
        surface: v.surface ?? 'smooth',
        underglaze: v.underglaze ?? 'none',
        ...definedOnly({ second: v.second?.no, resist, body, absorption, cone, wall, thickness, runny }),
        ...definedOnly({ plannedFor: v.when }),
      },
      stamp,
      context,
    );
    const piece = v.done && (await book.pieces()).findLast(({ by }) => by === context.member);
    return piece && v.done ? tickStep(piece, v.done, stamp, context) : planned;
  },
});
