import { firstOutside, valid, type Checked } from '../checked.ts';
import { fraction, millimetres, type Fraction, type Millimetres } from '../units.ts';

interface Wall {
  wall: Millimetres;
  porosity: Fraction;
}

const outsideWall = ({ wall, porosity }: Wall) =>
  firstOutside(['wall', wall, 0, 200], ['apparent porosity', porosity, 0, 0.7]);

/**
 * Water that a bisque wall can take up before it is full.
 * @formula m = w·P·1000 kg/m³
 * @param wall w, thickness that drinks, mm: half of it for each face of a piece dipped whole
 * @param porosity P, apparent porosity on a cold soak
 * @returns water, kg per m² of face, never rounded
 * @range wall 0 to 200 mm, porosity 0 to 0.7; outside is refused
 * @source derived: geometry
 * @example wallUptake({ wall: millimetres(3), porosity: fraction(0.2) }) //=> { ok: true, value: 0.6 }
 */
export const wallUptake = ({ wall, porosity }: Wall): Checked<number> =>
  outsideWall({ wall, porosity }) ?? valid(wall * porosity);

/**
 * The thickest coat that a thin wall can build on each face before it is full of water.
 * @formula L = β·ε·w/2·(1 − f)
 * @param beta β, coat volume over water volume · @param porosity ε, apparent porosity on a cold soak · @param wall w, mm
 * @param filled f, part of the pores already full of water, 0 when left out: dry bisque
 * @returns coat thickness on each face of a piece dipped whole, mm, never rounded
 * @range β 0 to 1000, wall 0 to 200 mm, porosity 0 to 0.7, filled 0 to 1; outside is refused
 * @source derived: water taken up, times coat built for each volume of it
 * @example wallLimitedThickness({ beta: 0.8, porosity: fraction(0.25), wall: millimetres(6) }) //=> { ok: true, value: 0.6 }
 */
export const wallLimitedThickness = ({
  beta,
  porosity,
  wall,
  filled = fraction(0),
}: Wall & { beta: number; filled?: Fraction }): Checked<Millimetres> =>
  outsideWall({ wall, porosity }) ??
  firstOutside(['β', beta, 0, 1000], ['pores already full', filled, 0, 1]) ??
  valid(millimetres(((beta * porosity * wall) / 2) * (1 - filled)));
