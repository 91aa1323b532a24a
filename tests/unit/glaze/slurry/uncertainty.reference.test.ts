import { densityInVacuum } from '../../../../src/glaze/slurry/airBuoyancy.ts';
import {
  dryContentUncertainty,
  rectangular,
  weighedGravityUncertainty,
} from '../../../../src/glaze/slurry/uncertainty.ts';
import { density, grams, gravity, millilitres } from '../../../../src/glaze/units.ts';
import { checkRows } from '../../../helpers/glaze/checkRows.ts';
import { must } from '../../../helpers/glaze/must.ts';
import { input, type ReferenceRow } from '../../../helpers/glaze/referenceRows.ts';

const weighed = (row: ReferenceRow) =>
  must(
    weighedGravityUncertainty({
      gross: grams(input(row, 'gross')),
      tare: grams(input(row, 'tare')),
      water: grams(input(row, 'volume')),
      scaleStep: grams(input(row, 'scale_resolution')),
      fillHalfWidth: millilitres(input(row, 'volume_half_width')),
    }),
  );

checkRows({
  uncertainty: [
    [/^gum-rho/, (row) => weighed(row).gravity],
    [/^gum-u/, (row) => weighed(row).standard],
    [
      /^gum-brongniart/,
      (row) =>
        must(
          dryContentUncertainty({
            slurry: gravity(input(row, 'rho')),
            slurryStandard: input(row, 'u_rho'),
            particleGravity: gravity(input(row, 'solids_sg')),
            solidsStandard: rectangular(input(row, 'sg_half_width')),
          }),
        ).standard,
    ],
    [
      /^air-buoyancy/,
      (row) =>
        must(
          densityInVacuum({
            apparent: density(input(row, 'apparent')),
            air: density(input(row, 'air_density')),
            weights: density(input(row, 'weight_density')),
          }),
        ),
    ],
  ],
});
