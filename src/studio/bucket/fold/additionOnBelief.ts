import { coverage95 } from '../../../glaze/statistics/normal.ts';
import { dryContent } from '../../../glaze/slurry/slurry.ts';
import { gravity as asGravity } from '../../../glaze/units.ts';
import { place, type Component } from '../../belief/mixture.ts';
import { deflocculated, doseStep, unknownAmount, unlogged } from '../../belief/priors.ts';
import { middleGravity } from '../../belief/startBelief.ts';
import { withAdded, withMoved } from '../../belief/withAdded.ts';
import type { BucketSettings } from '../../settings/bucketSettings.ts';
import { pouredWithin, weighedWithin } from './applyAddition.ts';
import type { Added, AddedOf } from '../bucketEvent.ts';
import { saltAdded } from '../flocculantSolution.ts';
import { loosenStepPerLitre } from '../flowPoints.ts';

/** Grams of salt that one step of flocculant is, in what an account says is in the pail; undefined when that is no slurry. */
const stepGrams = ({ mean }: Component, { solids }: BucketSettings): number | undefined => {
  const dry = dryContent({ slurry: asGravity(mean[place.gravity] ?? 0), particleGravity: solids });
  if (!dry.ok || !(dry.value > 0)) return undefined;
  return (doseStep.percent / 100) * dry.value * Math.exp(mean[place.volume] ?? 0);
};

const dosed = (one: Component, added: AddedOf<'flocculant'>, settings: BucketSettings) => {
  const salt = saltAdded(added);
  const step = stepGrams(one, settings);
  if (salt === undefined || step === undefined)
    return withMoved(one, [place.flow, unlogged.salt.size, unknownAmount.flow]);
  // Past a handful of steps it is a gel, and no stiffer for more.
  const steps = Math.min(6, salt / step);
  return withMoved(one, [place.flow, steps * doseStep.flow, steps * doseStep.sd]);
};

/** Nobody knows how strong a product is: even a little of it leaves the flow in doubt. */
const leastDoubt = 0.1;
const loosened = (one: Component, added: AddedOf<'deflocculant'>): Component => {
  const litres = Math.exp(one.mean[place.volume] ?? 0);
  const steps = added.volume === undefined ? 1 : Math.min(4, added.volume / (litres * loosenStepPerLitre));
  const sd = Math.max(leastDoubt, steps * deflocculated.sd);
  return withMoved(one, [place.flow, steps * deflocculated.flow, sd]);
};

/** Nobody knows what it was, so it may have changed anything. */
const unknownMove = (one: Component): Component =>
  withMoved(
    one,
    [place.gravity, 0, unknownAmount.gravity],
    [place.volume, 0, unknownAmount.volume],
    [place.flow, 0, unknownAmount.flow],
  );

/** Glaze of unknown gravity is taken for one like this bucket's. */
const glazeIn = (one: Component, added: AddedOf<'glaze'>, settings: BucketSettings) => {
  if (added.volume === undefined) return unknownMove(one);
  const litres = added.volume / 1000;
  const known = added.gravity !== undefined && added.gravity < settings.solids ? added.gravity : undefined;
  const gravity = known ?? middleGravity(settings);
  const mixed = withAdded(one, { gravity, litres, sd: litres * pouredWithin });
  const share = litres / (litres + Math.exp(one.mean[place.volume] ?? 0));
  const sd = known === undefined ? 0.1 : (added.gravityU ?? 0.03) / coverage95;
  // Nobody said how the added glaze flows.
  return withMoved(mixed, [place.gravity, 0, share * sd], [place.flow, 0, share * unknownAmount.flow]);
};

const poured = (millilitres: number) => ({
  gravity: 1,
  litres: millilitres / 1000,
  sd: (Math.abs(millilitres) / 1000) * pouredWithin,
});

/** An amount that nobody said is about as much as one that nobody logged, give or take all of it. */
const unknownWater = { gravity: 1, litres: unlogged.water.size, sd: unlogged.water.size };
const unknownDrawOff = { gravity: 1, litres: -unlogged.waterOut.size, sd: unlogged.waterOut.size };
const unknownPowder = { litres: unlogged.powder.size, sd: unlogged.powder.size };

/** An account of a bucket after what was logged to have gone in or come out. */
export const additionOnBelief = (one: Component, added: Added, settings: BucketSettings): Component => {
  const { solids } = settings;
  switch (added.what) {
    case 'water':
      return withAdded(one, added.volume === undefined ? unknownWater : poured(added.volume));
    case 'draw-off':
      return withAdded(one, added.volume === undefined ? unknownDrawOff : poured(-added.volume));
    case 'dry': {
      if (added.mass === undefined) return withAdded(one, { gravity: solids, ...unknownPowder });
      const litres = added.mass / (1000 * solids);
      return withAdded(one, { gravity: solids, litres, sd: litres * weighedWithin });
    }
    case 'flocculant':
      return dosed(one, added, settings);
    case 'deflocculant':
      return loosened(one, added);
    case 'glaze':
      return glazeIn(one, added, settings);
    case 'taken':
      return added.volume === undefined
        ? withMoved(one, [place.volume, 0, unknownAmount.volume])
        : withAdded(one, { ...poured(-added.volume), gravity: one.mean[place.gravity] ?? 1 });
    case 'other':
      return unknownMove(one);
  }
};
