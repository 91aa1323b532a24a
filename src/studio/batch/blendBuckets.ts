import { coverage95 } from '../../glaze/statistics/normal.ts';
import { grams, gravity, type Gravity, type Grams, type Millilitres } from '../../glaze/units.ts';
import { withoutFlagged } from '../bucket/withoutFlagged.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { type Contents, contentsFrom, gravityOf, volumeOf } from '../contents/contents.ts';
import type { Instant } from '../ids.ts';
import { volumeNow } from '../bucket/volumeNow.ts';

export type Blend =
  | { kind: 'unmeasured'; bucket: BucketState }
  | { kind: 'needs-volume'; bucket: BucketState }
  | { kind: 'more-than-held'; held: Millilitres }
  | {
      kind: 'blend';
      gravity: Gravity;
      u95: number;
      volume: Millilitres;
      volumeU95: number;
      /** What the first bucket held before. */
      held: Millilitres;
      poured: Millilitres;
      water: Grams;
      powder: Grams;
      heptahydrate: Grams;
      /** Flocculant that both bring along, in per cent of the powder. */
      percentOfDry: number;
      /** One of them got flocculant of an unknown amount. */
      flocculantUnknown: boolean;
    };

type Measured =
  | { ok: true; contents: Contents; volume: Millilitres }
  | { ok: false; why: Extract<Blend, { bucket: BucketState }> };

const measured = (read: BucketState, now: Instant): Measured => {
  const bucket = withoutFlagged(read);
  const slurryGravity = bucket.predicted ?? bucket.believed;
  if (!slurryGravity || bucket.voided || bucket.unknownSince.length > 0)
    return { ok: false, why: { kind: 'unmeasured', bucket } };
  const volume = volumeNow(bucket, now);
  if (!volume) return { ok: false, why: { kind: 'needs-volume', bucket } };
  const slurry = { value: slurryGravity.value, sd: slurryGravity.u95 / coverage95 };
  return { ok: true, contents: contentsFrom(volume, slurry, bucket.settings.solids), volume: volume.value };
};

/** The contents of a bucket after another bucket, or some of it, was poured in. */
export const blendBuckets = (
  first: BucketState,
  second: BucketState,
  { amount, now }: { amount?: Millilitres; now: Instant },
): Blend => {
  const one = measured(first, now);
  if (!one.ok) return one.why;
  const two = measured(second, now);
  if (!two.ok) return two.why;
  const poured = amount ?? two.volume;
  if (poured > two.volume * 1.001) return { kind: 'more-than-held', held: two.volume };
  const part = poured / two.volume;
  const [p, q] = [one.contents, two.contents];
  const water = p.water + part * q.water;
  const solids = p.solids + part * q.solids;
  const space = p.solids / first.settings.solids + (part * q.solids) / second.settings.solids;
  const mixed = gravity(solids / space);
  const together: Contents = {
    water: grams(water),
    solids: grams(solids),
    covariance: {
      waterWater: p.covariance.waterWater + part ** 2 * q.covariance.waterWater,
      waterSolids: p.covariance.waterSolids + part ** 2 * q.covariance.waterSolids,
      solidsSolids: p.covariance.solidsSolids + part ** 2 * q.covariance.solidsSolids,
    },
  };
  const slurry = gravityOf(together, mixed);
  const volume = volumeOf(together, mixed);
  const salt = first.flocculant.heptahydrate + part * second.flocculant.heptahydrate;
  return {
    kind: 'blend',
    gravity: slurry.value,
    u95: coverage95 * slurry.sd,
    volume: volume.value,
    volumeU95: coverage95 * volume.sd,
    held: one.volume,
    poured,
    water: together.water,
    powder: together.solids,
    heptahydrate: grams(salt),
    percentOfDry: (100 * salt) / solids,
    flocculantUnknown: first.flocculant.unknown || second.flocculant.unknown,
  };
};
