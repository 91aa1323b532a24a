import { dryingRatio, evaporationFlux, filmMinutes, massTransferFlux } from '../../../../src/glaze/air/drying.ts';
import {
  dewPoint,
  saturationPressure,
  vapourPressureDeficit,
  wetBulb,
} from '../../../../src/glaze/air/psychrometrics.ts';
import { celsius, fraction, gramsPerSquareMetreHour } from '../../../../src/glaze/units.ts';
import { checkRows } from '../../../helpers/glaze/checkRows.ts';
import { must } from '../../../helpers/glaze/must.ts';
import { input, type ReferenceRow } from '../../../helpers/glaze/referenceRows.ts';

const room = (row: ReferenceRow, temperature = 'temperature', humidity = 'relative_humidity') => ({
  temperature: celsius(input(row, temperature)),
  humidity: fraction(input(row, humidity) / 100),
});

checkRows({
  psychro: [
    [/^vpd/, (row) => must(vapourPressureDeficit(room(row)))],
    [/^psat/, (row) => must(saturationPressure(celsius(input(row, 'temperature'))))],
    [/^wb/, (row) => must(wetBulb(room(row)))],
    [/^dew/, (row) => must(dewPoint(room(row)))],
  ],
  drying: [
    [/^ratio/, (row) => must(dryingRatio({ first: room(row, 't1', 'rh1'), second: room(row, 't2', 'rh2') }))],
    [
      /^ashrae/,
      (row) => {
        const [airSpeed, latentHeat] = [input(row, 'air_speed'), input(row, 'latent_heat')];
        return must(evaporationFlux({ air: room(row), airSpeed, latentHeat }));
      },
    ],
    [/^hm/, (row) => must(massTransferFlux({ air: room(row), coefficient: input(row, 'h_m') }))],
    [
      /^film/,
      (row) => {
        const flux = gramsPerSquareMetreHour(input(row, 'flux'));
        return must(filmMinutes({ water: input(row, 'water_load'), flux }));
      },
    ],
  ],
});
