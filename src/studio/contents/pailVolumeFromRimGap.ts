import type { Checked } from '../../glaze/checked.ts';
import { pailVolume } from '../../glaze/slurry/pailVolume.ts';
import { millimetres, millilitres, type Millilitres, type Millimetres } from '../../glaze/units.ts';
import type { BucketSettings, PailShape } from '../settings/bucketSettings.ts';
import type { Estimate } from './contents.ts';

/** A plastic pail narrows by about a tenth and is a quarter taller than its rim is wide (common practice). */
const usualTaper = 0.9;
const usualTallness = 1.25;

/** The inside of a usual pail with this volume to the rim. */
export const usualShape = (capacity: Millilitres): PailShape => {
  const perCube = (Math.PI * usualTallness * (usualTaper ** 2 + usualTaper + 1)) / 12;
  const top = Math.cbrt((capacity * 1000) / perCube);
  return {
    top: millimetres(top),
    bottom: millimetres(top * usualTaper),
    height: millimetres(top * usualTallness),
  };
};

/** Volume of glaze in the pail, from the gap between rim and surface; undefined when the pail's size is unknown. */
export const pailVolumeFromRimGap = (
  settings: Pick<BucketSettings, 'pail' | 'shape'>,
  gap: Millimetres,
): Checked<Estimate<Millilitres>> | undefined => {
  const shape = settings.shape ?? (settings.pail === undefined ? undefined : usualShape(settings.pail));
  if (!shape) return undefined;
  const found = pailVolume({
    bottomDiameter: shape.bottom,
    topDiameter: shape.top,
    height: shape.height,
    gap,
  });
  if (!found.ok) return found;
  // A tape in a wet pail is good to half a centimetre; an assumed pail shape adds more uncertainty.
  const tape = (5 / Math.sqrt(3)) * (Math.PI / 4) * (shape.top / 10) ** 2 * 0.1;
  const assumed = settings.shape ? 0.01 : 0.04;
  return {
    ok: true,
    value: { value: millilitres(found.value), sd: Math.hypot(tape, assumed * found.value) },
  };
};
