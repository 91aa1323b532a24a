import { aged } from '../belief/aged.ts';
import { chancesOf, type Chances } from '../belief/chances.ts';
import { place, together, type Belief } from '../belief/mixture.ts';
import { doseStep } from '../belief/priors.ts';
import { middleFlow } from '../belief/startBelief.ts';
import { visitAt, type Visit } from '../belief/visit.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import type { Instant } from '../ids.ts';
import type { Step } from './verdict.ts';

/** What can be asked of somebody at a bucket. */
export type Asked = 'look' | 'seconds' | 'weight' | 'level';

/** What a bucket's belief comes to now, and what was read of it in this visit. */
export interface Sureness {
  chances: Chances;
  visit: Visit | undefined;
  /** ln seconds from here to mid-window. */
  flowToMiddle: number;
  /** Of ln litres. */
  volumeSd: number;
}

export interface ByChance {
  step: Step;
  /** What is wanted next, the best first; empty when nothing is. */
  asks: Asked[];
  /** Steps of flocculant, when that is what it takes. */
  doses?: number;
}

/** So sure that gravity is right must one be before a dose: it would hide water that nobody logged. */
const sureBeforeDose = 0.85;
/** After so many readings in one visit something is odd: a keeper looks. */
const mostReadings = 6;
const mostDoses = 3;
/** Stirred for less than this, what is thick may be a gel that loosens. */
const longStir = 5;
/** With a volume less sure than this, amounts are told by the litre, and the gap is asked for. */
const levelAsked = 0.15;

/** A bucket's sureness as of now: a view, which ages a copy. */
export const surenessOf = ({ belief, settings }: BucketState, now: Instant): Sureness => {
  const then: Belief = aged(belief, now, settings);
  const { mean, covariance } = together(then.components);
  return {
    chances: chancesOf(then, settings),
    visit: visitAt(belief, now),
    flowToMiddle: middleFlow(settings) - (mean[place.flow] ?? 0),
    volumeSd: Math.sqrt(covariance[place.volume * (mean.length + 1)] ?? 0),
  };
};

/** What is more in doubt is read first; how it runs is looked at before it is timed. */
const inDoubt = ({ chances: { gravity, flow }, visit }: Sureness): Asked[] => {
  if (!flow) return ['weight'];
  if ((gravity?.in ?? 1) < flow.in) return ['weight', 'seconds'];
  return visit?.look ? ['seconds', 'weight'] : ['look', 'seconds', 'weight'];
};

const ask = (...asks: Asked[]): ByChance => ({ step: 'measure', asks });

/** What is wanted before anything is done: a look, then what the look leaves open. */
const firstAsked = ({ chances, visit }: Sureness): Asked[] => {
  if (!chances.flow) return ['weight'];
  if (!visit?.look && !visit?.timed) return ['look', 'weight', 'seconds'];
  return visit.look === 'right' && !visit.timed ? ['seconds', 'weight'] : ['weight', 'seconds'];
};

const onFlow = (
  { flow }: Chances,
  { flowToMiddle, stirredFor, sure }: { flowToMiddle: number; stirredFor: number; sure: number },
): ByChance | undefined => {
  if (!flow) return undefined;
  if (flow.thin >= sure) {
    const doses = Math.round(flowToMiddle / doseStep.flow);
    return { step: 'flocculate', asks: [], doses: Math.min(mostDoses, Math.max(1, doses)) };
  }
  if (flow.thick >= sure) return { step: stirredFor < longStir ? 'stir-on' : 'deflocculate', asks: [] };
  return undefined;
};

/**
 * What a stirred bucket asks for, by how likely it is right: use it when that is likely enough, change it only when it is
 * likely enough that it is off, and else read what is in doubt.
 */
export const chooseByChance = (
  sureness: Sureness,
  { sure, stirredFor }: { sure: number; stirredFor: number },
): ByChance => {
  const { chances, visit, flowToMiddle, volumeSd } = sureness;
  const { gravity, flow, both } = chances;
  if (!gravity) return { step: 'ask-keeper', asks: [] };
  if ((both ?? gravity.in) >= sure) return { step: 'use', asks: [] };
  if (!visit?.weighed) return ask(...firstAsked(sureness));
  const level: Asked[] = volumeSd > levelAsked ? ['level'] : [];
  if (gravity.high >= sure) return { step: 'add-water', asks: level };
  if (gravity.low >= sure)
    return { step: flow && flow.thick >= sure ? 'add-dry' : 'draw-off-water', asks: level };
  const byFlow =
    visit.timed && gravity.in >= sureBeforeDose
      ? onFlow(chances, { flowToMiddle, stirredFor, sure })
      : undefined;
  if (byFlow) return byFlow;
  return visit.readings >= mostReadings ? { step: 'ask-keeper', asks: [] } : ask(...inDoubt(sureness));
};

/** What is wanted of somebody who is told to measure: never nothing. */
export const askedWhenMeasuring = (sureness: Sureness, at: Parameters<typeof chooseByChance>[1]): Asked[] => {
  const { step, asks } = chooseByChance(sureness, at);
  return step === 'measure' ? asks : inDoubt(sureness);
};
