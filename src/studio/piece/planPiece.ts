import type { Seconds } from '../../glaze/units.ts';
import { bisqueOf, type Bisque } from './bisque.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { areSamePieces, type ResistCoat } from '../resist/resistCoat.ts';
import { coatReady } from '../resist/coatReady.ts';
import { decide } from '../verdict/decide.ts';
import { dipTime, type DipTime } from './dipTime.ts';
import { instant, later, minutes, type Instant } from '../ids.ts';
import { nextOpenInstant } from '../time/openingHours.ts';
import type { Resist } from '../resist/overnight.ts';
import type { PieceSaid, PrepStep } from './pieceEvent.ts';
import type { Studio } from '../settings/studio.ts';
import type { Verdict } from '../verdict/verdict.ts';

/** Common practice, in minutes: damp bisque loses its sheen, a thin brush coat dries, a fresh dip turns dull. */
const sheenGone = minutes(20);
const underglazeDry = minutes(30);
const glazeDull = minutes(15);

/** A wall in millimetres that a wetting fills half: common practice. */
const thinWall = 4;

/** What in a plan works against the rest of it. */
export type Conflict =
  /** Wanted before its resist is dry. */
  | { kind: 'too-early'; plannedFor: Instant; readyAt: Instant }
  | { kind: 'closed'; plannedFor: Instant; opens: Instant | 'never' }
  | { kind: 'thick-underglaze' }
  | { kind: 'never-dry' }
  | { kind: 'bucket'; of: 'first' | 'second'; verdict: Verdict }
  | { kind: 'dip'; why: Exclude<DipTime, { kind: 'dip' }> }
  | { kind: 'tight-bisque' }
  | { kind: 'wetted-wall' }
  | { kind: 'resist-on-texture' };

export interface PlannedStep {
  step: PrepStep;
  /** The earliest that it can be done, or when it was. */
  at: Instant;
  done: boolean;
}

export interface PiecePlan {
  steps: PlannedStep[];
  conflicts: Conflict[];
  bisque: Bisque;
  dipAt: Instant;
  /** How long to dip for the wanted thickness, when the bucket's tiles tell. */
  seconds?: Seconds;
  /** Planned for it, or on it already. */
  resist?: Resist;
}

interface Around {
  now: Instant;
  studio: Pick<Studio, 'zone' | 'hours' | 'drying'>;
  bucket: BucketState;
  second: BucketState | undefined;
  coats: readonly ResistCoat[];
  done: readonly { step: PrepStep; at: Instant }[];
}

const dipConflicts = (
  piece: PieceSaid,
  { now, bucket, second }: Around,
): { conflicts: Conflict[]; dip?: DipTime } => {
  const asked = (state: BucketState, of: 'first' | 'second'): Conflict[] => {
    const verdict = decide(state, { now, role: 'member' });
    return verdict.step === 'use' ? [] : [{ kind: 'bucket', of, verdict }];
  };
  const dip =
    piece.thickness === undefined
      ? undefined
      : dipTime(
          bucket,
          {
            thickness: piece.thickness,
            ...(piece.absorption !== undefined && { absorption: piece.absorption }),
            ...(piece.body !== undefined && { body: piece.body }),
            ...(piece.wall !== undefined && { wall: piece.wall }),
          },
          now,
        );
  return {
    conflicts: [
      ...asked(bucket, 'first'),
      ...(second ? asked(second, 'second') : []),
      ...(dip && dip.kind !== 'dip' ? [{ kind: 'dip' as const, why: dip }] : []),
    ],
    ...(dip && { dip }),
  };
};

/** Steps that only wait: their time runs from the step before them, not from now. */
const waits: ReadonlySet<PrepStep> = new Set(['sheen', 'night']);

/** What is to be done to a piece, in order, with the earliest time of each, and what does not go together. */
export const planPiece = (piece: PieceSaid, around: Around): PiecePlan => {
  const { now, studio, coats, done } = around;
  const bisque = bisqueOf(piece);
  const steps: PlannedStep[] = [];
  const { conflicts, dip } = dipConflicts(piece, around);
  const coat = coats.find(({ pieces }) => areSamePieces(pieces, piece.name));
  const resist = piece.resist ?? coat?.resist;
  const doneAt = (step: PrepStep): Instant | undefined =>
    step === 'resist' && coat ? coat.onAt : done.find((one) => one.step === step)?.at;
  let at = now;
  const then = (step: PrepStep, takes = minutes(0)): Instant => {
    const finished = doneAt(step);
    const start = finished ?? (waits.has(step) ? at : instant(Math.max(at, now)));
    steps.push({ step, at: finished ?? instant(Math.max(start, now)), done: finished !== undefined });
    at = later(start, takes);
    return start;
  };
  then('dust');
  then('sheen', sheenGone);
  if (piece.underglaze !== 'none') then('underglaze', underglazeDry);
  if (resist) {
    const onAt = then('resist');
    // One that is still to go on dries in the studio's usual air.
    const { temperature, humidity } = studio.drying;
    const air = {
      ...(temperature !== undefined && { temperature }),
      ...(humidity !== undefined && { humidity }),
    };
    const ready = coatReady(coat ?? { resist, onAt, ...air }, studio);
    if (ready === 'never') conflicts.push({ kind: 'never-dry' });
    else at = instant(Math.max(at, ready.readyAt));
    then('night');
  }
  const dryAt = instant(Math.max(at, now));
  const { plannedFor } = piece;
  const toDip = doneAt('dip') === undefined;
  if (toDip && plannedFor !== undefined && plannedFor < dryAt && plannedFor >= now)
    conflicts.push({ kind: 'too-early', plannedFor, readyAt: dryAt });
  else if (plannedFor !== undefined) at = instant(Math.max(dryAt, plannedFor));
  if (toDip && plannedFor !== undefined && plannedFor >= dryAt) {
    const opens = nextOpenInstant(plannedFor, studio.hours, studio.zone);
    if (opens !== plannedFor) conflicts.push({ kind: 'closed', plannedFor, opens });
  }
  // Nobody dips while the studio is closed.
  const opens = nextOpenInstant(instant(Math.max(at, now)), studio.hours, studio.zone);
  if (toDip && plannedFor === undefined && opens !== 'never') at = opens;
  then('bucket');
  if (bisque === 'soft') then('wet', minutes(2));
  if (piece.surface !== 'smooth') then('carving');
  const dipAt = then('dip', glazeDull);
  if (piece.second !== undefined) then('second', glazeDull);
  if (resist === 'latex' || resist === 'tape') then('peel');
  then('foot');
  if (piece.underglaze === 'thick') conflicts.push({ kind: 'thick-underglaze' });
  if (bisque === 'tight') conflicts.push({ kind: 'tight-bisque' });
  if (bisque === 'soft' && piece.wall !== undefined && piece.wall < thinWall)
    conflicts.push({ kind: 'wetted-wall' });
  if (resist && piece.surface !== 'smooth') conflicts.push({ kind: 'resist-on-texture' });
  return {
    steps,
    // Once it is dipped, what its bucket is like now is no matter.
    conflicts: toDip ? conflicts : conflicts.filter(({ kind }) => kind !== 'bucket' && kind !== 'dip'),
    bisque,
    dipAt,
    ...(dip?.kind === 'dip' && { seconds: dip.seconds }),
    ...(resist && { resist }),
  };
};
