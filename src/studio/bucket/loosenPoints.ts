import { householdVolumes } from '../../glaze/materials/householdVolumes.ts';
import type { Gravity, Millilitres } from '../../glaze/units.ts';
import { volumeOf } from '../contents/contents.ts';
import type { Added, CupTime } from './bucketEvent.ts';
import type { BucketState } from './bucketState.ts';

/** Glaze that is taken out to try deflocculant in, ml. */
export const jar = 250;
/** One step: a drop in a jar. In 15 l that is 60 drops, 3 ml (common practice). */
export const loosenStepPerLitre = (1000 / jar) * householdVolumes.drop;

/** How a stirred bucket flowed at a known amount of deflocculant, in steps since the last fresh batch. */
export interface LoosenPoint extends CupTime {
  doses: number;
  steps: number;
  gravity: Gravity;
}

/** Readings to keep of one dose, and in all. */
const perDose = 2;
const mostPoints = 8;

/** Steps that an amount is in this pail; undefined when nobody knows how full it is, or how strong a powder is. */
export const loosenSteps = (
  { contents, settings }: Pick<BucketState, 'contents' | 'settings'>,
  added: { volume?: Millilitres },
): number | undefined => {
  const held = contents && volumeOf(contents, settings.solids).value;
  if (added.volume === undefined || !held || !(held > 0)) return undefined;
  return added.volume / ((held / 1000) * loosenStepPerLitre);
};

/** Counts deflocculant that went in. The readings since the last change of anything else are those before it. */
export const withLoosening = (
  state: BucketState,
  added: Extract<Added, { what: 'deflocculant' }>,
): BucketState => {
  const steps = loosenSteps(state, added);
  const before = state.deflocculant ?? { steps: 0, doses: 0 };
  const { doses: salted, flow: salts = [] } = state.flocculant;
  const fresh = salts
    .filter(({ doses }) => doses === salted)
    .slice(-perDose)
    .map(({ cup, kind, seconds, gravity }) => ({
      cup,
      kind,
      seconds,
      gravity,
      doses: before.doses,
      steps: before.steps,
    }));
  const flow = before.flow ?? fresh;
  return {
    ...state,
    deflocculant: {
      steps: before.steps + (steps ?? 0),
      doses: before.doses + 1,
      // After one of unknown size, earlier readings no longer fit on one line with later ones.
      ...(steps !== undefined && flow.length > 0 && { flow }),
    },
  };
};

/** Adds a flow reading at what is in now. */
export const addLoosenPoint = (state: BucketState, flow: CupTime): BucketState => {
  const { deflocculant, predicted } = state;
  if (!deflocculant || !predicted) return state;
  const { doses, steps, flow: before = [] } = deflocculant;
  const same = before.filter((one) => one.doses === doses).slice(-(perDose - 1));
  const point: LoosenPoint = { ...flow, doses, steps, gravity: predicted.value };
  const points = [...before.filter((one) => one.doses !== doses), ...same, point].slice(-mostPoints);
  return { ...state, deflocculant: { ...deflocculant, flow: points } };
};

/** Drops the readings: something else is in the pail now. */
export const withoutLoosenPoints = (state: BucketState): BucketState => {
  if (!state.deflocculant) return state;
  const { flow: _, ...deflocculant } = state.deflocculant;
  return { ...state, deflocculant };
};
