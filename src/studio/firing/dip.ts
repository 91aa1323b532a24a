import type { BucketEntry } from '../bucket/bucketEvent.ts';
import type { Entry } from '../entry.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { bisqueOf, type Bisque } from '../piece/bisque.ts';
import { bucketThen, type BucketThen } from './bucketThen.ts';
import type { CoatEvent } from '../resist/coatEvent.ts';
import { coatReady } from '../resist/coatReady.ts';
import { knownConditions, ofAny, type Conditions } from './dipCondition.ts';
import type { FiredSaid, Stretch } from './firedEvent.ts';
import type { FiredState } from './foldFired.ts';
import type { PieceState } from '../piece/foldPieces.ts';
import { hours, since, type EntryId, type Instant } from '../ids.ts';
import type { DryReady } from '../resist/overnight.ts';
import type { PrepStep } from '../piece/pieceEvent.ts';
import type { Studio } from '../settings/studio.ts';

/** What the logbook holds that bears on one result. */
export interface Around {
  studio: Pick<Studio, 'zone' | 'hours' | 'drying'>;
  /** Each bucket that was dipped in: its entries, and every state that they led to. */
  buckets: { entries: readonly BucketEntry[]; states: readonly BucketState[] }[];
  plan: PieceState | undefined;
  coat: (Entry<CoatEvent> & { event: { kind: 'on' } }) | undefined;
}

/** A result beside what the logbook knows of its dip: worked out anew each time, so that no entry comes too late. */
export interface Dip {
  result: FiredState;
  dipped?: Stretch;
  /** The member's own entry of that day, which the dip is taken to have followed. */
  after?: EntryId;
  /** The bucket, and the one of the layer over it. */
  buckets: BucketThen[];
  conditions: Conditions;
  bisque?: Bisque;
  body?: string;
  /** When the resist on it was dry. */
  resistReady?: DryReady;
  /** The steps of its plan up to the dip, and those that were ticked off before it. */
  planned?: PrepStep[];
  done?: PrepStep[];
}

const atBucket = new Set(['reading', 'stir', 'sieve', 'addition']);

/** Entries further apart are of two visits: nobody can tell after which of them the dip was. */
const oneVisit = hours(1);

/** Whoever logs at a bucket dips from it: a day alone is narrowed to the member's own last entry on it, if it was one visit. */
const ownEntry = (
  { by }: FiredState,
  { from, to }: Stretch,
  entries: readonly BucketEntry[],
): BucketEntry | undefined => {
  const undone = new Set(entries.flatMap(({ event }) => (event.kind === 'undo' ? [event.of] : [])));
  const own = entries
    .filter(
      (entry) =>
        entry.by === by &&
        entry.at >= from &&
        entry.at <= to &&
        atBucket.has(entry.event.kind) &&
        !undone.has(entry.seq),
    )
    .toSorted((a, b) => a.at - b.at || a.seq - b.seq);
  const [first, last] = [own[0], own.at(-1)];
  return first && last && since(first.at, last.at) <= oneVisit ? last : undefined;
};

const exactly = (at: Instant): Stretch => ({ from: at, to: at });

const whenDipped = (result: FiredState, { plan, buckets }: Around): Pick<Dip, 'dipped' | 'after'> => {
  const ticked = plan?.done.find(({ step }) => step === 'dip');
  const { dipped } = result.said;
  if (!dipped) return ticked ? { dipped: exactly(ticked.at) } : {};
  if (dipped.from === dipped.to) return { dipped };
  if (ticked && ticked.at >= dipped.from && ticked.at <= dipped.to) return { dipped: exactly(ticked.at) };
  const own = ownEntry(result, dipped, buckets[0]?.entries ?? []);
  return own ? { dipped: exactly(own.at), after: own.id } : { dipped };
};

const bisqueSaid = ({ bisque, bisqueCone }: FiredSaid, plan: PieceState | undefined): Bisque | undefined => {
  if (bisque) return bisque;
  if (bisqueCone !== undefined) return bisqueOf({ cone: bisqueCone });
  const { absorption, cone } = plan?.said ?? {};
  if (absorption === undefined && cone === undefined) return undefined;
  return bisqueOf({
    ...(absorption !== undefined && { absorption }),
    ...(cone !== undefined && { cone }),
  });
};

/** Not dry before the dip, dry before it, or on the way to it while nobody knows the hour. */
const wasDamp = (ready: DryReady, { from, to }: Stretch): boolean | undefined => {
  if (ready === 'never' || ready.readyAt > to) return true;
  return ready.readyAt <= from ? false : undefined;
};

/** A plan that nobody ticks tells nothing of what was left out. */
const stepLeft = (plan: PieceState | undefined, done: PrepStep[], step: PrepStep): boolean | undefined =>
  plan && plan.done.length > 0 && plan.steps.includes(step) ? !done.includes(step) : undefined;

/** What comes after the dip is not what it was like. */
const beforeDip = (steps: readonly PrepStep[]): PrepStep[] =>
  steps.slice(0, Math.max(0, steps.indexOf('dip')));

/** One result set beside the logbook as it stood when the piece was dipped. */
export const dipOf = (result: FiredState, around: Around): Dip => {
  const { plan, coat, studio } = around;
  const { said } = result;
  const when = whenDipped(result, around);
  const { dipped } = when;
  const buckets = dipped ? around.buckets.flatMap(({ states }) => bucketThen(states, dipped) ?? []) : [];
  const ready = coat && coatReady({ ...coat.event, onAt: coat.at }, studio);
  const done = plan?.done.filter(({ at }) => !dipped || at <= dipped.to).map(({ step }) => step);
  const bisque = bisqueSaid(said, plan);
  const body = said.body ?? plan?.said.body;
  return {
    result,
    ...when,
    buckets,
    ...(bisque && { bisque }),
    ...(body !== undefined && { body }),
    ...(ready && { resistReady: ready }),
    ...(plan && { planned: beforeDip(plan.steps) }),
    ...(done && { done }),
    conditions: {
      // A layer whose bucket was not there yet leaves open what it was like.
      ...(buckets.length === around.buckets.length && ofAny(buckets.map(({ conditions }) => conditions))),
      ...knownConditions({
        layered: said.over !== undefined,
        'resist-damp': ready && dipped && wasDamp(ready, dipped),
        'dust-left': stepLeft(plan, done ?? [], 'dust'),
        'wetting-left': stepLeft(plan, done ?? [], 'wet'),
        'texture-left': stepLeft(plan, done ?? [], 'carving'),
        'underglaze-thick': plan && plan.said.underglaze === 'thick',
        carved: plan && plan.said.surface !== 'smooth',
        'soft-bisque': bisque && bisque === 'soft',
        'hard-bisque': bisque && bisque === 'tight',
      }),
    },
  };
};
