import type { BucketSettings } from '../settings/bucketSettings.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { losesFlux } from '../bucket/losesFlux.ts';
import type { Step, VerdictCaution } from './verdict.ts';

const ofStep: Partial<Record<Step, VerdictCaution[]>> = {
  'draw-off-water': ['drawn-water', 'dust'],
  'add-dry': ['dust'],
  'stir-on': ['mixer'],
  deflocculate: ['deflocculant'],
};

/** A full pail from here on weighs more than one person should lift: 15 l of glaze is over 20 kg. */
const heavyPail = 15_000;

/** What its keeper has marked the bucket with, and everybody who handles it is told. */
export const markedCautions = ({ cautions }: Pick<BucketSettings, 'cautions'>): VerdictCaution[] =>
  cautions.filter((caution) => caution !== 'children');

/** What can hurt somebody who takes this step on this bucket. */
export const verdictCautions = (step: Step, state: BucketState): VerdictCaution[] => {
  const { pail } = state.settings;
  const cake: VerdictCaution[] = step === 'stir' && state.cake ? ['mixer'] : [];
  const lift: VerdictCaution[] = step === 'sieve' && (pail ?? 0) >= heavyPail ? ['lifting'] : [];
  const hazard: VerdictCaution[] =
    step === 'on-hold' && state.hold?.cause === 'hazard' ? ['hold-hazard'] : [];
  const flux: VerdictCaution[] = step === 'draw-off-water' && losesFlux(state.settings) ? ['drawn-flux'] : [];
  return [...hazard, ...markedCautions(state.settings), ...cake, ...flux, ...(ofStep[step] ?? []), ...lift];
};
