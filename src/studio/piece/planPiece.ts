import { definedOnly } from '../../definedOnly.ts';
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
/** Three coats by brush, each dull before the next (common practice). */
const threeCoatsDull = minutes(45);

/** A wall thinner than this, in mm, is half full of water after one wetting: common practice. */
const thinWall = 4;

/** Something in a plan that conflicts with the rest of it. */
export type Conflict =
  /** It is to be glazed before its resist is dry. */
  | { kind: 'too-early'; plannedFor: Instant; readyAt: Instant }
  | { kind: 'closed'; plannedFor: Instant; opens: Instant | 'never' }
  | { kind: 'thick-underglaze' }
  | { kind: 'never-dry' }
  | { kind: 'bucket'; of: 'first' | 'second'; verdict: Verdict }
  | { kind: 'dip'; why: Exclude<DipTime, { kind: 'dip' }> }
  /** A thickness was wanted, and the bucket is not dipped into. */
  | { kind: 'no-dip'; use: LaidOn }
  | { kind: 'tight-bisque' }
  | { kind: 'wetted-wall' }
  | { kind: 'resist-on-texture' };

/** A brush lays glaze on in coats, a spray gun in passes. */
export type LaidOn = 'brushing' | 'spraying';

const laidOn = ({ settings: { use } }: BucketState): LaidOn | undefined =>
  use === 'brushing' || use === 'spraying' ? use : undefined;

export interface PlannedStep {
  step: PrepStep;
  /** The earliest time for the step, or when it was done. */
  at: Instant;
  done: boolean;
}

export interface PiecePlan {
  steps: PlannedStep[];
  conflicts: Conflict[];
  bisque: Bisque;
  dipAt: Instant;
  /** How the glaze goes on, where it is no dip. */
  use?: LaidOn;
  /** Dip time for the wanted thickness, when the bucket's tiles give one. */
  seconds?: Seconds;
  /** Planned for it, or already on it. */
  resist?: Resist;
}

interface PlanContext {
  now: Instant;
  studio: Pick<Studio, 'zone' | 'hours' | 'drying' | 'sure'>;
  bucket: BucketState;
  second: BucketState | undefined;
  coats: readonly ResistCoat[];
  done: readonly { step: PrepStep; at: Instant }[];
}

const dipConflicts = (
  piece: PieceSaid,
  { now, studio: { sure }, bucket, second }: PlanContext,
): { conflicts: Conflict[]; dip?: DipTime } => {
  const asked = (state: BucketState, of: 'first' | 'second'): Conflict[] => {
    const verdict = decide(state, { now, role: 'member', sure });
    return verdict.step === 'use' ? [] : [{ kind: 'bucket', of, verdict }];
  };
  const use = laidOn(bucket);
  const { thickness, absorption, body, wall } = piece;
  const wanted =
    thickness === undefined ? undefined : { thickness, ...definedOnly({ absorption, body, wall }) };
  const dip = wanted && !use ? dipTime(bucket, wanted, now) : undefined;
  return {
    conflicts: [
      ...asked(bucket, 'first'),
      ...(second ? asked(second, 'second') : []),
      ...(use && wanted ? [{ kind: 'no-dip' as const, use }] : []),
      ...(dip && dip.kind !== 'dip' ? [{ kind: 'dip' as const, why: dip }] : []),
    ],
    ...definedOnly({ dip }),
  };
};

/** Steps that are only waiting: their time runs from the step before them, not from now. */
const waitingSteps: ReadonlySet<PrepStep> = new Set(['sheen', 'night']);

/** The steps for a piece in order, each with its earliest time, and the conflicts between them. */
export const planPiece = (piece: PieceSaid, around: PlanContext): PiecePlan => {
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
    const start = finished ?? (waitingSteps.has(step) ? at : instant(Math.max(at, now)));
    steps.push({ step, at: finished ?? instant(Math.max(start, now)), done: finished !== undefined });
    at = later(start, takes);
    return start;
  };
  then('dust');
  then('sheen', sheenGone);
  if (piece.underglaze !== 'none') then('underglaze', underglazeDry);
  if (resist) {
    const onAt = then('resist');
    // A resist that is not on yet will dry in the studio's usual air.
    const { temperature, humidity } = studio.drying;
    const air = definedOnly({ temperature, humidity });
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
  // Nobody can dip while the studio is closed.
  const opens = nextOpenInstant(instant(Math.max(at, now)), studio.hours, studio.zone);
  if (toDip && plannedFor === undefined && opens !== 'never') at = opens;
  then('bucket');
  if (bisque === 'soft') then('wet', minutes(2));
  if (piece.surface !== 'smooth') then('carving');
  const use = laidOn(around.bucket);
  const dipAt = then('dip', use === 'brushing' ? threeCoatsDull : glazeDull);
  if (piece.second !== undefined) then('second', glazeDull);
  if (resist === 'latex' || resist === 'tape') then('peel');
  then('foot');
  if (piece.underglaze === 'thick') conflicts.push({ kind: 'thick-underglaze' });
  if (bisque === 'tight') conflicts.push({ kind: 'tight-bisque' });
  if (!use && bisque === 'soft' && piece.wall !== undefined && piece.wall < thinWall)
    conflicts.push({ kind: 'wetted-wall' });
  if (resist && piece.surface !== 'smooth') conflicts.push({ kind: 'resist-on-texture' });
  return {
    steps,
    // After the dip, the bucket's present state no longer matters.
    conflicts: toDip
      ? conflicts
      : conflicts.filter(({ kind }) => kind !== 'bucket' && kind !== 'dip' && kind !== 'no-dip'),
    bisque,
    dipAt,
    ...(dip?.kind === 'dip' && { seconds: dip.seconds }),
    ...definedOnly({ resist, use }),
  };
};
