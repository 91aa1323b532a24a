import { definedOnly } from '../../definedOnly.ts';
import type { Gravity, Millilitres } from '../../glaze/units.ts';
import { middle } from './pailAmounts.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { gravityForAmounts, surenessOf } from './chooseByChance.ts';
import { decide } from './decide.ts';
import type { Instant } from '../ids.ts';
import { nextDose, type NextDose } from '../dose/nextDose.ts';
import { facts, type Facts } from './facts.ts';
import type { Verdict } from './verdict.ts';
import { volumeNow } from '../bucket/volumeNow.ts';

/** Why no flocculant should go in now. */
export type NoDose =
  /** On hold, retired, or with a hard cake at the bottom. */
  | 'hands-off'
  /** The flow is within its window. */
  | 'creamy'
  | 'thick'
  /** Gravity is above its window: add water first. */
  | 'water-first'
  /** Gravity is below its window: flocculant would only hide that. */
  | 'too-wet'
  | 'unmeasured';

export interface DoseAdvice {
  verdict: Verdict;
  volume?: Millilitres;
  advice:
    | { kind: 'none'; why: NoDose }
    /** `now`: the verdict asks for it. Otherwise a stir, a reading or a flow test comes first. */
    | { kind: 'next'; now: boolean; next: NextDose };
}

const noDose = ({ state, measured, flow }: Facts): NoDose | undefined => {
  if (state.hold || state.retired || state.cake) return 'hands-off';
  if (state.voided) return 'unmeasured';
  if (flow.band === 'thick') return 'thick';
  if (measured?.band === 'low') return 'too-wet';
  if (measured?.band === 'high') return 'water-first';
  return flow.band === 'in' ? 'creamy' : undefined;
};

/** The best available gravity: the one that the verdict's amounts go by, predicted, or the one it should have. */
const gravityOfBucket = ({ measured, predicted, state, now }: Facts): Gravity | undefined =>
  (measured && gravityForAmounts(measured, surenessOf(state, now)).value) ??
  predicted?.value ??
  state.believed?.value ??
  (state.settings.gravity && middle(state.settings.gravity));

/** The next dose of a bucket, or why there is none; the same dose that its verdict gives. */
export const adviseDose = (state: BucketState, now: Instant, sure?: number): DoseAdvice => {
  const verdict = decide(state, { now, role: 'keeper', sure });
  const f = facts(state, now);
  const volume = volumeNow(state, now)?.value;
  const common = { verdict, ...definedOnly({ volume }) };
  const why = noDose(f);
  if (why) return { ...common, advice: { kind: 'none', why } };
  const slurry = gravityOfBucket(f);
  if (slurry === undefined) return { ...common, advice: { kind: 'none', why: 'unmeasured' } };
  const next = nextDose(state, slurry, volume);
  return { ...common, advice: { kind: 'next', now: verdict.step === 'flocculate', next } };
};
