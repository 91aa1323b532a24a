import { gravity, millimetres } from '../../glaze/units.ts';
import { pailVolume } from '../../glaze/slurry/pailVolume.ts';
import type { BucketSettings } from '../../studio/settings/bucketSettings.ts';
import type { bucketOptions } from './bucketOptions.ts';
import type { Values } from '../../contract/contract.ts';

export type SaidOfBucket = Values<typeof bucketOptions>;

/** Only the settings that were typed. */
export const bucketSaid = (v: SaidOfBucket): Partial<BucketSettings> => {
  const shape =
    v.rim !== undefined && v.bottom !== undefined && v.height !== undefined
      ? { top: v.rim, bottom: v.bottom, height: v.height }
      : undefined;
  const brim =
    shape &&
    pailVolume({
      bottomDiameter: shape.bottom,
      topDiameter: shape.top,
      height: shape.height,
      gap: millimetres(0),
    });
  const pail = v.pail ?? (brim?.ok ? brim.value : undefined);
  return {
    ...(v.nick !== undefined && { nick: v.nick }),
    ...(pail !== undefined && { pail }),
    ...(shape && { shape }),
    ...(v.gravity && { gravity: v.gravity }),
    ...(v.seconds && { efflux: v.seconds }),
    ...(v.cup && { cup: v.cup.name }),
    ...(v.solids !== undefined && { solids: gravity(v.solids) }),
    ...(v.rest !== undefined && { restLimit: v.rest }),
    ...(v.fresh !== undefined && { shelfLife: v.fresh }),
    ...(v.mesh !== undefined && { mesh: v.mesh }),
    ...(v.use && { use: v.use }),
    ...(v.cautions && { cautions: v.cautions }),
    ...(v.recipe !== undefined && { recipe: v.recipe }),
    ...(v.glaze !== undefined && { glaze: v.glaze }),
  };
};
