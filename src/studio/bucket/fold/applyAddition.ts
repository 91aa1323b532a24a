import type { BucketEntry, Added, BucketEventOf, AddedOf } from '../bucketEvent.ts';
import { coverage95 } from '../../../glaze/statistics/normal.ts';
import { grams } from '../../../glaze/units.ts';
import type { BucketState } from '../bucketState.ts';
import {
  contentsFrom,
  gravityOf,
  scaleContents,
  volumeOf,
  waterGramsPerMl,
  withAdded,
  type Estimate,
} from '../../contents/contents.ts';
import { saltAdded } from '../flocculantSolution.ts';
import { withLoosening, withoutFlowPoints, withoutLoosenPoints } from '../flowPoints.ts';
import { waterToPowder } from '../../contents/driftPoint.ts';
import { changeContents, withPrediction } from './applyVolume.ts';
import { outgrewReading } from './couldMove.ts';
import { without } from '../without.ts';

/** How exactly people pour and weigh into a bucket (common practice). */
export const pouredWithin = 0.05;
export const weighedWithin = 0.02;

/** Additions that do not change how the rest settles. */
const sameMix: ReadonlySet<Added['what']> = new Set(['water', 'draw-off', 'taken']);

/**
 * Whatever may move gravity. Glaze that is taken out is like what stays; a dose is about a thousandth of the bucket, and
 * changes only its flow.
 */
type Mixed = Exclude<Added, AddedOf<'flocculant' | 'deflocculant' | 'taken'>>;

const none = { value: 0, sd: 0 };
const poured = (volume: number): Estimate<number> => ({
  value: volume * waterGramsPerMl,
  sd: Math.abs(volume) * waterGramsPerMl * pouredWithin,
});

/** Water and powder that an addition brings in; undefined when its amount is unknown. */
const massesAdded = (
  added: Mixed,
  { settings: { solids } }: BucketState,
): { water: Estimate<number>; solids: Estimate<number>; together?: number } | undefined => {
  switch (added.what) {
    case 'water':
      return added.volume === undefined ? undefined : { water: poured(added.volume), solids: none };
    case 'draw-off':
      return added.volume === undefined ? undefined : { water: poured(-added.volume), solids: none };
    case 'dry':
      return added.mass === undefined
        ? undefined
        : { water: none, solids: { value: added.mass, sd: added.mass * weighedWithin } };
    case 'glaze': {
      const { volume, gravity, gravityU = 0.03 } = added;
      if (volume === undefined || gravity === undefined || gravity >= solids) return undefined;
      const into = contentsFrom(
        { value: volume, sd: volume * pouredWithin },
        { value: gravity, sd: gravityU / coverage95 },
        solids,
      );
      return {
        water: { value: into.water, sd: Math.sqrt(into.covariance.waterWater) },
        solids: { value: into.solids, sd: Math.sqrt(into.covariance.solidsSolids) },
        together: into.covariance.waterSolids,
      };
    }
    case 'other':
      return undefined;
  }
};

/** How it flowed before no longer counts. */
const withoutFlow = (state: BucketState): BucketState => without(without(state, 'efflux'), 'look');

const withFlocculant = (
  state: BucketState,
  at: BucketEntry['at'],
  added: AddedOf<'flocculant'>,
): BucketState => {
  const salt = saltAdded(added);
  const { stirredIn: _, ...before } = state.flocculant;
  const next: BucketState = {
    ...withoutFlow(state),
    flocculant: {
      ...before,
      heptahydrate: grams(before.heptahydrate + (salt ?? 0)),
      doses: before.doses + 1,
      lastAt: at,
      unknown: before.unknown || salt === undefined,
    },
  };
  // After a dose of unknown size, earlier readings no longer fit on one line with later ones.
  return withoutLoosenPoints(salt === undefined ? withoutFlowPoints(next) : next);
};

const withTaken = (state: BucketState, { volume }: AddedOf<'taken'>): BucketState => {
  const { contents, flocculant } = state;
  if (!contents) return state;
  if (volume === undefined) return without(state, 'volumeAt');
  const left = Math.max(0.01, 1 - volume / volumeOf(contents, state.settings.solids).value);
  return {
    ...state,
    ...changeContents(state, (held) => scaleContents(held, left)),
    // Glaze that is taken out takes its salt with it.
    flocculant: { ...flocculant, heptahydrate: grams(flocculant.heptahydrate * left) },
  };
};

const withMixed = (state: BucketState, entry: BucketEntry, added: Mixed): BucketState => {
  const { contents, settings, flocculant } = state;
  let next = { ...state };
  const move = massesAdded(added, state);
  if (added.what === 'other' && added.volume === undefined && added.mass === undefined)
    next = without(next, 'volumeAt');
  if (move && contents) {
    const moved = withAdded(contents, move.water, move.solids, move.together);
    next.moved += Math.abs(
      gravityOf(moved, settings.solids).value - gravityOf(contents, settings.solids).value,
    );
    next.carried += waterToPowder(moved) - waterToPowder(contents);
    Object.assign(
      next,
      changeContents(next, (held) => withAdded(held, move.water, move.solids, move.together)),
    );
  } else next.unknownSince = [...next.unknownSince, entry.seq];
  if (added.what === 'glaze' && added.heptahydrate !== undefined)
    next.flocculant = { ...flocculant, heptahydrate: grams(flocculant.heptahydrate + added.heptahydrate) };
  if (outgrewReading(next)) next = withoutFlow(next);
  const isOther = added.what === 'glaze' || added.what === 'other';
  return withPrediction(isOther ? withoutLoosenPoints(withoutFlowPoints(next)) : next);
};

/** Folds an addition, or something taken out, into the state. */
export const applyAddition = (
  state: BucketState,
  entry: BucketEntry,
  { added, remake }: BucketEventOf<'addition'>,
): BucketState => {
  // A different mix, or a dose, settles differently.
  let next: BucketState = remake || !sameMix.has(added.what) ? without(state, 'rests') : state;
  if (next.stir && added.what !== 'taken') next = { ...next, stir: { ...next.stir, addedSince: true } };
  if (remake)
    next = {
      ...without(next, 'deflocculant'),
      // What a keeper said about its glaze was about the batch before.
      apart: entry.seq,
      flocculant: { heptahydrate: grams(0), doses: 0, unknown: false },
    };
  switch (added.what) {
    case 'flocculant':
      return withFlocculant(next, entry.at, added);
    case 'deflocculant':
      return withoutFlowPoints(withLoosening(withoutFlow(next), added));
    case 'taken':
      return withTaken(next, added);
    default:
      return withMixed(next, entry, added);
  }
};
