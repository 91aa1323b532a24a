import { firstOutside, refused, valid, type Checked } from '../checked.ts';
import { solidsVolumeFraction } from '../slurry/slurry.ts';
import {
  millimetres,
  type Celsius,
  type Fraction,
  type Gravity,
  type Millimetres,
  type MillipascalSeconds,
  type Pascals,
  type Seconds,
  type SquareMetres,
} from '../units.ts';
import { waterViscosity } from '../water/waterViscosity.ts';

/**
 * Coat that builds up for each volume of water that the pot absorbs.
 * @formula β = φ/(φc − φ): φ solids of the slurry by volume, φc of the coat
 * @param slurry φ · @param cake φc
 * @returns coat volume over water volume, never rounded
 * @range φc above 0 up to 0.75, φ 0 to under φc; outside is refused
 * @source Tiller & Tsai, J. Am. Ceram. Soc. 69 (1986) 882 (from memory); solids balance
 * @example cakeRatio({ slurry: fraction(0.25), cake: fraction(0.55) }) //=> { ok: true, value: 0.83333 }
 */
export const cakeRatio = ({ slurry, cake }: { slurry: Fraction; cake: Fraction }): Checked<number> => {
  const outside = firstOutside(
    ['solids of the coat by volume', cake, 0.05, 0.75],
    ['solids by volume', slurry, 0, cake],
  );
  if (outside) return outside;
  return slurry < cake ? valid(slurry / (cake - slurry)) : refused('solids by volume', slurry, 0, cake);
};

interface Suction {
  beta: number;
  suction: Pascals;
  dip: Seconds;
  viscosity: MillipascalSeconds;
}

const outsideSuction = ({ beta, suction, dip, viscosity }: Suction) =>
  firstOutside(
    ['β', beta, 0, 1000],
    ['suction', suction, 0, 1e7],
    ['dip time', dip, 0, 3600],
    ['viscosity', viscosity, 0.2, 1000],
  );

const permeable = (quantity: string, value: SquareMetres) => [quantity, value, 1e-20, 1e-9] as const;

/**
 * Coat thickness when only the coat itself resists the water.
 * @formula L = √(2β·K·ΔP·t/μ)
 * @param beta β · @param permeability K of the coat, m² · @param suction ΔP of the body's pores, Pa
 * @param dip t, s · @param viscosity μ of the water, mPa·s
 * @returns coat thickness, mm, never rounded
 * @range β 0 to 1000, K 10⁻²⁰ to 10⁻⁹ m², ΔP 0 to 10⁷ Pa, t 0 to 3600 s, μ 0.2 to 1000 mPa·s; outside is refused
 * @source Adcock & McDowall, J. Am. Ceram. Soc. 40 (1957) 355; Aksay & Schilling 1984
 * @example cakeLimitedThickness({ beta: 0.6667, permeability: squareMetres(5e-16), suction: pascals(150000), dip: seconds(10), viscosity: millipascalSeconds(1.0016) }) //=> { ok: true, value: 0.9992 }
 */
export const cakeLimitedThickness = ({
  permeability,
  ...pull
}: Suction & { permeability: SquareMetres }): Checked<Millimetres> =>
  outsideSuction(pull) ??
  firstOutside(permeable('permeability of the coat', permeability)) ??
  valid(
    millimetres(
      1000 * Math.sqrt((2 * pull.beta * permeability * pull.suction * pull.dip) / (pull.viscosity / 1000)),
    ),
  );

/**
 * Coat thickness when the body's fine pores resist the water as well.
 * @formula L = √(2β²·ΔP·t/(μ(β/K + 1/(ε·Kb))))
 * @param beta β · @param cakePermeability K of the coat, m² · @param bodyPermeability Kb of the body, m²
 * @param bodyPorosity ε of the body · @param suction ΔP, Pa · @param dip t, s · @param viscosity μ of the water, mPa·s
 * @returns coat thickness, mm, never rounded
 * @range as cakeLimitedThickness, both permeabilities alike, ε 0.01 to 0.7; outside is refused
 * @source Tiller & Tsai, J. Am. Ceram. Soc. 69 (1986) 882, resistances in series (re-derived)
 * @example bodyLimitedThickness({ beta: 0.83333, cakePermeability: squareMetres(1e-15), bodyPorosity: fraction(0.3), bodyPermeability: squareMetres(1e-14), suction: pascals(100000), dip: seconds(3), viscosity: millipascalSeconds(1.0016) }) //=> { ok: true, value: 0.5971 }
 */
export const bodyLimitedThickness = ({
  cakePermeability,
  bodyPermeability,
  bodyPorosity,
  ...pull
}: Suction & {
  cakePermeability: SquareMetres;
  bodyPermeability: SquareMetres;
  bodyPorosity: Fraction;
}): Checked<Millimetres> => {
  const outside =
    outsideSuction(pull) ??
    firstOutside(
      permeable('permeability of the coat', cakePermeability),
      permeable('permeability of the body', bodyPermeability),
      ['porosity of the body', bodyPorosity, 0.01, 0.7],
    );
  if (outside) return outside;
  const resistance = pull.beta / cakePermeability + 1 / (bodyPorosity * bodyPermeability);
  const square = (2 * pull.beta ** 2 * pull.suction * pull.dip) / ((pull.viscosity / 1000) * resistance);
  return valid(millimetres(1000 * Math.sqrt(square)));
};

/**
 * How the coat thickness changes with the length of the dip.
 * @formula L2/L1 = √(t2/t1)
 * @param timeRatio t2/t1
 * @returns thickness ratio, never rounded; of the part that the pot drank, not of the film that drains
 * @range 0 to 10 000; outside is refused
 * @source parabolic law, Adcock & McDowall 1957
 * @example thicknessForTime(9) //=> { ok: true, value: 3 }
 */
export const thicknessForTime = (timeRatio: number): Checked<number> =>
  firstOutside(['ratio of dip times', timeRatio, 0, 10_000]) ?? valid(Math.sqrt(timeRatio));

/**
 * How the coat thickness changes with the temperature of the bucket, for the same dip time.
 * @formula L(t)/L(t0) = √(μ(t0)/μ(t))
 * @param temperature t · @param reference t0, both °C
 * @returns thickness ratio, never rounded
 * @range 0 to 40 °C; outside is refused
 * @source parabolic law with the IAPWS 2008 viscosity of water
 * @example thicknessForTemperature({ temperature: celsius(10), reference: celsius(25) }) //=> { ok: true, value: 0.8255 }
 */
export const thicknessForTemperature = ({
  temperature,
  reference,
}: Record<'temperature' | 'reference', Celsius>): Checked<number> => {
  const now = waterViscosity(temperature);
  if (!now.ok) return now;
  const then = waterViscosity(reference);
  return then.ok ? valid(Math.sqrt(then.value / now.value)) : then;
};

/**
 * How the coat thickness changes with the bucket's gravity, for the same dip time. The two answers are limits: all
 * the resistance in the coat, or all of it in the body.
 * @formula r = β2/β1; L2/L1 = √r when the coat holds it back, r when the body does
 * @param from, to slurry gravities · @param particleGravity gravity of the grains · @param cake φc, solids of the coat by volume
 * @returns β ratio and both thickness ratios, never rounded
 * @range as solidsVolumeFraction and cakeRatio, from above 1; outside is refused
 * @source derived: parabolic law, β of Tiller & Tsai 1986
 * @example thicknessForGravity({ from: gravity(1.4), to: gravity(1.5), particleGravity: gravity(2.65), cake: fraction(0.55) }) //=> { ok: true, value: { betaRatio: 1.55675, cakeLimited: 1.24770, bodyLimited: 1.55675 } }
 */
export const thicknessForGravity = ({
  from,
  to,
  particleGravity,
  cake,
}: Record<'from' | 'to' | 'particleGravity', Gravity> & { cake: Fraction }): Checked<{
  betaRatio: number;
  cakeLimited: number;
  bodyLimited: number;
}> => {
  const betaAt = (slurry: Gravity): Checked<number> => {
    const phi = solidsVolumeFraction({ slurry, particleGravity });
    return phi.ok ? cakeRatio({ slurry: phi.value, cake }) : phi;
  };
  const before = betaAt(from);
  if (!before.ok) return before;
  const after = betaAt(to);
  if (!after.ok) return after;
  if (before.value === 0) return refused('slurry gravity', from, 1, particleGravity);
  const betaRatio = after.value / before.value;
  return valid({ betaRatio, cakeLimited: Math.sqrt(betaRatio), bodyLimited: betaRatio });
};
