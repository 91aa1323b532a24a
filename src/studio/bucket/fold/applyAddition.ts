import type { BucketEntry, Added, BucketEvent } from '../bucketEvent.ts';
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
import { outgrewReading } from './couldMove.ts';
import { saltInSaturatedSolution } from '../flocculantSolution.ts';
import { withLoosening, withoutFlowPoints, withoutLoosenPoints } from '../flowPoints.ts';
import { waterToPowder } from '../../contents/driftPoint.ts';
import { changeContents } from './changeContents.ts';
import { withPrediction } from './applyVolume.ts';
import { without } from './without.ts';

/** How exactly people pour and weigh into a bucket (common practice). */
export const pouredWithin = 0.05;
export const weighedWithin = 0.02;

/** Additions that do not change how the rest settles. */
const sameMix: ReadonlySet<Added['what']> = new Set(['water', 'draw-off', 'taken']);

/** Water and powder that an addition brings in; undefined when its amount is unknown. */
const massesAdded = (
  added: Added,
  state: BucketState,
): { water: Estimate<number>; solids: Estimate<number>; together?: number } | undefined => {
  const none = { value: 0, sd: 0 };
  const poured = (volume: number) => ({
    value: volume * waterGramsPerMl,
    sd: Math.abs(volume) * waterGramsPerMl * pouredWithin,
  });
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
      if (added.volume === undefined || added.gravity === undefined) return undefined;
      if (added.gravity >= state.settings.solids) return undefined;
      const into = contentsFrom(
        { value: added.volume, sd: added.volume * pouredWithin },
        { value: added.gravity, sd: (added.gravityU ?? 0.03) / coverage95 },
        state.settings.solids,
      );
      return {
        water: { value: into.water, sd: Math.sqrt(into.covariance.waterWater) },
        solids: { value: into.solids, sd: Math.sqrt(into.covariance.solidsSolids) },
        together: into.covariance.waterSolids,
      };
    }
    case 'flocculant':
    case 'deflocculant':
      // A dose is about a thousandth of the bucket: it changes the flow, not the gravity.
      return { water: none, solids: none };
    case 'taken':
    case 'other':
      return undefined;
  }
};

/** Folds an addition, or something taken out, into the state. */
export const applyAddition = (
  state: BucketState,
  entry: BucketEntry,
  event: Extract<BucketEvent, { kind: 'addition' }>,
): BucketState => {
  const { added } = event;
  let next: BucketState = { ...state };
  const { solids: particleGravity } = state.settings;
  if (next.stir && added.what !== 'taken') next.stir = { ...next.stir, addedSince: true };
  // A different mix, or a dose, settles differently.
  if (event.remake || !sameMix.has(added.what)) next = without(next, 'rests');
  // What a keeper said about its glaze was about the batch before.
  if (event.remake) next.apart = entry.seq;
  if (event.remake) next.flocculant = { heptahydrate: grams(0), doses: 0, unknown: false };
  if (event.remake) next = without(next, 'deflocculant');
  if (added.what === 'flocculant' || added.what === 'deflocculant')
    next = without(without(next, 'efflux'), 'look');
  if (added.what === 'flocculant') {
    const salt =
      added.heptahydrate ?? (added.volume === undefined ? undefined : saltInSaturatedSolution(added.volume));
    const { stirredIn: _, ...before } = next.flocculant;
    next.flocculant = {
      ...before,
      heptahydrate: grams(before.heptahydrate + (salt ?? 0)),
      doses: before.doses + 1,
      lastAt: entry.at,
      unknown: before.unknown || salt === undefined,
    };
    // After a dose of unknown size, earlier readings no longer fit on one line with later ones.
    return withoutLoosenPoints(salt === undefined ? withoutFlowPoints(next) : next);
  }
  if (added.what === 'deflocculant') return withoutFlowPoints(withLoosening(next, added));
  if (added.what === 'taken') {
    if (!next.contents) return next;
    if (added.volume === undefined) next = without(next, 'volumeAt');
    else {
      const held = volumeOf(next.contents, particleGravity).value;
      const left = Math.max(0.01, 1 - added.volume / held);
      Object.assign(
        next,
        changeContents(next, (contents) => scaleContents(contents, left)),
      );
      // Glaze that is taken out takes its salt with it.
      next.flocculant = {
        ...next.flocculant,
        heptahydrate: grams(next.flocculant.heptahydrate * left),
      };
    }
    return next;
  }
  const move = massesAdded(added, state);
  if (!move || !next.contents) next.unknownSince = [...next.unknownSince, entry.seq];
  if (added.what === 'other' && added.volume === undefined && added.mass === undefined)
    next = without(next, 'volumeAt');
  if (move && next.contents) {
    const moved = withAdded(next.contents, move.water, move.solids, move.together);
    const by = gravityOf(moved, particleGravity).value - gravityOf(next.contents, particleGravity).value;
    next.moved += Math.abs(by);
    next.carried += waterToPowder(moved) - waterToPowder(next.contents);
    Object.assign(
      next,
      changeContents(next, (contents) => withAdded(contents, move.water, move.solids, move.together)),
    );
  }
  if (added.what === 'glaze' && added.heptahydrate !== undefined)
    next.flocculant = {
      ...next.flocculant,
      heptahydrate: grams(next.flocculant.heptahydrate + added.heptahydrate),
    };
  if (outgrewReading(next)) next = without(without(next, 'efflux'), 'look');
  const mixed = added.what === 'glaze' || added.what === 'other';
  return withPrediction(mixed ? withoutLoosenPoints(withoutFlowPoints(next)) : next);
};
