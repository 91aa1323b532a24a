import { firstOutside, refused, valid, type Checked } from '../checked.ts';
import { dryContent, nominalWater, solidsGravityRange } from './slurry.ts';
import { grams, millilitres, type Density, type Grams, type Gravity, type Millilitres } from '../units.ts';

/**
 * Water for a new dry batch, and the glaze that it makes.
 * @formula V = m(s − 1)/(s·ρw(γ − 1)); water = V·ρw·γ − m
 * @param powder m, dry batch, g · @param particleGravity s, gravity of its grains · @param gravity γ, the wanted gravity
 * @param water ρw, 1000 kg/m³ when left out
 * @returns volume of glaze, ml, and water to weigh out, g, never rounded
 * @range m 0 to 10⁹ g, s 1.1 to 12, γ above 1 and under s, ρw 900 to 1100 kg/m³; outside is refused
 * @source derived: volumes add, mass is kept
 * @example newBatch({ powder: grams(5000), particleGravity: gravity(2.65), gravity: gravity(1.45) }) //=> { ok: true, value: { volume: 6918.24, water: 5031.447 } }
 */
export const newBatch = ({
  powder,
  particleGravity,
  gravity: wanted,
  water = nominalWater,
}: {
  powder: Grams;
  particleGravity: Gravity;
  gravity: Gravity;
  water?: Density;
}): Checked<{ volume: Millilitres; water: Grams }> => {
  const outside = firstOutside(
    ['powder', powder, 0, 1e9],
    ['solids gravity', particleGravity, solidsGravityRange.low, solidsGravityRange.high],
    ['density of water', water, 900, 1100],
  );
  if (outside) return outside;
  if (!(wanted > 1 && wanted < particleGravity)) return refused('wanted gravity', wanted, 1, particleGravity);
  const gramsPerMillilitre = water / 1000;
  const volume = (powder * (particleGravity - 1)) / (particleGravity * gramsPerMillilitre * (wanted - 1));
  return valid({ volume: millilitres(volume), water: grams(volume * gramsPerMillilitre * wanted - powder) });
};

/**
 * Dry batch to weigh out for a wanted volume of glaze.
 * @formula m = V·ρw·s(γ − 1)/(s − 1)
 * @param volume V, wanted glaze, ml · @param gravity γ, its gravity · @param particleGravity s, gravity of the grains
 * @param water ρw, 1000 kg/m³ when left out
 * @returns dry powder, g, never rounded
 * @range V 0 to 10⁹ ml, s 1.1 to 12, γ 1 to s, ρw 900 to 1100 kg/m³; outside is refused
 * @source Brongniart 1844
 * @example powderForVolume({ volume: millilitres(10000), gravity: gravity(1.48), particleGravity: gravity(2.6) }) //=> { ok: true, value: 7800 }
 */
export const powderForVolume = ({
  volume,
  gravity: slurry,
  particleGravity,
  water = nominalWater,
}: {
  volume: Millilitres;
  gravity: Gravity;
  particleGravity: Gravity;
  water?: Density;
}): Checked<Grams> => {
  const outside = firstOutside(['volume', volume, 0, 1e9]);
  if (outside) return outside;
  const dry = dryContent({ slurry, particleGravity, water });
  return dry.ok ? valid(grams((volume * dry.value) / 1000)) : dry;
};
