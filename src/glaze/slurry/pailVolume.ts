import { firstOutside, valid, type Checked } from '../checked.ts';
import { millilitres, millimetres, type Millilitres, type Millimetres } from '../units.ts';

/** A round pail, straight or tapered, measured inside. */
export interface Pail {
  bottomDiameter: Millimetres;
  topDiameter: Millimetres;
  height: Millimetres;
}

const outsidePail = ({ bottomDiameter, topDiameter, height }: Pail) =>
  firstOutside(
    ['bottom diameter', bottomDiameter, 10, 3000],
    ['top diameter', topDiameter, 10, 3000],
    ['height', height, 10, 3000],
  );

const diameterAt = ({ bottomDiameter, topDiameter, height }: Pail, depth: number) =>
  bottomDiameter + ((topDiameter - bottomDiameter) * depth) / height;

const volumeAt = (pail: Pail, depth: number) => {
  const bottom = pail.bottomDiameter;
  const surface = diameterAt(pail, depth);
  return ((Math.PI * depth) / 12) * (bottom ** 2 + bottom * surface + surface ** 2);
};

/**
 * Glaze in a pail, from the gap between its rim and the glaze.
 * @formula V = πh/12·(d0² + d0·d(h) + d(h)²), d(h) = d0 + (d1 − d0)h/H, h = H − gap: frustum of a cone
 * @param bottomDiameter d0, inside, mm · @param topDiameter d1, inside the rim, mm · @param height H, inside, mm
 * @param gap rim to glaze, mm, 0 for a full pail
 * @returns volume, ml, never rounded
 * @range diameters and height 10 to 3000 mm, gap 0 to height; outside is refused
 * @source frustum of a cone, Euclid; Bronshtein & Semendyayev, Handbook of Mathematics (from memory)
 * @example pailVolume({ bottomDiameter: millimetres(260), topDiameter: millimetres(290), height: millimetres(360), gap: millimetres(60) }) //=> { ok: true, value: 17508.49 }
 */
export const pailVolume = ({ gap, ...pail }: Pail & { gap: Millimetres }): Checked<Millilitres> =>
  outsidePail(pail) ??
  firstOutside(['gap from the rim', gap, 0, pail.height]) ??
  valid(millilitres(volumeAt(pail, pail.height - gap) / 1000));

/**
 * Gap from the rim at which a pail holds a wanted volume.
 * @formula d(h)³ = d0³ + 12kV/π with k = (d1 − d0)/H, then h = 12V/(π(d0² + d0·d(h) + d(h)²))
 * @param bottomDiameter, topDiameter, height the pail, inside, mm · @param volume V, ml
 * @returns gap, mm, never rounded
 * @range the pail as in pailVolume, volume 0 to what the pail holds; outside is refused
 * @source derived: frustum of a cone solved for its height
 * @example rimGapFor({ bottomDiameter: millimetres(260), topDiameter: millimetres(290), height: millimetres(360), volume: millilitres(17508.4886) }) //=> { ok: true, value: 60.0 }
 */
export const rimGapFor = ({ volume, ...pail }: Pail & { volume: Millilitres }): Checked<Millimetres> => {
  const outside =
    outsidePail(pail) ?? firstOutside(['volume', volume, 0, volumeAt(pail, pail.height) / 1000]);
  if (outside) return outside;
  const bottom = pail.bottomDiameter;
  const taper = (pail.topDiameter - bottom) / pail.height;
  const surface = Math.cbrt(bottom ** 3 + (12000 * taper * volume) / Math.PI);
  const depth = (12000 * volume) / (Math.PI * (bottom ** 2 + bottom * surface + surface ** 2));
  // Rounding may put a full pail a little above its rim.
  return valid(millimetres(Math.max(0, pail.height - depth)));
};

/**
 * Uncertainty of a volume that was worked out from the gap.
 * @formula u(V) = π/4·d(h)²·u(gap)
 * @param bottomDiameter, topDiameter, height the pail, inside, mm · @param gap rim to glaze, mm
 * @param gapStandard standard uncertainty of the gap, mm
 * @returns one standard deviation of the volume, ml, never rounded
 * @range as pailVolume, gapStandard 0 to height; outside is refused
 * @source JCGM 100:2008, eq. 10, on the frustum
 * @example pailVolumeUncertainty({ bottomDiameter: millimetres(280), topDiameter: millimetres(280), height: millimetres(360), gap: millimetres(60), gapStandard: millimetres(5) }) //=> { ok: true, value: 307.88 }
 */
export const pailVolumeUncertainty = ({
  gap,
  gapStandard,
  ...pail
}: Pail & { gap: Millimetres; gapStandard: Millimetres }): Checked<Millilitres> =>
  outsidePail(pail) ??
  firstOutside(
    ['gap from the rim', gap, 0, pail.height],
    ['uncertainty of the gap', gapStandard, 0, pail.height],
  ) ??
  valid(millilitres(((Math.PI / 4) * diameterAt(pail, pail.height - gap) ** 2 * gapStandard) / 1000));
