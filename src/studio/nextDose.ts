import { dryContent } from '../glaze/slurry.ts';
import { grams, gravity, millilitres, type Grams, type Gravity, type Millilitres } from '../glaze/units.ts';
import type { BucketSettings } from './bucketEvent.ts';
import type { BucketState } from './bucketState.ts';
import { saltInSaturatedSolution, saturatedSolutionWith } from './flocculantSolution.ts';
import { plausibleGravity } from './weighGravity.ts';

/** One rung, and where a keeper looks before more goes in: parts of the bucket's dry mass (common practice). */
export const rungOfDry = 0.0003;
export const checkpointOfDry = 0.002;

export type NextDose =
  | {
      kind: 'dose';
      dose: Millilitres;
      heptahydrate: Grams;
      /** This dose, and all before it since the remake, in per cent of the dry mass. */
      percent: number;
      totalPercent: number;
    }
  | { kind: 'per-litre'; dose: Millilitres }
  | { kind: 'checkpoint'; totalPercent: number };

/** A bucket is dosed when it is in its window within what a reading can tell: the dose is for a glaze that is in it. */
const asAimedAt = (slurry: Gravity, { gravity: window, solids }: BucketSettings): Gravity => {
  const { low, high } = window ?? { low: plausibleGravity.low, high: (1 + solids) / 2 };
  return gravity(Math.min(high, Math.max(low, slurry)));
};

/** The ladder's next rung of flocculant for a bucket of this gravity; per litre when its volume is not known. */
export const nextDose = (state: BucketState, slurry: Gravity, volume: Millilitres | undefined): NextDose => {
  const dry = dryContent({
    slurry: asAimedAt(slurry, state.settings),
    solids: state.settings.solids,
  });
  if (!dry.ok) throw new Error(`bucket ${state.no}: no dry content for gravity ${slurry}`);
  if (volume === undefined)
    return { kind: 'per-litre', dose: saturatedSolutionWith(grams(dry.value * rungOfDry)) };
  const dryMass = (dry.value * volume) / 1000;
  const soFar = state.flocculant.heptahydrate / dryMass;
  if (soFar + rungOfDry > checkpointOfDry) return { kind: 'checkpoint', totalPercent: 100 * soFar };
  const dose = saturatedSolutionWith(grams(dryMass * rungOfDry));
  return {
    kind: 'dose',
    dose: millilitres(dose),
    heptahydrate: saltInSaturatedSolution(dose),
    percent: 100 * rungOfDry,
    totalPercent: 100 * soFar,
  };
};
