import * as absorption from '../../../../src/glaze/body/absorption.ts';
import * as drying from '../../../../src/glaze/air/drying.ts';
import * as epsom from '../../../../src/glaze/materials/epsomSolution.ts';
import * as filtration from '../../../../src/glaze/body/filtration.ts';
import * as air from '../../../../src/glaze/air/psychrometrics.ts';
import * as settling from '../../../../src/glaze/slurry/settling.ts';
import { solidsByDrying } from '../../../../src/glaze/slurry/solidsByDrying.ts';
import { solutionDensity, type Solute } from '../../../../src/glaze/materials/solutionDensity.ts';
import * as sqrtFit from '../../../../src/glaze/statistics/sqrtFit.ts';
import { studentQuantile } from '../../../../src/glaze/statistics/studentT.ts';
import * as u from '../../../../src/glaze/units.ts';
import { vinegarMolarity } from '../../../../src/glaze/materials/vinegar.ts';
import * as wall from '../../../../src/glaze/body/wallUptake.ts';
import { checkLimits } from '../../../helpers/glaze/checkLimits.ts';

const ml = u.millilitres;
const room = (t: number, humidity: number) => ({ temperature: u.celsius(t), humidity: u.fraction(humidity) });
const pull = { beta: 0.8, suction: u.pascals(1e5), dip: u.seconds(3), viscosity: u.millipascalSeconds(1) };
const cake = u.squareMetres(1e-15);
const body = { bodyPermeability: u.squareMetres(1e-14), bodyPorosity: u.fraction(0.3) };
const line = { intercept: 0.2, slope: 0.3, residual: 0.1, tiles: 5, meanRoot: 2, spread: 2 };
const salt = (solute: Solute, part: number, t: number) =>
  solutionDensity({ solute, massFraction: u.fraction(part), temperature: u.celsius(t) });

checkLimits([
  ['room temperature', (x) => air.vapourPressureDeficit(room(x, 0.5)), -40, 60],
  ['room humidity', (x) => air.vapourPressureDeficit(room(20, x)), 0, 1],
  ['humidity for dew', (x) => air.dewPoint(room(20, x)), 0.01, 1],
  ['humidity for wet bulb', (x) => air.wetBulb(room(20, x)), 0, 1],
  ['saturation temperature', (x) => air.saturationPressure(u.celsius(x)), -40, 60],
  ['air speed', (x) => drying.evaporationFlux({ air: room(20, 0.5), airSpeed: x }), 0, 2],
  [
    'latent heat',
    (x) => drying.evaporationFlux({ air: room(20, 0.5), airSpeed: 0, latentHeat: x }),
    2300,
    2600,
  ],
  ['coefficient', (x) => drying.massTransferFlux({ air: room(20, 0.5), coefficient: x }), 0, 0.1],
  ['film water', (x) => drying.filmMinutes({ water: x, flux: u.gramsPerSquareMetreHour(100) }), 0, 1e4],
  ['film flux', (x) => drying.filmMinutes({ water: 50, flux: u.gramsPerSquareMetreHour(x) }), 1e-6, 1e4],
  ['coat solids', (x) => filtration.cakeRatio({ slurry: u.fraction(0.01), cake: u.fraction(x) }), 0.05, 0.75],
  ['β', (x) => filtration.cakeLimitedThickness({ ...pull, beta: x, permeability: cake }), 0, 1000],
  [
    'suction',
    (x) => filtration.cakeLimitedThickness({ ...pull, suction: u.pascals(x), permeability: cake }),
    0,
    1e7,
  ],
  [
    'dip',
    (x) => filtration.cakeLimitedThickness({ ...pull, dip: u.seconds(x), permeability: cake }),
    0,
    3600,
  ],
  [
    'viscosity',
    (x) =>
      filtration.cakeLimitedThickness({ ...pull, viscosity: u.millipascalSeconds(x), permeability: cake }),
    0.2,
    1000,
  ],
  [
    'permeability',
    (x) => filtration.cakeLimitedThickness({ ...pull, permeability: u.squareMetres(x) }),
    1e-20,
    1e-9,
  ],
  [
    'body porosity',
    (x) =>
      filtration.bodyLimitedThickness({
        ...pull,
        ...body,
        cakePermeability: cake,
        bodyPorosity: u.fraction(x),
      }),
    0.01,
    0.7,
  ],
  ['time ratio', (x) => filtration.thicknessForTime(x), 0, 1e4],
  ['wall', (x) => wall.wallUptake({ wall: u.millimetres(x), porosity: u.fraction(0.2) }), 0, 200],
  ['wall porosity', (x) => wall.wallUptake({ wall: u.millimetres(3), porosity: u.fraction(x) }), 0, 0.7],
  [
    'filled pores',
    (x) =>
      wall.wallLimitedThickness({
        beta: 0.8,
        porosity: u.fraction(0.2),
        wall: u.millimetres(6),
        filled: u.fraction(x),
      }),
    0,
    1,
  ],
  ['soaked', (x) => absorption.absorptionOf({ dry: u.grams(100), saturated: u.grams(x) }), 100, 200],
  [
    'hung in water',
    (x) =>
      absorption.absorptionByWeighing({ dry: u.grams(84), suspended: u.grams(x), saturated: u.grams(95) }),
    0,
    83.999,
  ],
  [
    'absorption',
    (x) => absorption.apparentPorosity({ absorption: u.fraction(x), bulkDensity: u.density(950) }),
    0,
    1,
  ],
  [
    'bulk density',
    (x) => absorption.apparentPorosity({ absorption: u.fraction(0.1), bulkDensity: u.density(x) }),
    500,
    4000,
  ],
  ['crowd', (x) => settling.hinderedSettling(u.fraction(x)), 0, 0.55],
  ['salt temperature', (x) => epsom.epsomSolubility(u.celsius(x)), 0, 40],
  ['salt water', (x) => epsom.epsomToSaturate({ water: u.grams(x), temperature: u.celsius(20) }), 0, 1e6],
  ['spoon', (x) => epsom.epsomInSolution({ volume: ml(x), temperature: u.celsius(20) }), 0, 1e6],
  ['spoon temperature', (x) => epsom.epsomInSolution({ volume: ml(5), temperature: u.celsius(x) }), 0, 30],
  ['MgSO4', (x) => salt('MgSO4', x, 20), 0, 0.28],
  ['CaCl2', (x) => salt('CaCl2', x, 20), 0, 0.5],
  ['Na2CO3', (x) => salt('Na2CO3', x, 20), 0, 0.2],
  ['CH3COOH', (x) => salt('CH3COOH', x, 20), 0, 1],
  ['CaCl2 temperature', (x) => salt('CaCl2', 0.1, x), 15, 40],
  ['CH3COOH temperature', (x) => salt('CH3COOH', 0.1, x), 5, 40],
  ['acidity', (x) => vinegarMolarity(x), 0, 30],
  ['degrees of freedom', (x) => studentQuantile({ p: 0.95, degrees: x }), 1, 1e4],
  ['probability', (x) => studentQuantile({ p: x, degrees: 5 }), 1e-6, 1 - 1e-6],
  ['dip to predict', (x) => sqrtFit.predictThickness({ fit: line, dip: u.seconds(x) }), 0, 3600],
  [
    'step of the reading',
    (x) => sqrtFit.predictThickness({ fit: line, dip: u.seconds(4), readTo: u.millimetres(x) }),
    0,
    1,
  ],
  ['wanted coat', (x) => sqrtFit.dipFor({ fit: line, thickness: u.millimetres(x) }), 0.2, 18.2],
  [
    'dissolved salt',
    (x) =>
      solidsByDrying({
        gross: u.grams(323),
        tare: u.grams(118),
        driedGross: u.grams(254),
        saltFraction: u.fraction(x),
      }),
    0,
    0.26,
  ],
]);
