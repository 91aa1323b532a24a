import { gravityByWeighing } from '../../../../src/glaze/slurry/gravityByWeighing.ts';
import * as balance from '../../../../src/glaze/slurry/massBalance.ts';
import { newBatch } from '../../../../src/glaze/slurry/newBatch.ts';
import { solidsByDrying } from '../../../../src/glaze/slurry/solidsByDrying.ts';
import * as u from '../../../../src/glaze/units.ts';
import { checkRows } from '../../../helpers/glaze/checkRows.ts';
import { must } from '../../../helpers/glaze/must.ts';
import { input, type ReferenceRow } from '../../../helpers/glaze/referenceRows.ts';

const gravityOf = (row: ReferenceRow, name: string) => u.gravity(input(row, name));
const gramsOf = (row: ReferenceRow, name: string) => u.grams(input(row, name));
const litres = (row: ReferenceRow, name: string) => u.millilitres(1000 * input(row, name));
const change = (row: ReferenceRow) => ({
  volume: litres(row, 'slurry_volume'),
  from: gravityOf(row, 'sg'),
  to: gravityOf(row, 'target_sg'),
});

const gramsPerPound = 453.59237;
const gallon = 3785.411784;
const barrel = 42 * gallon;
const barrels = (count: number) => u.millilitres(count * barrel);
/** A mud's pounds per gallon as a gravity, against water of 1 g/ml. */
const mud = (row: ReferenceRow, name: string) => u.gravity((input(row, name) * gramsPerPound) / gallon);
const weightUp = (row: ReferenceRow) =>
  must(
    balance.powderToAdd({
      volume: barrels(100),
      from: mud(row, 'w1'),
      to: mud(row, 'w2'),
      particleGravity: mud(row, 'solid_density'),
    }),
  );
const mixed = (row: ReferenceRow, second: string, target: string) =>
  must(
    balance.partsForBlend({
      volume: barrels(input(row, 'final_volume')),
      firstGravity: mud(row, 'w1'),
      secondGravity: mud(row, second),
      target: mud(row, target),
    }),
  );

checkRows({
  'mass-balance': [
    [/^water-add/, (row) => must(balance.waterToAdd(change(row))) / 1000],
    [/^water-remove/, (row) => must(balance.waterToDrawOff(change(row))) / 1000],
    [
      /^powder-add/,
      (row) =>
        must(balance.powderToAdd({ ...change(row), particleGravity: gravityOf(row, 'solids_sg') })) / 1000,
    ],
    [
      /^blend/,
      (row) => {
        const first = { volume: litres(row, 'volume_1'), gravity: gravityOf(row, 'sg_1') };
        const secondGravity = gravityOf(row, 'sg_2');
        return (
          must(balance.secondForBlend({ first, secondGravity, target: gravityOf(row, 'target_sg') })) / 1000
        );
      },
    ],
    [
      /^recipe-water/,
      (row) => {
        const powder = u.grams(1000 * input(row, 'dry_mass'));
        const wanted = { particleGravity: gravityOf(row, 'solids_sg'), gravity: gravityOf(row, 'target_sg') };
        return must(newBatch({ powder, ...wanted })).water / 1000;
      },
    ],
    // sacks of 100 lb
    [/^mud-(barite|hematite|caco3)-\d/, (row) => weightUp(row) / gramsPerPound / 100],
    [/^mud-.*volinc/, (row) => weightUp(row) / mud(row, 'solid_density') / barrel],
    [/^mud-start/, (row) => mixed(row, 'solid_density', 'w2').first / barrel],
    [/^mud-blend-300/, (row) => mixed(row, 'w2', 'target').second / barrel],
    [
      /^mud-blend-800/,
      (row) => {
        const first = { volume: barrels(input(row, 'v1')), gravity: mud(row, 'w1') };
        const second = { volume: barrels(input(row, 'v2')), gravity: mud(row, 'w2') };
        return (must(balance.blend({ first, second })) * gallon) / gramsPerPound;
      },
    ],
    [
      /^mud-felder-sg/,
      (row) => {
        const water = u.grams(input(row, 'volume'));
        return must(gravityByWeighing({ gross: gramsOf(row, 'gross'), tare: gramsOf(row, 'tare'), water }));
      },
    ],
    [
      /^mud-felder-wt/,
      (row) =>
        100 *
        must(
          solidsByDrying({
            gross: gramsOf(row, 'gross'),
            tare: gramsOf(row, 'tare'),
            driedGross: gramsOf(row, 'dried_gross'),
            saltFraction: u.fraction(input(row, 'salt_fraction_of_seawater')),
          }),
        ),
    ],
  ],
});
