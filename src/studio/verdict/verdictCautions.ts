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
  const { settings, hold, cake } = state;
  const where = (holds: boolean, caution: VerdictCaution) => (holds ? [caution] : []);
  return [
    ...where(step === 'on-hold' && hold?.cause === 'hazard', 'hold-hazard'),
    ...where(settings.use === 'spraying', 'spray'),
    ...markedCautions(settings),
    ...where(step === 'stir' && cake !== undefined, 'mixer'),
    ...where(step === 'draw-off-water' && losesFlux(settings), 'drawn-flux'),
    ...(ofStep[step] ?? []),
    ...where(step === 'sieve' && (settings.pail ?? 0) >= heavyPail, 'lifting'),
  ];
};
