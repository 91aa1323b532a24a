import { definedOnly } from '../../definedOnly.ts';
import { householdVolumes } from '../../glaze/materials/householdVolumes.ts';
import type { Millilitres } from '../../glaze/units.ts';
import { volumeOf } from '../contents/contents.ts';
import type { CupTime, AddedOf } from './bucketEvent.ts';
import type { BucketState, FlowPoint, LoosenPoint } from './bucketState.ts';
import { without } from './without.ts';
import { minutes, since, type Instant } from '../ids.ts';
import { isWindowsCup, timeBand } from './timeBand.ts';

/** A dose takes ten minutes to work after it was stirred in; people are a little early. */
const doseWorks = minutes(8);

/** Whether a dose is still working: the flow has not reached its new value. */
export const isDoseAtWork = ({ flocculant }: Pick<BucketState, 'flocculant'>, at: Instant): boolean => {
  const from = flocculant.stirredIn ?? flocculant.lastAt;
  return from !== undefined && from <= at && since(from, at) < doseWorks;
};

/** The last readings of the last doses are enough for a line; older ones are dropped. */
const perDose = 2;
const mostPoints = 12;

/** Adds a flow reading, when the amount of flocculant is known. */
export const addFlowPoint = (state: BucketState, flow: CupTime): BucketState => {
  const { flocculant, contents, predicted } = state;
  const { doses, heptahydrate: salt, unknown, flow: before = [] } = flocculant;
  if (!contents || !predicted || unknown || !(contents.solids > 0)) return state;
  const percent = (100 * salt) / contents.solids;
  const point: FlowPoint = { ...flow, doses, salt, percent, gravity: predicted.value };
  const same = before.filter((one) => one.doses === doses).slice(-(perDose - 1));
  const points = [...before.filter((one) => one.doses !== doses), ...same, point];
  return { ...state, flocculant: { ...flocculant, flow: points.slice(-mostPoints) } };
};

/** Drops the flow readings: something else is in the pail now. */
export const withoutFlowPoints = (state: BucketState): BucketState => ({
  ...state,
  flocculant: without(state.flocculant, 'flow'),
});

/** Glaze that is taken out to try deflocculant in, ml. */
export const jar = 250;
/** One step: a drop in a jar. In 15 l that is 60 drops, 3 ml (common practice). */
export const loosenStepPerLitre = (1000 / jar) * householdVolumes.drop;

/** Steps that an amount is in this pail; undefined when nobody knows how full it is, or how strong a powder is. */
const loosenSteps = (
  { contents, settings }: Pick<BucketState, 'contents' | 'settings'>,
  added: { volume?: Millilitres },
): number | undefined => {
  const held = contents && volumeOf(contents, settings.solids).value;
  if (added.volume === undefined || !held || !(held > 0)) return undefined;
  return added.volume / ((held / 1000) * loosenStepPerLitre);
};

/** Counts deflocculant that went in. Readings since the last other change count as those before the first dose. */
export const withLoosening = (state: BucketState, added: AddedOf<'deflocculant'>): BucketState => {
  const more = loosenSteps(state, added);
  const before: NonNullable<BucketState['deflocculant']> = state.deflocculant ?? { steps: 0, doses: 0 };
  const { steps, doses } = before;
  const { flow: salts = [], doses: salted } = state.flocculant;
  const fresh = salts
    .filter((one) => one.doses === salted)
    .slice(-perDose)
    .map(({ cup, kind, seconds, gravity }) => ({ cup, kind, seconds, gravity, doses, steps }));
  const flow = before.flow ?? fresh;
  return {
    ...state,
    deflocculant: {
      steps: steps + (more ?? 0),
      doses: doses + 1,
      ...definedOnly({ right: before.right }),
      // After one of unknown size, earlier readings no longer fit on one line with later ones.
      ...(more !== undefined && flow.length > 0 && { flow }),
    },
  };
};

/** Whether it runs right by the cup that its window is for. */
const runsRight = ({ settings: { cup, efflux } }: BucketState, flow: CupTime): boolean =>
  efflux !== undefined && isWindowsCup(flow, cup) && timeBand(flow.seconds, efflux) === 'in';

/** A cup that ran so much slower than later, with no dose between, was clogged: left alone, glaze thickens (common practice). */
const cloggedBy = 1.25;

const wasClogged = (first: CupTime, later: CupTime): boolean =>
  first.cup === later.cup &&
  later.seconds !== 'wont-run' &&
  (first.seconds === 'wont-run' || first.seconds > cloggedBy * later.seconds);

export const addLoosenPoint = (state: BucketState, flow: CupTime): BucketState => {
  const { deflocculant, predicted } = state;
  if (!deflocculant || !predicted) return state;
  const { doses, steps, flow: before = [] } = deflocculant;
  const point: LoosenPoint = { ...flow, doses, steps, gravity: predicted.value };
  // The first tells what the last dose did, the newest what the next one will.
  const [first] = before.filter((one) => one.doses === doses);
  const same = first && !wasClogged(first, point) ? [first] : [];
  const points = [...before.filter((one) => one.doses !== doses), ...same, point].slice(-mostPoints);
  const right = runsRight(state, flow) ? { right: steps } : {};
  return { ...state, deflocculant: { ...deflocculant, ...right, flow: points } };
};

/** Drops the readings: something else is in the pail now. */
export const withoutLoosenPoints = (state: BucketState): BucketState =>
  state.deflocculant ? { ...state, deflocculant: without(state.deflocculant, 'flow') } : state;
