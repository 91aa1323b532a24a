import { celsius } from '../../../../src/glaze/units.ts';
import { waterDensity } from '../../../../src/glaze/water/waterDensity.ts';
import { kinematicWaterViscosity, waterViscosity } from '../../../../src/glaze/water/waterViscosity.ts';
import { checkRows } from '../../../helpers/glaze/checkRows.ts';
import { must } from '../../../helpers/glaze/must.ts';
import { input, type ReferenceRow } from '../../../helpers/glaze/referenceRows.ts';

const at = (row: ReferenceRow) => celsius(input(row, 'temperature'));

checkRows({
  'water-density': [[/./, (row) => must(waterDensity(at(row)))]],
  'water-viscosity': [
    [/^(kinematic|iso3666)/, (row) => must(kinematicWaterViscosity(at(row)))],
    [/./, (row) => must(waterViscosity(at(row)))],
  ],
});
