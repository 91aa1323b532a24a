import { flowCups, kinematicViscosityFromCup } from '../../../../src/glaze/flow/flowCup.ts';
import { marshViscosity, marshWater } from '../../../../src/glaze/flow/marshFunnel.ts';
import { hinderedSettling, stokesVelocity } from '../../../../src/glaze/slurry/settling.ts';
import * as u from '../../../../src/glaze/units.ts';
import { waterDensity } from '../../../../src/glaze/water/waterDensity.ts';
import { waterViscosity } from '../../../../src/glaze/water/waterViscosity.ts';
import { checkRows } from '../../../helpers/glaze/checkRows.ts';
import { must } from '../../../helpers/glaze/must.ts';
import { input, word, type ReferenceRow } from '../../../helpers/glaze/referenceRows.ts';

const efflux = (row: ReferenceRow) => u.seconds(input(row, 'time'));
const kindOf = (row: ReferenceRow) => {
  const name = row.inputs['cup'] ? word(row, 'cup') : 'din4';
  const cup = flowCups.find(({ kind }) => kind === name);
  if (!cup) throw new Error(`no cup ${name}`);
  return cup.kind;
};
const grain = (row: ReferenceRow) => ({
  diameter: u.micrometres(input(row, 'diameter')),
  grain: u.density(input(row, 'solid_density')),
});
const waterAt = (temperature: u.Celsius) => ({
  liquid: must(waterDensity(temperature)),
  viscosity: must(waterViscosity(temperature)),
});
const liquidOf = (row: ReferenceRow) => ({
  liquid: u.density(input(row, 'fluid_density')),
  viscosity: u.millipascalSeconds(1000 * input(row, 'viscosity')),
});
const hindered = (row: ReferenceRow) => must(hinderedSettling(u.fraction(input(row, 'phi'))));

checkRows({
  'flow-cup': [
    [/^marsh-water-litre/, () => marshWater.litre.efflux],
    [
      /^marsh-pitt/,
      (row) =>
        must(marshViscosity({ efflux: efflux(row), slurryDensity: u.density(1000 * input(row, 'density')) })),
    ],
    [/./, (row) => must(kinematicViscosityFromCup(kindOf(row), efflux(row)))],
  ],
  settling: [
    [
      /^stokes/,
      (row) => must(stokesVelocity({ ...grain(row), ...waterAt(u.celsius(input(row, 'temperature'))) })),
    ],
    [/^rhodes-terminal/, (row) => must(stokesVelocity({ ...grain(row), ...liquidOf(row) }))],
    [/^rhodes-hindered/, (row) => input(row, 'terminal') * hindered(row)],
    [/^rz/, hindered],
  ],
});
