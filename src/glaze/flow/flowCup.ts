import { firstOutside, valid, type Checked } from '../checked.ts';
import { kinematicViscosity, seconds, type KinematicViscosity, type Seconds } from '../units.ts';

interface Cup {
  kind: string;
  name: string;
  /** ν = slope·(t − offset) − loss/t, in mm²/s and s. */
  slope: number;
  offset: number;
  loss: number;
  low: Seconds;
  high: Seconds;
  source: string;
}

const d1200 = 'ASTM D1200, Ford cups: equation and time range';
const d4212 = 'ASTM D4212, Zahn cups: one maker’s equation and drain times; makers differ';
const iso2431 =
  'ISO 2431: coefficients; time range of a maker’s cup table, wider than the standard’s 30 to 100 s';

const straight = (slope: number, offset: number) => ({ slope, offset, loss: 0 });
const jet = (slope: number, loss: number) => ({ slope, offset: 0, loss });
const from = (low: number, high: number) => ({ low: seconds(low), high: seconds(high) });

/** The standard flow cups, each with its equation and the efflux times in which it holds. */
export const flowCups = [
  { kind: 'ford1', name: 'Ford #1', ...straight(0.49, 35), ...from(55, 100), source: d1200 },
  { kind: 'ford2', name: 'Ford #2', ...straight(1.44, 18), ...from(40, 100), source: d1200 },
  { kind: 'ford3', name: 'Ford #3', ...straight(2.31, 6.58), ...from(20, 100), source: d1200 },
  { kind: 'ford4', name: 'Ford #4', ...straight(3.85, 4.49), ...from(20, 100), source: d1200 },
  { kind: 'zahn1', name: 'Zahn #1', ...straight(1.1, 29), ...from(35, 80), source: d4212 },
  { kind: 'zahn2', name: 'Zahn #2', ...straight(3.5, 14), ...from(20, 80), source: d4212 },
  { kind: 'zahn3', name: 'Zahn #3', ...straight(11.7, 7.5), ...from(20, 80), source: d4212 },
  { kind: 'zahn4', name: 'Zahn #4', ...straight(14.8, 5), ...from(20, 80), source: d4212 },
  { kind: 'zahn5', name: 'Zahn #5', ...straight(23, 0), ...from(20, 80), source: d4212 },
  { kind: 'iso3', name: 'ISO 3 mm', ...jet(0.443, 200), ...from(27, 120), source: iso2431 },
  { kind: 'iso4', name: 'ISO 4 mm', ...jet(1.37, 200), ...from(21, 120), source: iso2431 },
  { kind: 'iso5', name: 'ISO 5 mm', ...jet(3.28, 220), ...from(30, 100), source: 'ISO 2431' },
  { kind: 'iso6', name: 'ISO 6 mm', ...jet(6.9, 570), ...from(17, 120), source: iso2431 },
  { kind: 'din4', name: 'DIN 4 mm', ...jet(4.57, 452), ...from(25, 150), source: 'DIN 53211' },
] as const satisfies readonly Cup[];
export type FlowCupKind = (typeof flowCups)[number]['kind'];

const byKind = new Map<FlowCupKind, Cup>(flowCups.map((cup) => [cup.kind, cup]));

/** The table's row for a cup. */
export const flowCup = (kind: FlowCupKind): Cup => {
  const cup = byKind.get(kind);
  if (!cup) throw new Error(`no flow cup ${kind}`);
  return cup;
};

/**
 * The kinematic viscosity that a standard cup's efflux time stands for, at the temperature it was timed at.
 * @formula ν = A(t − c) − B/t: constants of the cup
 * @param kind the standard cup · @param efflux time to the first break in the stream, s
 * @returns kinematic viscosity, mm²/s, never rounded; for near-Newtonian liquids only, so for a glaze it compares a
 *   bucket with itself
 * @range the cup's own times: Ford #1 55 to 100 s, #2 40 to 100, #3 and #4 20 to 100; Zahn #1 35 to 80 s, others 20 to
 *   80; ISO 3 mm 27 to 120 s, 4 mm 21 to 120, 5 mm 30 to 100, 6 mm 17 to 120; DIN 4 25 to 150 s; outside is refused
 * @source ASTM D1200; ASTM D4212; ISO 2431; DIN 53211
 * @example kinematicViscosityFromCup('ford4', seconds(46)) //=> { ok: true, value: 159.8135 }
 */
export const kinematicViscosityFromCup = (
  kind: FlowCupKind,
  efflux: Seconds,
): Checked<KinematicViscosity> => {
  const { slope, offset, loss, low, high } = flowCup(kind);
  return (
    firstOutside(['efflux time', efflux, low, high]) ??
    valid(kinematicViscosity(slope * (efflux - offset) - loss / efflux))
  );
};
