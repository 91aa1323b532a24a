import { definedOnly } from '../../definedOnly.ts';
import { gravity, millimetres } from '../../glaze/units.ts';
import { pailVolume } from '../../glaze/slurry/pailVolume.ts';
import type { BucketSettings } from '../../studio/settings/bucketSettings.ts';
import type { bucketOptions } from './bucketOptions.ts';
import type { Values } from '../../contract/contract.ts';

export type SaidOfBucket = Values<typeof bucketOptions>;

const unlessNone = <T>(value: T | 'none' | undefined): T | undefined =>
  value === 'none' ? undefined : value;

const clearable = ['cone', 'atmosphere', 'bodies'] as const;

/** The settings that `none` takes away. */
export const bucketCleared = (v: SaidOfBucket): (keyof BucketSettings)[] =>
  clearable.filter((name) => v[name] === 'none');

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
      cone: unlessNone(v.cone),
      atmosphere: unlessNone(v.atmosphere),
      bodies: unlessNone(v.bodies),
    }),
  };
};
