import { definedOnly } from '../../definedOnly.ts';
import { coverage95 } from '../../glaze/statistics/normal.ts';
import { grams, millilitres, type Grams, type Gravity, type Millilitres } from '../../glaze/units.ts';
import type { Added } from '../bucket/bucketEvent.ts';
import { withoutFlagged } from '../bucket/withoutFlagged.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { powderIn, waterGramsPerMl, type Estimate } from '../contents/contents.ts';
import { saltIn, saturatedSolutionWith } from '../bucket/flocculantSolution.ts';
import { volumeHeld } from '../bucket/fold/foldBucket.ts';
import { doseStepOfDry } from '../dose/nextDose.ts';

export type AdditionProblem =
  | { kind: 'wants-volume'; what: string }
  | { kind: 'wants-weight'; what: string }
  | { kind: 'more-than-pail'; pail: Millilitres }
  /** It would run over the rim, on top of what the pail holds. */
  | { kind: 'over-the-rim'; held: Millilitres; pail: Millilitres }
  /** More than this bucket holds, or than the bucket it came from. */
  | { kind: 'more-than-held'; held: Millilitres; from: boolean }
  /** Many times a usual dose; `meant` is a thousandth of it, when that would be a dose. */
  | { kind: 'no-dose'; times: number; dose: Millilitres; meant?: { mass: Grams } | { volume: Millilitres } }
  /** More water drawn off than would leave a slurry that pours. */
  | { kind: 'more-than-water'; water: Millilitres };

export interface SaidAddition {
  what: Added['what'];
  bucket: BucketState;
  /** What the pail held just before, when known. */
  held?: Estimate<Millilitres>;
  amount?: { mass: Grams } | { volume: Millilitres };
  from?: BucketState;
  /** The glaze is this bucket's own. */
  own?: true;
  gravity?: Gravity;
  /** Epsom salt in a litre of the flocculant solution; saturated when not said. */
  saltPerLitre?: Grams;
}

type AdditionFound = { ok: true; added: Added; taken?: Added } | { ok: false; why: AdditionProblem };

/** A litre of water weighs a kilogram, so water and drawn-off water may be given by weight. */
const asVolume = (amount: SaidAddition['amount']): Millilitres | undefined => {
  if (!amount) return undefined;
  return 'volume' in amount ? amount.volume : millilitres(amount.mass);
};

/** The volume that an addition takes up or frees, as far as it is known. Powder takes its weight over its gravity. */
const roomOf = ({ what, amount, bucket }: SaidAddition): number => {
  if (!amount || ((what === 'glaze' || what === 'taken') && 'mass' in amount)) return 0;
  if ('volume' in amount) return amount.volume;
  return what === 'dry' ? amount.mass / bucket.settings.solids : amount.mass;
};

/** The most that a bucket may hold: two standard deviations above the logbook's estimate. */
const mostHeld = (bucket: BucketState): { value: Millilitres; most: number } | undefined => {
  const held = volumeHeld(bucket);
  return held && { value: held.value, most: held.value + 2 * held.sd };
};

/** People give a pail's size to the nearest mark. */
const rimWithin = 0.05;

/** Whether the addition must have run over the rim, whatever the uncertainty of the volume. */
const overTheRim = ({ what, bucket, held, ...said }: SaidAddition): AdditionProblem | undefined => {
  const { pail } = bucket.settings;
  if (pail === undefined || !held || bucket.unknownSince.length > 0) return undefined;
  if (what !== 'water' && what !== 'glaze' && what !== 'dry') return undefined;
  const over = held.value + roomOf({ what, bucket, ...said }) - pail;
  return over > coverage95 * held.sd + rimWithin * pail
    ? { kind: 'over-the-rim', held: held.value, pail }
    : undefined;
};

/** A dose is 0.03 % of the dry mass; nobody adds 2 % at once (common practice). */
const mostSaltOfDry = 0.02;

/** The volume in the pail: given lately, and nothing of unknown amount went in since. */
const knownVolume = ({ bucket, held }: SaidAddition) =>
  held && bucket.unknownSince.length === 0 ? bucket.contents : undefined;

const notADose = (said: SaidAddition): AdditionProblem | undefined => {
  const { what, amount, saltPerLitre } = said;
  const contents = knownVolume(said);
  if (what !== 'flocculant' || !amount || !contents) return undefined;
  const salt = saltIn(amount, saltPerLitre);
  const { value, sd } = powderIn(contents);
  if (salt <= mostSaltOfDry * (value + coverage95 * sd)) return undefined;
  const times = salt / (doseStepOfDry * value);
  const dose = saturatedSolutionWith(grams(doseStepOfDry * value));
  // A litre typed for a millilitre, or a kilogram for a gram.
  const slipped = times / 1000 >= 0.05 && times / 1000 <= 3;
  if (!slipped) return { kind: 'no-dose', times, dose };
  const meant =
    'mass' in amount ? { mass: grams(amount.mass / 1000) } : { volume: millilitres(amount.volume / 1000) };
  return { kind: 'no-dose', times, dose, meant };
};

/** Settled grains still hold water between them: no sediment has a higher gravity than this. */
const heaviestBed = 2.2;

const beyondItsWater = (said: SaidAddition): AdditionProblem | undefined => {
  const contents = knownVolume(said);
  const off = asVolume(said.amount);
  if (said.what !== 'draw-off' || off === undefined || !contents) return undefined;
  const water = millilitres(contents.water / waterGramsPerMl);
  const left = water - off;
  const bed = contents.solids / said.bucket.settings.solids / waterGramsPerMl;
  const heavy = left <= 0 || (left * waterGramsPerMl + contents.solids) / (left + bed) > heaviestBed;
  return heavy ? { kind: 'more-than-water', water } : undefined;
};

/** Reads what was added, or says what is wrong with it. */
export const readAddition = (said: SaidAddition): AdditionFound => {
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
  const implausible = notADose(said) ?? beyondItsWater(said);
  if (implausible) return { ok: false, why: implausible };
  if (what === 'dry' && volume !== undefined) return { ok: false, why: { kind: 'wants-weight', what } };
  if ((what === 'glaze' || what === 'taken') && mass !== undefined)
    return { ok: false, why: { kind: 'wants-volume', what } };
  switch (what) {
    case 'water':
    case 'draw-off':
      return { ok: true, added: { what, ...definedOnly({ volume: asVolume(amount) }) } };
    case 'dry':
      return { ok: true, added: { what, ...definedOnly({ mass }) } };
    case 'flocculant': {
      if (mass !== undefined) return { ok: true, added: { what, heptahydrate: mass } };
      if (volume === undefined) return { ok: true, added: { what } };
      const heptahydrate =
        said.saltPerLitre === undefined ? undefined : grams((said.saltPerLitre * volume) / 1000);
      return { ok: true, added: { what, volume, ...definedOnly({ heptahydrate }) } };
    }
    case 'glaze': {
      const salt =
        from && volume !== undefined && held && held.value > 0 && from.flocculant.heptahydrate > 0
          ? grams((from.flocculant.heptahydrate * volume) / held.value)
          : undefined;
      const known =
        from && !from.voided && from.unknownSince.length === 0 ? withoutFlagged(from).predicted : undefined;
      const { gravity = known?.value, own } = said;
      const gravityU = said.gravity === undefined ? known?.u95 : undefined;
      return {
        ok: true,
        added: {
          what,
          ...definedOnly({ volume, gravity, gravityU, from: from?.no, own, heptahydrate: salt }),
        },
        ...(from && { taken: { what: 'taken', ...definedOnly({ volume }), to: bucket.no } }),
      };
    }
    case 'taken':
      return { ok: true, added: { what, ...definedOnly({ volume }) } };
    case 'deflocculant':
    case 'other':
      return { ok: true, added: { what, ...definedOnly({ volume, mass }) } };
  }
};
