import { densityInVacuum } from '../../../../src/glaze/slurry/airBuoyancy.ts';
import * as weighing from '../../../../src/glaze/slurry/gravityByWeighing.ts';
import * as hydrometer from '../../../../src/glaze/slurry/hydrometer.ts';
import { marshViscosity } from '../../../../src/glaze/flow/marshFunnel.ts';
import * as balance from '../../../../src/glaze/slurry/massBalance.ts';
import * as batch from '../../../../src/glaze/slurry/newBatch.ts';
import * as pail from '../../../../src/glaze/slurry/pailVolume.ts';
import { recipeSolidsGravity } from '../../../../src/glaze/slurry/recipeSolids.ts';
import * as slurry from '../../../../src/glaze/slurry/slurry.ts';
import { viscosityAt20 } from '../../../../src/glaze/flow/temperatureCorrection.ts';
import * as uncertainty from '../../../../src/glaze/slurry/uncertainty.ts';
import * as u from '../../../../src/glaze/units.ts';
import { waterDensity } from '../../../../src/glaze/water/waterDensity.ts';
import * as water from '../../../../src/glaze/water/waterViscosity.ts';
import { checkLimits } from '../../../helpers/glaze/checkLimits.ts';

const g = u.gravity;
const ml = u.millilitres;
const litre = { volume: ml(1000), from: g(1.5), to: g(1.4) };
const thin = { volume: ml(1000), from: g(1.4), to: g(1.5) };
const tub = {
  bottomDiameter: u.millimetres(260),
  topDiameter: u.millimetres(290),
  height: u.millimetres(360),
};
const half = { ...tub, gap: u.millimetres(180) };
const cup = {
  gross: u.grams(190),
  tare: u.grams(40),
  water: u.grams(100),
  scaleStep: u.grams(1),
  fillHalfWidth: ml(1),
};

checkLimits([
  ['water temperature', (x) => waterDensity(u.celsius(x)), 0, 40],
  ['water temperature for viscosity', (x) => water.waterViscosity(u.celsius(x)), 0, 40],
  ['water temperature for ν', (x) => water.kinematicWaterViscosity(u.celsius(x)), 0, 40],
  ['solids gravity', (x) => slurry.dryContent({ slurry: g(1.05), particleGravity: g(x) }), 1.1, 12],
  ['slurry gravity', (x) => slurry.solidsVolumeFraction({ slurry: g(x), particleGravity: g(2.6) }), 1, 2.6],
  [
    'slurry gravity by mass',
    (x) => slurry.solidsMassFraction({ slurry: g(x), particleGravity: g(2.6) }),
    1,
    2.6,
  ],
  [
    'density of water',
    (x) => slurry.dryContent({ slurry: g(1.4), particleGravity: g(2.6), water: u.density(x) }),
    900,
    1100,
  ],
  [
    'imperial pint',
    (x) => slurry.dryContentImperial({ pint: u.ouncesPerImperialPint(x), particleGravity: g(2.5) }),
    20,
    50,
  ],
  [
    'dry content',
    (x) => slurry.slurryGravityFromDryContent({ dry: u.gramsPerLitre(x), particleGravity: g(2.5) }),
    0,
    2500,
  ],
  [
    'solids by mass',
    (x) => slurry.slurryGravityFromMassFraction({ massFraction: u.fraction(x), particleGravity: g(2.5) }),
    0,
    1,
  ],
  [
    'liquid gravity',
    (x) =>
      slurry.slurryGravityFromMassFraction({
        massFraction: u.fraction(0.4),
        particleGravity: g(2.5),
        liquid: g(x),
      }),
    0.7,
    2,
  ],
  ['solids for dilution', (x) => slurry.waterToSolids(u.fraction(x)), 1e-6, 1],
  [
    'dry powder',
    (x) => slurry.volumeHolding({ dry: u.grams(x), slurry: g(1.4), particleGravity: g(2.5) }),
    0,
    1e9,
  ],
  ['volume to water', (x) => balance.waterToAdd({ ...litre, volume: ml(x) }), 0, 1e9],
  ['gravity to water', (x) => balance.waterToAdd({ ...litre, from: g(x) }), 1.4, 12],
  ['volume to draw from', (x) => balance.waterToDrawOff({ ...thin, volume: ml(x) }), 0, 1e9],
  ['gravity to draw from', (x) => balance.waterToDrawOff({ ...thin, from: g(x) }), 1, 1.5],
  ['gravity to reach by drawing', (x) => balance.waterToDrawOff({ ...thin, to: g(x) }), 1.4, 12],
  [
    'volume to thicken',
    (x) => balance.powderToAdd({ ...thin, volume: ml(x), particleGravity: g(2.6) }),
    0,
    1e9,
  ],
  [
    'gravity to thicken',
    (x) => balance.powderToAdd({ ...thin, from: g(x), particleGravity: g(2.6) }),
    1,
    1.5,
  ],
  [
    'water density to thicken',
    (x) => balance.powderToAdd({ ...thin, particleGravity: g(2.6), water: u.density(x) }),
    900,
    1100,
  ],
  [
    'first volume',
    (x) =>
      balance.blend({
        first: { volume: ml(x), gravity: g(1.4) },
        second: { volume: ml(1), gravity: g(1.5) },
      }),
    0,
    1e9,
  ],
  [
    'second gravity',
    (x) =>
      balance.blend({ first: { volume: ml(1), gravity: g(1.4) }, second: { volume: ml(1), gravity: g(x) } }),
    0.9,
    12,
  ],
  [
    'blend volume',
    (x) =>
      balance.secondForBlend({
        first: { volume: ml(x), gravity: g(1.6) },
        secondGravity: g(1.3),
        target: g(1.5),
      }),
    0,
    1e9,
  ],
  [
    'volume to divide',
    (x) =>
      balance.partsForBlend({
        volume: ml(x),
        firstGravity: g(1.3),
        secondGravity: g(1.6),
        target: g(1.5),
      }),
    0,
    1e9,
  ],
  [
    'target of a divided volume',
    (x) =>
      balance.partsForBlend({ volume: ml(1), firstGravity: g(1.3), secondGravity: g(1.6), target: g(x) }),
    1.3,
    1.6,
  ],
  ['batch', (x) => batch.newBatch({ powder: u.grams(x), particleGravity: g(2.6), gravity: g(1.4) }), 0, 1e9],
  [
    'batch water',
    (x) =>
      batch.newBatch({ powder: u.grams(1), particleGravity: g(2.6), gravity: g(1.4), water: u.density(x) }),
    900,
    1100,
  ],
  [
    'wanted glaze',
    (x) => batch.powderForVolume({ volume: ml(x), particleGravity: g(2.6), gravity: g(1.4) }),
    0,
    1e9,
  ],
  [
    'recipe amount',
    (x) =>
      recipeSolidsGravity([
        { amount: 1, gravity: g(2) },
        { amount: x, gravity: g(2) },
      ]),
    0,
    1e9,
  ],
  ['recipe gravity', (x) => recipeSolidsGravity([{ amount: 1, gravity: g(x) }]), 1.1, 12],
  ['weighed gravity', (x) => weighing.gravityByWeighing({ ...cup, gross: u.grams(40 + 100 * x) }), 0.9, 3],
  [
    'water that fills',
    (x) => weighing.gravityByWeighing({ gross: u.grams(1.4 * x), tare: u.grams(0), water: u.grams(x) }),
    1,
    1e5,
  ],
  ['vessel water', (x) => weighing.vesselVolume({ water: u.grams(x), temperature: u.celsius(20) }), 0, 1e5],
  ['scale step', (x) => uncertainty.weighedGravityUncertainty({ ...cup, scaleStep: u.grams(x) }), 0, 100],
  ['fill', (x) => uncertainty.weighedGravityUncertainty({ ...cup, fillHalfWidth: ml(x) }), 0, 50],
  [
    'calibration step',
    (x) => uncertainty.weighedGravityUncertainty({ ...cup, waterScaleStep: u.grams(x) }),
    0,
    100,
  ],
  [
    'slurry uncertainty',
    (x) =>
      uncertainty.dryContentUncertainty({
        slurry: g(1.4),
        slurryStandard: x,
        particleGravity: g(2.6),
        solidsStandard: 0,
      }),
    0,
    1,
  ],
  [
    'solids uncertainty',
    (x) =>
      uncertainty.dryContentUncertainty({
        slurry: g(1.4),
        slurryStandard: 0,
        particleGravity: g(2.6),
        solidsStandard: x,
      }),
    0,
    1,
  ],
  ['apparent density', (x) => densityInVacuum({ apparent: u.density(x) }), 500, 12_000],
  ['air', (x) => densityInVacuum({ apparent: u.density(1400), air: u.density(x) }), 0.8, 1.4],
  ['weights', (x) => densityInVacuum({ apparent: u.density(1400), weights: u.density(x) }), 2000, 22_000],
  ['°Bé', (x) => hydrometer.gravityFromBaume(x), 0, 72],
  ['gravity in °Bé', (x) => hydrometer.baumeFromGravity(g(x)), 1, 1.98],
  ['°Tw', (x) => hydrometer.gravityFromTwaddell(x), 0, 200],
  ['gravity in °Tw', (x) => hydrometer.twaddellFromGravity(g(x)), 1, 2],
  ['imperial pint weight', (x) => hydrometer.gravityFromImperialPint(u.ouncesPerImperialPint(x)), 18, 60],
  ['imperial pint density', (x) => hydrometer.densityFromImperialPint(u.ouncesPerImperialPint(x)), 18, 60],
  ['US pint density', (x) => hydrometer.densityFromUsPint(u.ouncesPerUsPint(x)), 15, 50],
  ['Marsh time', (x) => marshViscosity({ efflux: u.seconds(x), slurryDensity: u.density(1400) }), 26, 200],
  ['Marsh density', (x) => marshViscosity({ efflux: u.seconds(40), slurryDensity: u.density(x) }), 900, 3000],
  [
    'glaze temperature',
    (x) => viscosityAt20({ viscosity: u.kinematicViscosity(100), temperature: u.celsius(x) }),
    15,
    25,
  ],
  ['bottom', (x) => pail.pailVolume({ ...half, bottomDiameter: u.millimetres(x) }), 10, 3000],
  ['top', (x) => pail.pailVolume({ ...half, topDiameter: u.millimetres(x) }), 10, 3000],
  ['height', (x) => pail.pailVolume({ ...half, height: u.millimetres(x), gap: u.millimetres(0) }), 10, 3000],
  ['gap', (x) => pail.pailVolume({ ...half, gap: u.millimetres(x) }), 0, 360],
  ['gap, how sure', (x) => pail.pailVolumeUncertainty({ ...half, gapStandard: u.millimetres(x) }), 0, 360],
]);
