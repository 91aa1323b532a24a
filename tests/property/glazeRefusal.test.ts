import { readdirSync } from 'node:fs';
import { countsOfEvents } from '../../src/glaze/statistics/countsOfEvents.ts';
import { truncatedNormal } from '../../src/glaze/statistics/truncatedNormal.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as absorption from '../../src/glaze/body/absorption.ts';
import { densityInVacuum } from '../../src/glaze/slurry/airBuoyancy.ts';
import { bayesLine } from '../../src/glaze/statistics/bayesLine.ts';
import { benjaminiHochberg } from '../../src/glaze/statistics/benjaminiHochberg.ts';
import type { Checked } from '../../src/glaze/checked.ts';
import * as drying from '../../src/glaze/air/drying.ts';
import * as epsom from '../../src/glaze/materials/epsomSolution.ts';
import * as filtration from '../../src/glaze/body/filtration.ts';
import { fisherExact, leastFisherP, type TwoRates } from '../../src/glaze/statistics/fisherExact.ts';
import { flowCups, kinematicViscosityFromCup } from '../../src/glaze/flow/flowCup.ts';
import * as weighing from '../../src/glaze/slurry/gravityByWeighing.ts';
import * as hydrometer from '../../src/glaze/slurry/hydrometer.ts';
import { marshViscosity } from '../../src/glaze/flow/marshFunnel.ts';
import * as balance from '../../src/glaze/slurry/massBalance.ts';
import * as batch from '../../src/glaze/slurry/newBatch.ts';
import { normalQuantile } from '../../src/glaze/statistics/normal.ts';
import * as pail from '../../src/glaze/slurry/pailVolume.ts';
import * as air from '../../src/glaze/air/psychrometrics.ts';
import { recipeSolidsGravity } from '../../src/glaze/slurry/recipeSolids.ts';
import * as settling from '../../src/glaze/slurry/settling.ts';
import * as slurry from '../../src/glaze/slurry/slurry.ts';
import * as byDrying from '../../src/glaze/slurry/solidsByDrying.ts';
import { solutionDensity } from '../../src/glaze/materials/solutionDensity.ts';
import { repeatability } from '../../src/glaze/statistics/repeatability.ts';
import * as sqrtFit from '../../src/glaze/statistics/sqrtFit.ts';
import { studentQuantile } from '../../src/glaze/statistics/studentT.ts';
import { viscosityAt20 } from '../../src/glaze/flow/temperatureCorrection.ts';
import * as uncertainty from '../../src/glaze/slurry/uncertainty.ts';
import { bayesFactorOfRates, differenceOfRates } from '../../src/glaze/statistics/twoRates.ts';
import * as u from '../../src/glaze/units.ts';
import { vinegarMolarity } from '../../src/glaze/materials/vinegar.ts';
import * as wall from '../../src/glaze/body/wallUptake.ts';
import { waterDensity } from '../../src/glaze/water/waterDensity.ts';
import * as water from '../../src/glaze/water/waterViscosity.ts';

type Formula = (a: number, b: number, c: number, d: number, e: number) => Checked<unknown>;

const room = (t: number, humidity: number) => ({ temperature: u.celsius(t), humidity: u.fraction(humidity) });
const pailOf = (bottom: number, top: number, height: number) => ({
  bottomDiameter: u.millimetres(bottom),
  topDiameter: u.millimetres(top),
  height: u.millimetres(height),
});
const change = (volume: number, from: number, to: number) => ({
  volume: u.millilitres(volume),
  from: u.gravity(from),
  to: u.gravity(to),
});
const pot = (volume: number, gravity: number) => ({
  volume: u.millilitres(volume),
  gravity: u.gravity(gravity),
});
const pull = (beta: number, suction: number, dip: number, viscosity: number) => ({
  beta,
  suction: u.pascals(suction),
  dip: u.seconds(dip),
  viscosity: u.millipascalSeconds(viscosity),
});
const line = (a: number, b: number, c: number) => ({
  intercept: a,
  slope: b,
  residual: Math.abs(c),
  tiles: 5,
  meanRoot: 2,
  spread: 2,
});
const g = u.gravity;
/** Rounds numbers of countable size, so that not all are refused as fractions. */
const counts = (...given: [number, number, number, number]): TwoRates => {
  const [hits = 0, of = 0, otherHits = 0, otherOf = 0] = given.map((n) => (n > 1 ? Math.round(n) : n));
  return { hits, of, otherHits, otherOf };
};

/** Every formula that can refuse, called with five arbitrary numbers. */
const formulas: Record<string, Formula> = {
  absorptionByWeighing: (a, b, c) =>
    absorption.absorptionByWeighing({ dry: u.grams(a), suspended: u.grams(b), saturated: u.grams(c) }),
  absorptionOf: (a, b) => absorption.absorptionOf({ dry: u.grams(a), saturated: u.grams(b) }),
  bayesFactorOfRates: (a, b, c, d) => bayesFactorOfRates(counts(a, b, c, d)),
  benjaminiHochberg: (a, b, c) => benjaminiHochberg([a, b, c]),
  differenceOfRates: (a, b, c, d) => differenceOfRates(counts(a, b, c, d)),
  repeatability: (a, b, c, d) => repeatability({ sd: a, worth: b, squares: c, count: d }),
  fisherExact: (a, b, c, d) => fisherExact(counts(a, b, c, d)),
  leastFisherP: (a, b, c, d) => leastFisherP(counts(a, b, c, d)),
  bayesLine: (a, b, c, d, e) =>
    bayesLine({
      prior: { mean: [a], covariance: [[Math.abs(b)]] },
      points: [
        { at: [c], seen: d, noise: Math.abs(e) },
        { at: [c], seen: d, noise: Math.abs(e), above: true },
      ],
      scale: Math.abs(e),
      scaleSpread: 0.8,
    }),
  apparentPorosity: (a, b) =>
    absorption.apparentPorosity({ absorption: u.fraction(a), bulkDensity: u.density(b) }),
  densityInVacuum: (a, b, c) =>
    densityInVacuum({ apparent: u.density(a), air: u.density(b), weights: u.density(c) }),
  dryingRatio: (a, b, c, d) => drying.dryingRatio({ first: room(a, b), second: room(c, d) }),
  evaporationFlux: (a, b, c, d) => drying.evaporationFlux({ air: room(a, b), airSpeed: c, latentHeat: d }),
  massTransferFlux: (a, b, c) => drying.massTransferFlux({ air: room(a, b), coefficient: c }),
  filmMinutes: (a, b) => drying.filmMinutes({ water: a, flux: u.gramsPerSquareMetreHour(b) }),
  epsomSolubility: (a) => epsom.epsomSolubility(u.celsius(a)),
  saturatedEpsom: (a) => epsom.saturatedEpsom(u.celsius(a)),
  epsomToSaturate: (a, b) => epsom.epsomToSaturate({ water: u.grams(a), temperature: u.celsius(b) }),
  epsomInSolution: (a, b) => epsom.epsomInSolution({ volume: u.millilitres(a), temperature: u.celsius(b) }),
  cakeRatio: (a, b) => filtration.cakeRatio({ slurry: u.fraction(a), cake: u.fraction(b) }),
  cakeLimitedThickness: (a, b, c, d, e) =>
    filtration.cakeLimitedThickness({ ...pull(a, b, c, d), permeability: u.squareMetres(e) }),
  bodyLimitedThickness: (a, b, c, d, e) =>
    filtration.bodyLimitedThickness({
      ...pull(a, b, c, d),
      cakePermeability: u.squareMetres(e),
      bodyPermeability: u.squareMetres(e),
      bodyPorosity: u.fraction(a),
    }),
  thicknessForTime: (a) => filtration.thicknessForTime(a),
  thicknessForTemperature: (a, b) =>
    filtration.thicknessForTemperature({ temperature: u.celsius(a), reference: u.celsius(b) }),
  thicknessForGravity: (a, b, c, d) =>
    filtration.thicknessForGravity({ from: g(a), to: g(b), particleGravity: g(c), cake: u.fraction(d) }),
  kinematicViscosityFromCup: (a, b) => {
    const cup = flowCups[Math.abs(Math.trunc(b)) % flowCups.length] ?? { kind: 'ford4' };
    return kinematicViscosityFromCup(cup.kind, u.seconds(a));
  },
  gravityByWeighing: (a, b, c) =>
    weighing.gravityByWeighing({ gross: u.grams(a), tare: u.grams(b), water: u.grams(c) }),
  vesselVolume: (a, b) => weighing.vesselVolume({ water: u.grams(a), temperature: u.celsius(b) }),
  gravityFromBaume: (a) => hydrometer.gravityFromBaume(a),
  baumeFromGravity: (a) => hydrometer.baumeFromGravity(g(a)),
  gravityFromTwaddell: (a) => hydrometer.gravityFromTwaddell(a),
  twaddellFromGravity: (a) => hydrometer.twaddellFromGravity(g(a)),
  gravityFromImperialPint: (a) => hydrometer.gravityFromImperialPint(u.ouncesPerImperialPint(a)),
  densityFromImperialPint: (a) => hydrometer.densityFromImperialPint(u.ouncesPerImperialPint(a)),
  densityFromUsPint: (a) => hydrometer.densityFromUsPint(u.ouncesPerUsPint(a)),
  marshViscosity: (a, b) => marshViscosity({ efflux: u.seconds(a), slurryDensity: u.density(b) }),
  waterToAdd: (a, b, c) => balance.waterToAdd(change(a, b, c)),
  waterToDrawOff: (a, b, c) => balance.waterToDrawOff(change(a, b, c)),
  powderToAdd: (a, b, c, d, e) =>
    balance.powderToAdd({ ...change(a, b, c), particleGravity: g(d), water: u.density(e) }),
  blend: (a, b, c, d) => balance.blend({ first: pot(a, b), second: pot(c, d) }),
  secondForBlend: (a, b, c, d) =>
    balance.secondForBlend({ first: pot(a, b), secondGravity: g(c), target: g(d) }),
  partsForBlend: (a, b, c, d) =>
    balance.partsForBlend({
      volume: u.millilitres(a),
      firstGravity: g(b),
      secondGravity: g(c),
      target: g(d),
    }),
  newBatch: (a, b, c, d) =>
    batch.newBatch({ powder: u.grams(a), particleGravity: g(b), gravity: g(c), water: u.density(d) }),
  powderForVolume: (a, b, c, d) =>
    batch.powderForVolume({
      volume: u.millilitres(a),
      particleGravity: g(b),
      gravity: g(c),
      water: u.density(d),
    }),
  normalQuantile: (a) => normalQuantile(a),
  studentQuantile: (a, b) => studentQuantile({ p: a, degrees: b }),
  pailVolume: (a, b, c, d) => pail.pailVolume({ ...pailOf(a, b, c), gap: u.millimetres(d) }),
  rimGapFor: (a, b, c, d) => pail.rimGapFor({ ...pailOf(a, b, c), volume: u.millilitres(d) }),
  pailVolumeUncertainty: (a, b, c, d, e) =>
    pail.pailVolumeUncertainty({
      ...pailOf(a, b, c),
      gap: u.millimetres(d),
      gapStandard: u.millimetres(e),
    }),
  saturationPressure: (a) => air.saturationPressure(u.celsius(a)),
  vapourPressureDeficit: (a, b) => air.vapourPressureDeficit(room(a, b)),
  dewPoint: (a, b) => air.dewPoint(room(a, b)),
  wetBulb: (a, b) => air.wetBulb(room(a, b)),
  recipeSolidsGravity: (a, b, c, d) =>
    recipeSolidsGravity([
      { amount: a, gravity: g(b) },
      { amount: c, gravity: g(d) },
    ]),
  stokesVelocity: (a, b, c, d) =>
    settling.stokesVelocity({
      diameter: u.micrometres(a),
      grain: u.density(b),
      liquid: u.density(c),
      viscosity: u.millipascalSeconds(d),
    }),
  hinderedFallTime: (a, b, c, d, e) =>
    settling.hinderedFallTime({
      diameter: u.micrometres(a),
      particleGravity: g(b),
      slurry: g(c),
      distance: u.millimetres(d),
      temperature: u.celsius(e),
    }),
  hinderedSettling: (a) => settling.hinderedSettling(u.fraction(a)),
  solidsVolumeFraction: (a, b) => slurry.solidsVolumeFraction({ slurry: g(a), particleGravity: g(b) }),
  solidsMassFraction: (a, b) => slurry.solidsMassFraction({ slurry: g(a), particleGravity: g(b) }),
  dryContent: (a, b, c) => slurry.dryContent({ slurry: g(a), particleGravity: g(b), water: u.density(c) }),
  dryContentImperial: (a, b) =>
    slurry.dryContentImperial({ pint: u.ouncesPerImperialPint(a), particleGravity: g(b) }),
  slurryGravityFromDryContent: (a, b, c) =>
    slurry.slurryGravityFromDryContent({
      dry: u.gramsPerLitre(a),
      particleGravity: g(b),
      water: u.density(c),
    }),
  slurryGravityFromMassFraction: (a, b, c) =>
    slurry.slurryGravityFromMassFraction({
      massFraction: u.fraction(a),
      particleGravity: g(b),
      liquid: g(c),
    }),
  waterToSolids: (a) => slurry.waterToSolids(u.fraction(a)),
  volumeHolding: (a, b, c, d) =>
    slurry.volumeHolding({ dry: u.grams(a), slurry: g(b), particleGravity: g(c), water: u.density(d) }),
  solidsByDrying: (a, b, c, d) =>
    byDrying.solidsByDrying({
      gross: u.grams(a),
      tare: u.grams(b),
      driedGross: u.grams(c),
      saltFraction: u.fraction(d),
    }),
  solidsGravityByDrying: (a, b) =>
    byDrying.solidsGravityByDrying({ slurry: g(a), massFraction: u.fraction(b) }),
  solutionDensity: (a, b) =>
    solutionDensity({ solute: 'MgSO4', massFraction: u.fraction(a), temperature: u.celsius(b) }),
  fitSqrt: (a, b, c, d, e) =>
    sqrtFit.fitSqrt([
      { dip: u.seconds(a), thickness: u.millimetres(b) },
      { dip: u.seconds(c), thickness: u.millimetres(d) },
      { dip: u.seconds(e), thickness: u.millimetres(b) },
    ]),
  predictThickness: (a) => sqrtFit.predictThickness({ fit: line(0.2, 0.3, 0.1), dip: u.seconds(a) }),
  dipFor: (a) => sqrtFit.dipFor({ fit: line(0.2, 0.3, 0.1), thickness: u.millimetres(a) }),
  viscosityAt20: (a, b) => viscosityAt20({ viscosity: u.kinematicViscosity(a), temperature: u.celsius(b) }),
  weighedGravityUncertainty: (a, b, c, d, e) =>
    uncertainty.weighedGravityUncertainty({
      gross: u.grams(a),
      tare: u.grams(b),
      water: u.grams(c),
      scaleStep: u.grams(d),
      fillHalfWidth: u.millilitres(e),
    }),
  dryContentUncertainty: (a, b, c, d) =>
    uncertainty.dryContentUncertainty({
      slurry: g(a),
      slurryStandard: b,
      particleGravity: g(c),
      solidsStandard: d,
    }),
  vinegarMolarity: (a) => vinegarMolarity(a),
  wallUptake: (a, b) => wall.wallUptake({ wall: u.millimetres(a), porosity: u.fraction(b) }),
  wallLimitedThickness: (a, b, c, d) =>
    wall.wallLimitedThickness({
      beta: a,
      porosity: u.fraction(b),
      wall: u.millimetres(c),
      filled: u.fraction(d),
    }),
  waterDensity: (a) => waterDensity(u.celsius(a)),
  waterViscosity: (a) => water.waterViscosity(u.celsius(a)),
  kinematicWaterViscosity: (a) => water.kinematicWaterViscosity(u.celsius(a)),
  countsOfEvents: (a, b, c) => countsOfEvents({ shape: a, over: b, days: c }),
  truncatedNormal: (a, b) => truncatedNormal({ low: a, high: b }),
};

/** Functions that never refuse: formulas defined everywhere, table look-ups and unit constructors. */
const neverRefuse = new Set([
  'normalCdf',
  'quickCdf',
  'quickDensity',
  'bothAbove',
  'bothBetween',
  'addedByTie',
  'addedSquare',
  'rectangular',
  'triangular',
  'combine',
  'expanded95',
  'molarMass',
  'chanceAbove',
  'findMaterial',
  'hazardsInName',
  'flowCup',
  'valid',
  'refused',
  'outside',
  'firstOutside',
  'notTwoRates',
  'logGamma',
  'bisection',
  'normalDensity',
  ...Object.keys(u),
]);

const numbersIn = (value: unknown): number[] =>
  typeof value === 'number'
    ? [value]
    : typeof value === 'object' && value !== null
      ? Object.values(value).flatMap(numbersIn)
      : [];

/** Numbers of every kind: impossible, enormous, tiny, at the usual limits, and ordinary. */
const anyNumber = fc.oneof(
  fc.double(),
  fc.constantFrom(0, -0, 1, 2, 20, 100, 1000, Number.NaN, Infinity, -Infinity, 5e-324, 1.7e308, 1 + 2 ** -52),
  fc.double({ min: 0, max: 1, noNaN: true }),
  fc.double({ min: 1, max: 3, noNaN: true }),
  fc.double({ min: -50, max: 200, noNaN: true }),
  fc.double({ min: 200, max: 5000, noNaN: true }),
);

describe('a formula given anything', () => {
  it.each(Object.entries(formulas))(
    '%s answers in finite numbers or says what was out of range',
    (name, formula) => {
      fc.assert(
        fc.property(anyNumber, anyNumber, anyNumber, anyNumber, anyNumber, (...numbers) => {
          const result = formula(...numbers);
          if (result.ok) {
            const answer = numbersIn(result.value);
            expect(answer.length, name).toBeGreaterThan(0);
            for (const number of answer) expect(Number.isFinite(number), name).toBe(true);
            return;
          }
          const { quantity, value, low, high } = result.outOfRange;
          expect(quantity).not.toBe('');
          expect(Number.isNaN(low) || Number.isNaN(high), `${quantity}, ${low} to ${high}`).toBe(false);
          expect(value > low && value < high, `${quantity} ${value} lies in ${low} to ${high}`).toBe(false);
        }),
        { numRuns: 300 },
      );
    },
  );

  it('is each of those in src/glaze', async () => {
    const folder = new URL('../../src/glaze/', import.meta.url);
    const known = new Set([...Object.keys(formulas), ...neverRefuse]);
    const unknown: string[] = [];
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' });
    for (const file of files.filter((name) => name.endsWith('.ts'))) {
      const exported: Record<string, unknown> = await import(new URL(file, folder).href);
      for (const [name, value] of Object.entries(exported))
        if (typeof value === 'function' && !known.has(name)) unknown.push(`${file}: ${name}`);
    }
    expect(unknown).toEqual([]);
  });
});
