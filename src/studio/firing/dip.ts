import { definedOnly } from '../../definedOnly.ts';
import type { BucketEntry } from '../bucket/bucketEvent.ts';
import { undoneIn, type Entry } from '../entry.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { bisqueOf, type Bisque } from '../piece/bisque.ts';
import { bucketThen, type BucketThen } from './bucketThen.ts';
import type { CoatEvent } from '../resist/coatEvent.ts';
import { coatReady } from '../resist/coatReady.ts';
import { knownConditions, ofAny, type Conditions } from './dipCondition.ts';
import type { FiredSaid, TimeSpan } from './firedEvent.ts';
import type { FiredState } from './foldFired.ts';
import type { PieceState } from '../piece/foldPieces.ts';
import { hours, since, type EntryId, type Instant } from '../ids.ts';
import type { DryReady } from '../resist/overnight.ts';
import type { PrepStep } from '../piece/pieceEvent.ts';
import type { Studio } from '../settings/studio.ts';

/** The parts of the logbook that concern one result. */
export interface DipContext {
  studio: Pick<Studio, 'zone' | 'hours' | 'drying'>;
  /** Each bucket that the piece was dipped in: its entries, and its states in order. */
  buckets: { entries: readonly BucketEntry[]; states: readonly BucketState[] }[];
  plan: PieceState | undefined;
  coat: (Entry<CoatEvent> & { event: { kind: 'on' } }) | undefined;
}

/** A result with what the logbook knows about its dip. It is worked out each time, so that late entries count. */
export interface Dip {
  result: FiredState;
  dipped?: TimeSpan;
  /** The member's own entry of that day; the dip is taken to have followed it. */
  after?: EntryId;
  /** The bucket of the first layer, and of the layer over it. */
  buckets: BucketThen[];
  conditions: Conditions;
  bisque?: Bisque;
  body?: string;
  /** When its resist was dry. */
  resistReady?: DryReady;
  /** The steps of its plan up to the dip, and those that were ticked off before it. */
  planned?: PrepStep[];
  done?: PrepStep[];
}

const atBucket = new Set(['reading', 'stir', 'sieve', 'addition']);

/** Entries further apart belong to different visits, and nobody can tell which visit the dip belongs to. */
const oneVisit = hours(1);

/**
 * A member who logs something at a bucket then dips from it. So when only the day is known, the dip is placed after
 * the member's last entry on that bucket, if all their entries were of one visit.
 */
const ownEntry = (
  { by }: FiredState,
  { from, to }: TimeSpan,
  entries: readonly BucketEntry[],
): BucketEntry | undefined => {
  const undone = undoneIn(entries);
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

const exactly = (at: Instant): TimeSpan => ({ from: at, to: at });

const whenDipped = (result: FiredState, { plan, buckets }: DipContext): Pick<Dip, 'dipped' | 'after'> => {
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
  return bisqueOf(definedOnly({ absorption, cone }));
};

/** Whether it was dipped before it was dry; undefined when it dried that day and the hour is unknown. */
const wasDamp = (ready: DryReady, { from, to }: TimeSpan): boolean | undefined => {
  if (ready === 'never' || ready.readyAt > to) return true;
  return ready.readyAt <= from ? false : undefined;
};

/** A plan with no ticks does not say which steps were left out. */
const stepLeft = (plan: PieceState | undefined, done: PrepStep[], step: PrepStep): boolean | undefined =>
  plan && plan.done.length > 0 && plan.steps.includes(step) ? !done.includes(step) : undefined;

/** A result with the state of the logbook when the piece was dipped. */
export const dipOf = (result: FiredState, around: DipContext): Dip => {
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
    ...definedOnly({ bisque, body }),
    ...(ready && { resistReady: ready }),
    // Later steps cannot have affected the dip.
    ...(plan && { planned: plan.steps.slice(0, Math.max(0, plan.steps.indexOf('dip'))) }),
    ...definedOnly({ done }),
    conditions: {
      // When a layer's bucket had no setup yet, its conditions are unknown.
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
