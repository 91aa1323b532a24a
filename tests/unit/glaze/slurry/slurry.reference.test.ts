import { householdVolumes } from '../../../../src/glaze/materials/householdVolumes.ts';
import * as hydrometer from '../../../../src/glaze/slurry/hydrometer.ts';
import { findMaterial } from '../../../../src/glaze/materials/materials.ts';
import * as slurry from '../../../../src/glaze/slurry/slurry.ts';
import * as u from '../../../../src/glaze/units.ts';
import { waterDensity } from '../../../../src/glaze/water/waterDensity.ts';
import { checkRows } from '../../../helpers/glaze/checkRows.ts';
import { must } from '../../../helpers/glaze/must.ts';
import { input, word, type ReferenceRow } from '../../../helpers/glaze/referenceRows.ts';

const solids = (row: ReferenceRow) => u.gravity(input(row, 'solids_sg'));
const part = (row: ReferenceRow) => u.fraction(input(row, 'solids_mass_fraction'));
const slip = (row: ReferenceRow, gravity: number) => ({
  slurry: u.gravity(gravity),
  particleGravity: solids(row),
});
const gramsPerOunce = 28.349523125;
const ouncesOfWater = (volume: u.Millilitres, temperature: number) =>
  (volume * must(waterDensity(u.celsius(temperature)))) / 1000 / gramsPerOunce;
const material = (name: string) => {
  const found = findMaterial(name);
  if (!found) throw new Error(`no material ${name}`);
  return found;
};

checkRows({
  brongniart: [
    [
      /^hap-vol100/,
      (row) => must(slurry.volumeHolding({ dry: u.grams(100), ...slip(row, input(row, 'slip_sg')) })),
    ],
    [/^hap-sg/, (row) => must(slurry.dryContent(slip(row, input(row, 'slip_sg'))))],
    [/^(gtz|si)-/, (row) => must(slurry.dryContent(slip(row, input(row, 'slip_mass_per_litre') / 1000)))],
    [
      /^imp-/,
      (row) => {
        const pint = u.ouncesPerImperialPint(input(row, 'pint_weight'));
        return must(slurry.dryContentImperial({ pint, particleGravity: solids(row) }));
      },
    ],
    // 62 °F, at which the gallon was defined
    [/^water-per-imp-pint/, () => ouncesOfWater(householdVolumes['imp-pint'], (62 - 32) / 1.8)],
    [/^water-per-us-pint/, (row) => ouncesOfWater(householdVolumes['us-pint'], input(row, 'temperature'))],
  ],
  pulp: [
    [/^pub-dilution/, (row) => must(slurry.waterToSolids(part(row)))],
    [
      /^wills/,
      (row) => {
        const pulp = u.gravity(input(row, 'pulp_density') / 1000);
        const grains = u.gravity(input(row, 'solids_density') / 1000);
        return 100 * must(slurry.solidsMassFraction({ slurry: pulp, particleGravity: grains }));
      },
    ],
    [
      /./,
      (row) => {
        const liquid = u.gravity(row.inputs['liquid_sg'] ? input(row, 'liquid_sg') : 1);
        return must(
          slurry.slurryGravityFromMassFraction({
            massFraction: part(row),
            particleGravity: solids(row),
            liquid,
          }),
        );
      },
    ],
  ],
  'solid-density': [[/./, (row) => material(word(row, 'material')).gravity]],
  hydrometer: [
    [/^baume1443/, (row) => must(hydrometer.gravityFromBaume(input(row, 'baume'), 144.3))],
    [/^baume145/, (row) => must(hydrometer.gravityFromBaume(input(row, 'baume')))],
    [/^sg-to-baume/, (row) => must(hydrometer.baumeFromGravity(u.gravity(input(row, 'sg'))))],
    [/^twaddell/, (row) => must(hydrometer.gravityFromTwaddell(input(row, 'twaddell')))],
    [
      /^pint-imp/,
      (row) => must(hydrometer.gravityFromImperialPint(u.ouncesPerImperialPint(input(row, 'pint_weight')))),
    ],
    [/^pint-us/, (row) => must(hydrometer.densityFromUsPint(u.ouncesPerUsPint(input(row, 'pint_weight'))))],
  ],
});
