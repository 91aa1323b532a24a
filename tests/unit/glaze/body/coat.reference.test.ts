import { absorptionByWeighing, studioBisque, tileGroups } from '../../../../src/glaze/body/absorption.ts';
import * as filtration from '../../../../src/glaze/body/filtration.ts';
import * as u from '../../../../src/glaze/units.ts';
import { wallUptake } from '../../../../src/glaze/body/wallUptake.ts';
import { checkRows } from '../../../helpers/glaze/checkRows.ts';
import { must } from '../../../helpers/glaze/must.ts';
import { input, type ReferenceRow } from '../../../helpers/glaze/referenceRows.ts';

const part = (row: ReferenceRow, name: string) => u.fraction(input(row, name));
const square = (row: ReferenceRow, name: string) => u.squareMetres(input(row, name));
const pull = (row: ReferenceRow) => ({
  beta: input(row, 'beta'),
  suction: u.pascals(input(row, 'suction')),
  dip: u.seconds(input(row, 'time')),
  viscosity: u.millipascalSeconds(1000 * input(row, 'viscosity')),
});
const tile = (row: ReferenceRow) =>
  must(
    absorptionByWeighing({
      dry: u.grams(input(row, 'dry')),
      suspended: u.grams(input(row, 'suspended')),
      saturated: u.grams(input(row, 'saturated')),
    }),
  );
/** The middle of a range of parts of one, in per cent. */
const middle = (low: number, high: number) => 50 * (low + high);
const group = (row: ReferenceRow) => {
  const found = tileGroups.find(({ group: name }) => row.id.endsWith(`tile-${name.toLowerCase()}`));
  if (!found) throw new Error(`no tile group for ${row.id}`);
  return found;
};

checkRows({
  filtration: [
    [
      /^beta/,
      (row) => must(filtration.cakeRatio({ slurry: part(row, 'phi_slurry'), cake: part(row, 'phi_cake') })),
    ],
    [
      /^thickness/,
      (row) =>
        must(filtration.cakeLimitedThickness({ ...pull(row), permeability: square(row, 'permeability') })),
    ],
    [/^sqrt/, (row) => must(filtration.thicknessForTime(input(row, 'time_ratio')))],
    [
      /^visc/,
      (row) => {
        const [temperature, reference] = [u.celsius(input(row, 't1')), u.celsius(input(row, 't2'))];
        return must(filtration.thicknessForTemperature({ temperature, reference }));
      },
    ],
    [
      /^solids/,
      (row) =>
        must(
          filtration.thicknessForGravity({
            from: u.gravity(input(row, 'sg1')),
            to: u.gravity(input(row, 'sg2')),
            particleGravity: u.gravity(input(row, 'solids_sg')),
            cake: part(row, 'phi_cake'),
          }),
        ).betaRatio,
    ],
    [
      /^body/,
      (row) =>
        must(
          filtration.bodyLimitedThickness({
            ...pull(row),
            cakePermeability: square(row, 'Kc'),
            bodyPermeability: square(row, 'Km'),
            bodyPorosity: part(row, 'body_porosity'),
          }),
        ),
    ],
    [
      /^sat/,
      (row) =>
        must(
          wallUptake({ wall: u.millimetres(input(row, 'wall')), porosity: part(row, 'apparent_porosity') }),
        ),
    ],
  ],
  absorption: [
    [/^c373-wa/, (row) => 100 * tile(row).absorption],
    [/^c373-ap/, (row) => 100 * tile(row).apparentPorosity],
    [/^c373-bd/, (row) => tile(row).bulkDensity / 1000],
    [/^tile/, (row) => middle(group(row).over, group(row).upTo)],
    [/^studio-bisque/, () => middle(studioBisque.low, studioBisque.high)],
  ],
});
