import { benjaminiHochberg } from '../../glaze/statistics/benjaminiHochberg.ts';
import type { Checked } from '../../glaze/checked.ts';
import { fisherExact, leastFisherP, type TwoRates } from '../../glaze/statistics/fisherExact.ts';
import { bayesFactorOfRates, differenceOfRates } from '../../glaze/statistics/twoRates.ts';
import { dayNumber } from '../time/civilDay.ts';
import type { Dip } from './dip.ts';
import { bucketConditions, conditionKey, pieceConditions, type DipCondition } from './dipCondition.ts';
import { faults, type Fault } from './firedEvent.ts';
import { wallOf } from '../time/wallTime.ts';
import { normalizedText } from '../../text/normalizedText.ts';

/** False discovery rate: at most one lead in twenty is chance. */
export const leadWithin = 0.05;

/** One fault and one condition. The counts are days of dipping at a bucket. */
export interface FaultPair {
  fault: Fault;
  condition: DipCondition;
  rates: TwoRates;
  p: number;
  /** The q-value among all pairs that could reach significance; absent for the others. */
  q?: number;
  bayesFactor: number;
  /** The difference between the rates with and without the condition, when both occurred. */
  difference?: { difference: number; low: number; high: number };
}

export interface Comparison {
  /** Days of dipping at a bucket, and how many of them brought a fault. */
  days: number;
  faulty: number;
  /** The pairs that chance explains least come first. */
  pairs: FaultPair[];
}

const valueOrThrow = <T>(checked: Checked<T>): T => {
  if (!checked.ok) throw new Error(`counted wrong: ${JSON.stringify(checked.outOfRange)}`);
  return checked.value;
};

/** The conditions that these dips can be compared by. */
const conditionsOf = (dips: readonly Dip[]): DipCondition[] => {
  const found = new Map<string, DipCondition>();
  const add = (condition: DipCondition) => {
    const key = normalizedText(conditionKey(condition));
    if (!found.has(key)) found.set(key, condition);
  };
  for (const name of [...bucketConditions, ...pieceConditions]) add({ name });
  for (const { body, result } of dips) {
    if (body !== undefined) add({ name: 'body', said: body });
    if (result.said.kiln !== undefined) add({ name: 'kiln', said: result.said.kiln });
    if (result.said.cone !== undefined) add({ name: 'cone', cone: result.said.cone });
  }
  return [...found.values()];
};

/** Whether a condition held for a dip; undefined when nobody can tell. */
const wasSo = (condition: DipCondition, { conditions, body, result }: Dip): boolean | undefined => {
  if ('said' in condition) {
    const its = condition.name === 'body' ? body : result.said.kiln;
    return its === undefined ? undefined : normalizedText(its) === normalizedText(condition.said);
  }
  if (condition.name !== 'cone') return conditions[condition.name];
  const { cone } = result.said;
  return cone === undefined ? undefined : cone === condition.cone;
};

/** A bucket on one local day: what is dipped in it then shares its state, its air, and often its firing. */
const dayOf = ({ result, dipped }: Dip, zone: string): string =>
  `${result.said.bucket} ${dayNumber(wallOf(dipped?.from ?? result.at, zone))}`;

type Day = ReadonlySet<Fault>;

/** The faults of each day, with all results of the day together. */
const faultsByDay = (told: readonly { day: string; dip: Dip }[]): Day[] => {
  const days = new Map<string, Set<Fault>>();
  for (const { day, dip } of told) {
    const seen = days.get(day) ?? new Set<Fault>();
    for (const fault of dip.result.said.faults) seen.add(fault);
    days.set(day, seen);
  }
  return [...days.values()];
};

const having = (days: readonly Day[], fault: Fault) => days.filter((day) => day.has(fault)).length;

const pairOf = (
  fault: Fault,
  condition: DipCondition,
  so: readonly Day[],
  not: readonly Day[],
): FaultPair => {
  const rates: TwoRates = {
    hits: having(so, fault),
    of: so.length,
    otherHits: having(not, fault),
    otherOf: not.length,
  };
  const seen = so.length > 0 && not.length > 0;
  return {
    fault,
    condition,
    rates,
    p: valueOrThrow(fisherExact(rates)),
    bayesFactor: valueOrThrow(bayesFactorOfRates(rates)),
    ...(seen && { difference: valueOrThrow(differenceOfRates(rates)) }),
  };
};

/** Only pairs whose margins could reach significance count as tests: the others would weaken every lead. */
const withQ = (pairs: readonly FaultPair[]): FaultPair[] => {
  const tests = pairs.filter(({ rates }) => valueOrThrow(leastFisherP(rates)) <= leadWithin);
  const qs = valueOrThrow(benjaminiHochberg(tests.map(({ p }) => p)));
  const found = new Map(tests.map((pair, i) => [pair, qs[i]]));
  return pairs.map((pair) => {
    const q = found.get(pair);
    return q === undefined ? pair : { ...pair, q };
  });
};

/**
 * Compares every fault that occurred with every known condition, ranked. A day of dipping at a bucket counts once for
 * each condition, however many pieces were dipped: pieces of one evening come out alike for shared reasons, and
 * counted singly they would show leads that are not there. Only pairs whose margins allow a lead are tested, and the
 * margins do not depend on the outcome (Tarone 1990).
 */
export const compareFaults = (dips: readonly Dip[], zone: string): Comparison => {
  const told = dips.map((dip) => ({ day: dayOf(dip, zone), dip }));
  const days = faultsByDay(told);
  const came = faults.filter((fault) => having(days, fault) > 0);
  const pairs = conditionsOf(dips).flatMap((condition) => {
    const side = (wanted: boolean) => faultsByDay(told.filter(({ dip }) => wasSo(condition, dip) === wanted));
    const [so, not] = [side(true), side(false)];
    if (so.length + not.length === 0) return [];
    return came.map((fault) => pairOf(fault, condition, so, not));
  });
  return {
    days: days.length,
    faulty: days.filter((day) => day.size > 0).length,
    pairs: withQ(pairs).sort((a, b) => a.p - b.p || b.bayesFactor - a.bayesFactor),
  };
};

export const isOftener = ({ rates: { hits, of, otherHits, otherOf } }: FaultPair): boolean =>
  hits * otherOf > otherHits * of;

/** Significantly more often with the condition than without it. */
export const isLead = (pair: FaultPair): boolean =>
  pair.q !== undefined && pair.q <= leadWithin && isOftener(pair);
