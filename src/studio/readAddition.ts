import { coverage95 } from '../glaze/uncertainty.ts';
import { grams, millilitres, type Grams, type Gravity, type Millilitres } from '../glaze/units.ts';
import type { Added } from './bucketEvent.ts';
import type { BucketState } from './bucketState.ts';
import type { Estimate } from './contents.ts';
import { volumeHeld } from './foldBucket.ts';

export type AdditionProblem =
  | { kind: 'wants-volume'; what: string }
  | { kind: 'wants-weight'; what: string }
  | { kind: 'more-than-pail'; pail: Millilitres }
  /** Over the rim, with what is in the pail already. */
  | { kind: 'over-the-rim'; held: Millilitres; pail: Millilitres; more: Millilitres }
  /** Out of this bucket, or out of the one that it came from. */
  | { kind: 'more-than-held'; held: Millilitres; from: boolean };

export interface SaidAddition {
  what: Added['what'];
  bucket: BucketState;
  /** What the pail held just before, when that is known. */
  held?: Estimate<Millilitres>;
  amount?: { mass: Grams } | { volume: Millilitres };
  from?: BucketState;
  gravity?: Gravity;
  /** Epsom salt in a litre of the flocculant's solution; saturated when not said. */
  saltPerLitre?: Grams;
}

type Found = { ok: true; added: Added; taken?: Added } | { ok: false; why: AdditionProblem };

/** A litre of water weighs a kilogram: water, and water drawn off, may be said by weight. */
const asVolume = (amount: SaidAddition['amount']): Millilitres | undefined => {
  if (!amount) return undefined;
  return 'volume' in amount ? amount.volume : millilitres(amount.mass);
};

/** The room that it takes in the pail, or leaves there, as far as is said. Grains take their weight over their gravity. */
const roomOf = ({ what, amount, bucket }: SaidAddition): number => {
  if (!amount || ((what === 'glaze' || what === 'taken') && 'mass' in amount)) return 0;
  if ('volume' in amount) return amount.volume;
  return what === 'dry' ? amount.mass / bucket.settings.solids : amount.mass;
};

/** A volume is believed within two standard deviations of what the logbook makes it. */
const mostHeld = (bucket: BucketState): { value: Millilitres; most: number } | undefined => {
  const held = volumeHeld(bucket);
  return held && { value: held.value, most: held.value + 2 * held.sd };
};

/** A pail's size is told, to the nearest mark. */
const rimWithin = 0.05;

/** Whether what went in must have run over, whatever the volume's uncertainty. */
const overTheRim = ({ what, bucket, held, ...said }: SaidAddition): AdditionProblem | undefined => {
  const { pail } = bucket.settings;
  if (pail === undefined || !held || bucket.unknownSince.length > 0) return undefined;
  if (what !== 'water' && what !== 'glaze' && what !== 'dry') return undefined;
  const more = millilitres(roomOf({ what, bucket, ...said }));
  const over = held.value + more - pail;
  return over > coverage95 * held.sd + rimWithin * pail
    ? { kind: 'over-the-rim', held: held.value, pail, more }
    : undefined;
};

/** What was added, from what was said; or what is wrong with it. */
export const readAddition = (said: SaidAddition): Found => {
  const { what, amount, bucket, from } = said;
  const volume = amount && 'volume' in amount ? amount.volume : undefined;
  const mass = amount && 'mass' in amount ? amount.mass : undefined;
  const { pail } = bucket.settings;
  const room = roomOf(said);
  if (pail !== undefined && room > pail) return { ok: false, why: { kind: 'more-than-pail', pail } };
  const over = overTheRim(said);
  if (over) return { ok: false, why: over };
  const out = what === 'draw-off' || what === 'taken' ? bucket : what === 'glaze' ? from : undefined;
  const held = out && mostHeld(out);
  if (held && room > held.most)
    return { ok: false, why: { kind: 'more-than-held', held: held.value, from: what === 'glaze' } };
  switch (what) {
    case 'water':
    case 'draw-off': {
      const water = asVolume(amount);
      return { ok: true, added: { what, ...(water !== undefined && { volume: water }) } };
    }
    case 'dry':
      if (volume !== undefined) return { ok: false, why: { kind: 'wants-weight', what } };
      return { ok: true, added: { what, ...(mass !== undefined && { mass }) } };
    case 'flocculant': {
      if (mass !== undefined) return { ok: true, added: { what, heptahydrate: mass } };
      if (volume === undefined) return { ok: true, added: { what } };
      const salt =
        said.saltPerLitre === undefined ? {} : { heptahydrate: grams((said.saltPerLitre * volume) / 1000) };
      return { ok: true, added: { what, volume, ...salt } };
    }
    case 'glaze': {
      if (mass !== undefined) return { ok: false, why: { kind: 'wants-volume', what } };
      const salt =
        from && volume !== undefined && held && held.value > 0 && from.flocculant.heptahydrate > 0
          ? grams((from.flocculant.heptahydrate * volume) / held.value)
          : undefined;
      const known = said.gravity ?? from?.predicted?.value;
      const u95 = said.gravity === undefined ? from?.predicted?.u95 : undefined;
      return {
        ok: true,
        added: {
          what,
          ...(volume !== undefined && { volume }),
          ...(known !== undefined && { gravity: known }),
          ...(u95 !== undefined && { gravityU: u95 }),
          ...(from && { from: from.no }),
          ...(salt !== undefined && { heptahydrate: salt }),
        },
        ...(from && { taken: { what: 'taken', ...(volume !== undefined && { volume }), to: bucket.no } }),
      };
    }
    case 'taken':
      if (mass !== undefined) return { ok: false, why: { kind: 'wants-volume', what } };
      return { ok: true, added: { what, ...(volume !== undefined && { volume }) } };
    case 'deflocculant':
    case 'other':
      return {
        ok: true,
        added: { what, ...(volume !== undefined && { volume }), ...(mass !== undefined && { mass }) },
      };
  }
};
