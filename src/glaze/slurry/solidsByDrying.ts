import { firstOutside, refused, valid, type Checked } from '../checked.ts';
import { solidsGravityRange } from './slurry.ts';
import { fraction, gravity, type Fraction, type Grams, type Gravity } from '../units.ts';

/**
 * Powder in a slurry, from a sample weighed wet and weighed dry.
 * @formula w = (d − c·(m − d)/(1 − c))/m: m wet sample, d dried, c dissolved salt in the liquid by mass
 * @param gross vessel and wet sample, g · @param tare empty vessel, g · @param driedGross vessel and dried sample, g
 * @param saltFraction c, 0 when left out: tap water
 * @returns mass fraction of solids, never rounded
 * @range 0 ≤ tare ≤ driedGross ≤ gross ≤ 10⁶ g, gross above tare, c 0 to 0.26; less solid than salt is refused too
 * @source definition; with salt, Felder, Rousseau & Bullard, Elementary Principles of Chemical Processes,
 *   problem 3.24
 * @example solidsByDrying({ gross: grams(245), tare: grams(100), driedGross: grams(164) }) //=> { ok: true, value: 0.44138 }
 */
export const solidsByDrying = ({
  gross,
  tare,
  driedGross,
  saltFraction = fraction(0),
}: Record<'gross' | 'tare' | 'driedGross', Grams> & { saltFraction?: Fraction }): Checked<Fraction> => {
  const outside = firstOutside(
    ['gross weight', gross, 0, 1e6],
    ['dried weight', driedGross, 0, gross],
    ['tare', tare, 0, driedGross],
    ['dissolved salt', saltFraction, 0, 0.26],
    ['wet sample', gross - tare, Number.MIN_VALUE, 1e6],
  );
  if (outside) return outside;
  const salt = ((gross - driedGross) * saltFraction) / (1 - saltFraction);
  const solids = (driedGross - tare - salt) / (gross - tare);
  return solids >= 0 ? valid(fraction(solids)) : refused('solids by mass', solids, 0, 1);
};

/**
 * Solids gravity of a glaze whose recipe is unknown, from its gravity and a dried sample.
 * @formula s = γw/(1 − γ(1 − w))
 * @param slurry γ, gravity of the stirred slurry · @param massFraction w, solids by mass
 * @returns solids gravity, never rounded
 * @range γ above 1, w above 0 up to 1, and an answer of 1.1 to 12; outside is refused
 * @source derived: volumes of water and of grains add
 * @example solidsGravityByDrying({ slurry: gravity(1.4), massFraction: fraction(0.45887) }) //=> { ok: true, value: 2.650 }
 */
export const solidsGravityByDrying = ({
  slurry,
  massFraction,
}: {
  slurry: Gravity;
  massFraction: Fraction;
}): Checked<Gravity> => {
  const solids = (slurry * massFraction) / (1 - slurry * (1 - massFraction));
  return (
    firstOutside(
      ['slurry gravity', slurry, 1, solidsGravityRange.high],
      ['solids by mass', massFraction, 0, 1],
      ['solids gravity', solids, solidsGravityRange.low, solidsGravityRange.high],
    ) ?? valid(gravity(solids))
  );
};
