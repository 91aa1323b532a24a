import { dryContent } from '../../glaze/slurry/slurry.ts';
import {
  grams,
  gravity,
  millilitres,
  type Grams,
  type Gravity,
  type Millilitres,
} from '../../glaze/units.ts';
import type { BucketSettings } from '../settings/bucketSettings.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { doseStep } from '../belief/priors.ts';
import { effluxAt20 } from '../bucket/effluxAt20.ts';
import { saltInSaturatedSolution, saturatedSolutionWith } from '../bucket/flocculantSolution.ts';
import { learnDose, type Learned, type LearnedDose } from './learnDose.ts';
import { plausibleGravity } from '../measure/weighGravity.ts';

/**
 * One dose step, and the limit at which a keeper checks before more goes in: parts of the bucket's dry mass (common
 * practice).
 */
export const doseStepOfDry = doseStep.percent / 100;
export const checkpointOfDry = 0.002;

export type NextDose =
  | {
      kind: 'dose';
      dose: Millilitres;
      heptahydrate: Grams;
      /** This dose, and the sum of all doses since the remake, in per cent of the dry mass. */
      percent: number;
      totalPercent: number;
      /** The 90 % interval of what the bucket needs to reach mid-window, by its own readings. */
      interval?: { low: Millilitres; high?: Millilitres };
    }
  /** Two dose steps made no difference: something else is missing. */
  | { kind: 'no-change'; totalPercent: number }
  | { kind: 'per-litre'; dose: Millilitres }
  | { kind: 'checkpoint'; totalPercent: number };

/** The gravity to dose for, kept within the window: the dose is meant for a glaze of the right gravity. */
export const aimedGravity = (slurry: Gravity, { gravity: window, solids }: BucketSettings): Gravity => {
  const { low, high } = window ?? { low: plausibleGravity.low, high: (1 + solids) / 2 };
  return gravity(Math.min(high, Math.max(low, slurry)));
};

/** The flow window, when it belongs to the cup that the readings were taken with. */
export const flowAim = ({ settings: { efflux, cup }, efflux: read }: BucketState) => {
  const by = cup ?? read?.cup;
  return efflux && by !== undefined ? { window: efflux, cup: by } : undefined;
};

const learnedFrom = (state: BucketState, slurry: Gravity, dryMass: number): Learned => {
  const aim = flowAim(state);
  const { flow = [], heptahydrate, unknown } = state.flocculant;
  const last = flow.at(-1);
  if (!aim || !last || unknown) return { kind: 'not-enough' };
  const percent = last.percent + (100 * (heptahydrate - last.salt)) / dryMass;
  return learnDose({ points: flow, ...aim, gravity: slurry, percent });
};

/** A whole step, or half of one where a whole one would probably lead beyond the window. */
const firstSteps = (state: BucketState): number => {
  const aim = flowAim(state);
  const seconds = effluxAt20(state);
  if (!aim || state.efflux?.cup !== aim.cup || seconds === undefined || seconds === 'wont-run') return 1;
  return seconds * Math.exp(doseStep.flow) > aim.window.high ? 0.5 : 1;
};

const inMl = ({ low, high }: LearnedDose['interval'], doseStepMl: number) => ({
  low: millilitres(low * doseStepMl),
  ...(high !== undefined && { high: millilitres(high * doseStepMl) }),
});

/**
 * The next dose of flocculant for a bucket of this gravity: by its own readings, or else one dose step; per litre
 * when its volume is unknown.
 */
export const nextDose = (state: BucketState, slurry: Gravity, volume: Millilitres | undefined): NextDose => {
  const aimed = aimedGravity(slurry, state.settings);
  const dry = dryContent({ slurry: aimed, particleGravity: state.settings.solids });
  if (!dry.ok) throw new Error(`bucket ${state.no}: no dry content for gravity ${slurry}`);
  if (volume === undefined)
    return {
      kind: 'per-litre',
      dose: saturatedSolutionWith(grams(dry.value * firstSteps(state) * doseStepOfDry)),
    };
  const dryMass = (dry.value * volume) / 1000;
  const soFar = state.flocculant.heptahydrate / dryMass;
  if (soFar + doseStepOfDry > checkpointOfDry) return { kind: 'checkpoint', totalPercent: 100 * soFar };
  const learned = learnedFrom(state, aimed, dryMass);
  if (learned.kind === 'no-change') return { kind: 'no-change', totalPercent: 100 * soFar };
  const ofDry =
    learned.kind === 'learned'
      ? Math.min(learned.doseSteps * doseStepOfDry, checkpointOfDry - soFar)
      : firstSteps(state) * doseStepOfDry;
  const doseStepMl = saturatedSolutionWith(grams(dryMass * doseStepOfDry));
  const dose = saturatedSolutionWith(grams(dryMass * ofDry));
  return {
    kind: 'dose',
    dose,
    heptahydrate: saltInSaturatedSolution(dose),
    percent: 100 * ofDry,
    totalPercent: 100 * soFar,
    ...(learned.kind === 'learned' && { interval: inMl(learned.interval, doseStepMl) }),
  };
};
