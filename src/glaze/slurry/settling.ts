import { firstOutside, refused, valid, type Checked } from '../checked.ts';
import { solidsVolumeFraction } from './slurry.ts';
import {
  fraction,
  density,
  millimetresPerSecond,
  seconds,
  type Celsius,
  type Density,
  type Fraction,
  type Gravity,
  type Micrometres,
  type Millimetres,
  type MillimetresPerSecond,
  type MillipascalSeconds,
  type Seconds,
} from '../units.ts';
import { waterDensity } from '../water/waterDensity.ts';
import { waterViscosity } from '../water/waterViscosity.ts';

/** m/s². CGPM 1901. */
const standardGravity = 9.80665;
/**
 * Up to this Reynolds number Stokes' law is within 5 %. Rhodes, Introduction to Particle Technology, ch. 2 (from
 * memory).
 */
const creepingReynolds = 0.3;

/**
 * How fast a lone grain falls through still liquid.
 * @formula v = g·d²(ρs − ρl)/(18μ)
 * @param diameter d, µm · @param grain ρs, kg/m³ · @param liquid ρl, kg/m³ · @param viscosity μ of the liquid, mPa·s
 * @returns settling velocity, mm/s, never rounded; it does not describe a gel, in which nothing falls
 * @range d above 0 to 1000 µm, ρs ρl to 12 000, ρl 700 to 2000 kg/m³, μ 0.2 to 1000 mPa·s, Reynolds number up to 0.3;
 *   outside is refused
 * @source Stokes 1851; Rhodes, Introduction to Particle Technology, ch. 2 (from memory)
 * @example stokesVelocity({ diameter: micrometres(20), grain: density(2650), liquid: density(998.2), viscosity: millipascalSeconds(1.0016) }) //=> { ok: true, value: 0.3594 }
 */
export const stokesVelocity = ({
  diameter,
  grain,
  liquid,
  viscosity,
}: {
  diameter: Micrometres;
  grain: Density;
  liquid: Density;
  viscosity: MillipascalSeconds;
}): Checked<MillimetresPerSecond> => {
  const outside = firstOutside(
    ['grain diameter', diameter, 1e-3, 1000],
    ['liquid density', liquid, 700, 2000],
    ['grain density', grain, liquid, 12_000],
    ['viscosity', viscosity, 0.2, 1000],
  );
  if (outside) return outside;
  const metres = diameter / 1e6;
  const pascalSeconds = viscosity / 1000;
  const velocity = (standardGravity * metres ** 2 * (grain - liquid)) / (18 * pascalSeconds);
  const reynolds = (velocity * metres * liquid) / pascalSeconds;
  return reynolds <= creepingReynolds
    ? valid(millimetresPerSecond(1000 * velocity))
    : refused('Reynolds number', reynolds, 0, creepingReynolds);
};

/**
 * How much slower grains fall among others than alone.
 * @formula v/v0 = (1 − φ)^4.65
 * @param solids φ, volume fraction of solids
 * @returns hindered over lone velocity, a part of one, never rounded; for a deflocculated slurry of one grain size
 * @range φ 0 to 0.55; outside is refused
 * @source Richardson & Zaki, Trans. IChemE 32 (1954) 35, Reynolds number under 0.2
 * @example hinderedSettling(fraction(0.25)) //=> { ok: true, value: 0.26244 }
 */
export const hinderedSettling = (solids: Fraction): Checked<Fraction> =>
  firstOutside(['solids by volume', solids, 0, 0.55]) ?? valid(fraction((1 - solids) ** 4.65));

/**
 * How long grains of one size take to fall a distance through a slurry at rest: how soon a deflocculated bucket
 * settles.
 * @formula t = h/(v·(1 − φ)^4.65), v by Stokes in water, φ = (γ − 1)/(s − 1)
 * @param diameter d, µm · @param particleGravity s, gravity of the grains · @param slurry γ, gravity of the stirred slurry
 * @param distance h, mm · @param temperature °C
 * @returns time, s, never rounded; it does not describe a gel, in which nothing falls
 * @range as stokesVelocity, hinderedSettling and the density and viscosity of water; h above 0 to 3000 mm; outside is refused
 * @source Stokes 1851; Richardson & Zaki, Trans. IChemE 32 (1954) 35
 * @example hinderedFallTime({ diameter: micrometres(45), particleGravity: gravity(2.6), slurry: gravity(1.44), distance: millimetres(300), temperature: celsius(20) }) //=> { ok: true, value: 760.7 }
 */
export const hinderedFallTime = ({
  diameter,
  particleGravity,
  slurry,
  distance,
  temperature,
}: {
  diameter: Micrometres;
  particleGravity: Gravity;
  slurry: Gravity;
  distance: Millimetres;
  temperature: Celsius;
}): Checked<Seconds> => {
  const outside = firstOutside(['distance', distance, 1e-3, 3000]);
  if (outside) return outside;
  const liquid = waterDensity(temperature);
  if (!liquid.ok) return liquid;
  const viscosity = waterViscosity(temperature);
  if (!viscosity.ok) return viscosity;
  const fraction = solidsVolumeFraction({ slurry, particleGravity });
  if (!fraction.ok) return fraction;
  const crowd = hinderedSettling(fraction.value);
  if (!crowd.ok) return crowd;
  const lone = stokesVelocity({
    diameter,
    grain: density(particleGravity * liquid.value),
    liquid: liquid.value,
    viscosity: viscosity.value,
  });
  return lone.ok ? valid(seconds(distance / (lone.value * crowd.value))) : lone;
};
