import { definedOnly } from '../../definedOnly.ts';
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
    ...definedOnly({ nick: v.nick, pail, shape, gravity: v.gravity, efflux: v.seconds, cup: v.cup?.name }),
    ...(v.solids !== undefined && { solids: gravity(v.solids) }),
    ...definedOnly({
      restLimit: v.rest,
      shelfLife: v.fresh,
      mesh: v.mesh,
      use: v.use,
      cautions: v.cautions,
      recipe: v.recipe,
      glaze: v.glaze,
    }),
  };
};
