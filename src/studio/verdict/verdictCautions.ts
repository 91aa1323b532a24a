import type { BucketSettings } from '../settings/bucketSettings.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { losesFlux } from '../bucket/bucketHazards.ts';
import type { Step, VerdictCaution } from './verdict.ts';

const ofStep: Partial<Record<Step, VerdictCaution[]>> = {
  'draw-off-water': ['drawn-water', 'dust'],
  'add-dry': ['dust'],
  'stir-on': ['mixer'],
  deflocculate: ['deflocculant'],
};

/** A pail this full is too heavy for one person to lift: 15 l of glaze weighs over 20 kg. */
const heavyPail = 15_000;

/** The keeper's cautions for the bucket, shown to everybody who handles it. */
export const markedCautions = ({ cautions }: Pick<BucketSettings, 'cautions'>): VerdictCaution[] =>
  cautions.filter((caution) => caution !== 'children');

/** Hazards of this step on this bucket. */
export const verdictCautions = (step: Step, state: BucketState): VerdictCaution[] => {
  const { pail } = state.settings;
  const cake: VerdictCaution[] = step === 'stir' && state.cake ? ['mixer'] : [];
  const lift: VerdictCaution[] = step === 'sieve' && (pail ?? 0) >= heavyPail ? ['lifting'] : [];
  const hazard: VerdictCaution[] =
    step === 'on-hold' && state.hold?.cause === 'hazard' ? ['hold-hazard'] : [];
  const flux: VerdictCaution[] = step === 'draw-off-water' && losesFlux(state.settings) ? ['drawn-flux'] : [];
  const mist: VerdictCaution[] = state.settings.use === 'spraying' ? ['spray'] : [];
  return [
    ...hazard,
    ...mist,
    ...markedCautions(state.settings),
    ...cake,
    ...flux,
    ...(ofStep[step] ?? []),
    ...lift,
  ];
};
