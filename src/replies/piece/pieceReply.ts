import { present } from '../../present.ts';
import { fact, pressToRun } from '../../contract/replyParts.ts';
import { definedOnly } from '../../definedOnly.ts';
import type { PieceState } from '../../studio/piece/foldPieces.ts';
import { markedCautions } from '../../studio/verdict/verdictCautions.ts';
import { planPiece, type PiecePlan } from '../../studio/piece/planPiece.ts';
import type { Asking, Action, Reply } from '../../contract/contract.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';

const pieceData = (piece: PieceState, plan: PiecePlan, entry: string | undefined): Reply['data'] => ({
  ...definedOnly({ entry }),
  piece: piece.id,
  name: piece.said.name,
  bucket: piece.said.bucket,
  steps: plan.steps.map(({ step, at, done }) => ({ step, at: isoInstant(at), done })),
  dipAt: isoInstant(plan.dipAt),
  seconds: plan.seconds ?? null,
  use: plan.use ?? 'dipping',
  bisque: plan.bisque,
  conflicts: plan.conflicts.map(({ kind }) => kind),
});

/** A piece's plan: next step, finished steps, and what conflicts. */
export const pieceReply = async (piece: PieceState, asking: Asking, entry?: string): Promise<Reply> => {
  const { words, book, now, role } = asking;
  const w = words.prep;
  const { said } = piece;
  const studio = await book.studio();
  const bucket = await book.bucket(said.bucket);
  if (!bucket) throw new Error(`piece ${piece.id} names bucket ${said.bucket}, which is not there`);
  const second = said.second === undefined ? undefined : await book.bucket(said.second);
  const coats = (await book.coats()).filter(({ by }) => by === piece.by);
  const plan = planPiece(said, { now, studio, bucket, second, coats, done: piece.done });
  const { resist } = plan;
  const setting = {
    bucket: bucket.settings.name,
    ...definedOnly({ second: second?.settings.name, resist }),
    runny: said.runny ?? false,
    ...definedOnly({ seconds: plan.seconds, use: plan.use }),
  };
  const left = plan.steps.filter(({ done }) => !done);
  const [next] = left;
  const tick = (step: (typeof left)[number]['step']): Action =>
    pressToRun(w.ticked(step, plan.use), 'prep', { piece: piece.id, done: step });
  const first = (verdict: Parameters<typeof words.verdict.title>[0]) => words.verdict.title(verdict, studio);
  return {
    kind: 'answer',
    title: w.title(
      said.name,
      next?.step,
      next && next.at > now ? next.at : undefined,
      next ? w.step(next.step, setting) : [],
    ),
    facts: [
      { label: [w.factOn(plan.use)], text: w.dipFact(plan.dipAt, plan.seconds) },
      fact(w.factBisque, w.bisque(plan.bisque, said.cone)),
      fact(w.factPiece, w.pieceFact(piece.id, plan.steps.length - left.length, plan.steps.length)),
    ],
    dont: plan.conflicts.map((one) => w.conflict(one, first)),
    cautions: present([
      plan.use === 'spraying' && words.verdict.caution('spray'),
      ...markedCautions(bucket.settings).map(words.verdict.caution),
      ...(resist ? w.cautions[resist] : []),
    ]),
    reasons: present([
      ...plan.steps.map(({ step, at, done }, i) => w.row(i + 1, w.step(step, setting), at, done, now)),
      said.cone !== undefined && plan.bisque === 'tight' && w.coneOfBisque,
      !studio.zoneSet && words.studio.noZone,
    ]),
    actions:
      role === 'keeper' || piece.by === asking.member ? left.slice(0, 3).map(({ step }) => tick(step)) : [],
    data: pieceData(piece, plan, entry),
  };
};
