import { normalCdf } from './normal.ts';
import { quickDensity } from './quickNormal.ts';

/** Half the points and weights of Gauss and Legendre's rules of 6, 12 and 20 points. Abramowitz & Stegun 1964, 25.4 (from memory). */
const halves: readonly (readonly (readonly [point: number, weight: number])[])[] = [
  [
    [0.9324695142031522, 0.1713244923791705],
    [0.6612093864662647, 0.3607615730481384],
    [0.238619186083197, 0.4679139345726904],
  ],
  [
    [0.9815606342467191, 0.04717533638651177],
    [0.904117256370475, 0.1069393259953183],
    [0.769902674194305, 0.1600783285433464],
    [0.5873179542866171, 0.2031674267230659],
    [0.3678314989981802, 0.2334925365383547],
    [0.1252334085114692, 0.2491470458134029],
  ],
  [
    [0.9931285991850949, 0.01761400713915212],
    [0.9639719272779138, 0.04060142980038694],
    [0.9122344282513259, 0.0626720483341091],
    [0.8391169718222188, 0.08327674157670475],
    [0.7463319064601508, 0.1019301198172404],
    [0.636053680726515, 0.1181945319615184],
    [0.5108670019508271, 0.1316886384491766],
    [0.3737060887154196, 0.1420961093183821],
    [0.2277858511416451, 0.1491729864726037],
    [0.0765265211334973, 0.1527533871307259],
  ],
];

const rules = halves.map((half) =>
  half.flatMap(([point, weight]) => [[-point, weight] as const, [point, weight] as const]),
);

const ruleFor = (r: number) => rules[Math.abs(r) < 0.3 ? 0 : Math.abs(r) < 0.75 ? 1 : 2] ?? [];

/** Up to this correlation the plain integral over it is exact enough. */
const mild = 0.925;

/** Plackett's integral over the angle of the correlation. */
const aboveMild = (h: number, k: number, r: number): number => {
  const [product, half, angle] = [h * k, (h * h + k * k) / 2, Math.asin(r)];
  let sum = 0;
  for (const [x, weight] of ruleFor(r)) {
    const sine = Math.sin((angle * (1 + x)) / 2);
    sum += weight * Math.exp((sine * product - half) / (1 - sine * sine));
  }
  return (sum * angle) / (4 * Math.PI) + normalCdf(-h) * normalCdf(-k);
};

/** Beyond so many deviations there is nothing that a double can hold. */
const beyond = 40;
const inSight = (mark: number): number => Math.min(beyond, Math.max(-beyond, mark));

/** The tetrachoric series needs fewer terms than this, up to a mild correlation. */
const mostTerms = 512;
/** What takes a Hermite function to the next one: hₙ₊₁ = (x·hₙ − √n·hₙ₋₁)/√(n + 1). */
const newer = Float64Array.from({ length: mostTerms }, (_, n) => 1 / Math.sqrt(n + 1));
const older = Float64Array.from({ length: mostTerms }, (_, n) => Math.sqrt(n / (n + 1)));

/** √φ(x) times this is more than any Hermite function at x, Cramér's inequality. Abramowitz & Stegun 1964, 22.14.17 (from memory). */
const cramer = 1.0865 / Math.sqrt(Math.sqrt(2 * Math.PI));

/**
 * What a mild correlation adds: the tetrachoric series for the four corners at once, Σ rⁿ/n·(hₙ₋₁(b) − hₙ₋₁(a))·(hₙ₋₁(d)
 * − hₙ₋₁(c)) for n from 1, hₙ = Heₙ·φ/√n!. It ends where the rest is known to be less than `within`.
 * @source Abramowitz & Stegun 1964, 26.3.29 (from memory)
 */
const tiedMild = (first: Between, second: Between, r: number, within: number): number => {
  const a = inSight(first.low);
  const b = inSight(first.high);
  const c = inSight(second.low);
  const d = inSight(second.high);
  let ha = quickDensity(a);
  let hb = quickDensity(b);
  let hc = quickDensity(c);
  let hd = quickDensity(d);
  const most = cramer ** 2 * (Math.sqrt(ha) + Math.sqrt(hb)) * (Math.sqrt(hc) + Math.sqrt(hd));
  const least = (within * (1 - Math.abs(r))) / most;
  let [olderA, olderB, olderC, olderD] = [0, 0, 0, 0];
  let power = r;
  let sum = 0;
  for (let n = 0; n < mostTerms; n++) {
    const x = newer[n] ?? 0;
    const y = older[n] ?? 0;
    const part = power * x * x;
    if (!(Math.abs(part) > least)) break;
    sum += part * (hb - ha) * (hd - hc);
    power *= r;
    const nextA = x * a * ha - y * olderA;
    const nextB = x * b * hb - y * olderB;
    const nextC = x * c * hc - y * olderC;
    const nextD = x * d * hd - y * olderD;
    olderA = ha;
    olderB = hb;
    olderC = hc;
    olderD = hd;
    ha = nextA;
    hb = nextB;
    hc = nextC;
    hd = nextD;
  }
  return sum;
};

/** What is missing from a correlation of 1: the sharp part of the integrand is taken out and integrated by itself. */
const shortOfWhole = (h: number, k: number, r: number): number => {
  const product = h * k;
  const rest = (1 - r) * (1 + r);
  const root = Math.sqrt(rest);
  const apart = (h - k) ** 2;
  const [c, d] = [(4 - product) / 8, (12 - product) / 16];
  const series = 1 - (c * apart * (1 - (d * apart) / 5)) / 3;
  const exponent = -(apart / rest + product) / 2;
  let sum =
    exponent > -100
      ? root *
        Math.exp(exponent) *
        (1 - (c * (apart - rest) * (1 - (d * apart) / 5)) / 3 + (c * d * rest ** 2) / 5)
      : 0;
  if (-product < 100) {
    const b = Math.sqrt(apart);
    sum -= Math.exp(-product / 2) * Math.sqrt(2 * Math.PI) * normalCdf(-b / root) * b * series;
  }
  for (const [x, weight] of ruleFor(r)) {
    const square = ((root / 2) * (1 + x)) ** 2;
    const left = Math.sqrt(1 - square);
    const power = -(apart / square + product) / 2;
    if (power <= -100) continue;
    const sharp = Math.exp((-product * (1 - left)) / (2 * (1 + left))) / left;
    sum += (root / 2) * weight * Math.exp(power) * (sharp - (1 + c * square * (1 + d * square)));
  }
  return -sum / (2 * Math.PI);
};

/**
 * The chance that both of two standard normal values, of correlation r, lie above their marks.
 * @formula P(X > h, Y > k), X, Y ~ N(0, 1), corr(X, Y) = r
 * @param h first mark, any number; ±∞ too · @param k second mark · @param r correlation, −1 to 1
 * @returns probability, 0 to 1, never rounded; good to about 10⁻¹⁵; NaN for a correlation beyond 1 or NaN
 * @range all h and k, r −1 to 1
 * @source Genz 2004, Statistics and Computing 14, 251, after Drezner & Wesolowsky 1990 (from memory)
 * @example bothAbove(0, 0, 0.5) //=> 0.33333333
 */
export const bothAbove = (h: number, k: number, r: number): number => {
  if (h === Infinity || k === Infinity) return 0;
  if (h === -Infinity) return normalCdf(-k);
  if (k === -Infinity) return normalCdf(-h);
  if (Math.abs(r) < mild) return aboveMild(h, k, r);
  if (r > 0) {
    const whole = normalCdf(-Math.max(h, k));
    return r < 1 ? Math.max(0, whole + shortOfWhole(h, k, r)) : whole;
  }
  const none = h < -k ? normalCdf(-h) - normalCdf(k) : 0;
  return r > -1 ? Math.max(0, none - shortOfWhole(h, -k, r)) : r === -1 ? none : NaN;
};

export interface Between {
  low: number;
  high: number;
}

const between = ({ low, high }: Between): number => normalCdf(high) - normalCdf(low);

/** What a correlation r adds to the chance that both of two values lie between their marks; `within` is how exact it must be. */
export const addedByTie = (first: Between, second: Between, r: number, within = 1e-16): number => {
  if (Math.abs(r) < mild) return tiedMild(first, second, r, within);
  const above = (h: number, k: number) => bothAbove(h, k, r);
  return (
    above(first.low, second.low) -
    above(first.high, second.low) -
    above(first.low, second.high) +
    above(first.high, second.high) -
    between(first) * between(second)
  );
};

/**
 * The chance that two normal values that vary together both lie between their marks: that a bucket is right in
 * gravity and in flow.
 * @formula P(a < X < b, c < Y < d) = U(a, c) − U(b, c) − U(a, d) + U(b, d), U(h, k) = P(X > h, Y > k)
 * @param first a and b, in deviations from the mean; ±∞ for none · @param second c and d · @param r correlation
 * @returns probability, 0 to 1, never rounded
 * @range a ≤ b, c ≤ d, r −1 to 1
 * @source Genz 2004, Statistics and Computing 14, 251 (from memory)
 * @example bothBetween({ low: 0, high: Infinity }, { low: -Infinity, high: 0 }, 0) //=> 0.25
 */
export const bothBetween = (first: Between, second: Between, r: number): number => {
  const chance = between(first) * between(second) + addedByTie(first, second, r);
  // What decimals lose must not leave less than nothing.
  return Math.min(1, Math.max(0, chance));
};
