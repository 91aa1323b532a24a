import {
  celsius,
  grams,
  millilitres,
  millimetres,
  seconds,
  type Celsius,
  type Grams,
  type Millilitres,
  type Millimetres,
  type Seconds,
} from '../glaze/units.ts';
import { duration, type Duration } from '../studio/ids.ts';
import type { UnitSystem } from '../studio/settings/studio.ts';
import { measure, type ReadQuantity } from './measure.ts';
import { asciiText, readNumeral } from './readNumeral.ts';

export const inUnit = <N, T>(read: ReadQuantity<N>, unit: (value: N) => T): ReadQuantity<T> =>
  read.ok ? { ok: true, value: unit(read.value) } : read;

/** `246.2g`, `2 lb 3 oz`. A bare number is refused unless the caller gives its unit. */
export const readMass = (
  typed: string,
  system: UnitSystem,
  bare?: 'mg' | 'g' | 'kg' | 'oz' | 'lb',
): ReadQuantity<Grams> => inUnit(measure(typed, { dimension: 'mass', system, bare }), grams);

/** `350 ML`, `1½ l`, `1/2 cup`, `3 tsp`, `20 drops`. */
export const readVolume = (
  typed: string,
  system: UnitSystem,
  bare?: 'ml' | 'l' | 'tsp' | 'cup' | 'pint' | 'quart' | 'gallon' | 'drop',
): ReadQuantity<Millilitres> => inUnit(measure(typed, { dimension: 'volume', system, bare }), millilitres);

/** `7cm`, `2 3/4"`, `0.8 mm`. */
export const readLength = (typed: string, bare?: 'mm' | 'cm' | 'in'): ReadQuantity<Millimetres> =>
  inUnit(measure(typed, { dimension: 'length', system: 'metric', bare }), millimetres);

/** `18C`, `64F`, `-2 °C`; a bare number is Celsius unless the caller says otherwise. */
export const readTemperature = (typed: string, bare: 'C' | 'F' = 'C'): ReadQuantity<Celsius> =>
  inUnit(measure(typed, { dimension: 'temperature', system: 'metric', bare }), celsius);

const CLOCK = /^(\d{1,3}):([0-5]\d(?:[.,]\d+)?)$/;

const clock = (typed: string): { left: number; right: number } | undefined => {
  const [, left, right] = CLOCK.exec(asciiText(typed)) ?? [];
  return left === undefined || right === undefined
    ? undefined
    : { left: Number(left), right: Number(right.replace(',', '.')) };
};

/** A duration: `3 min`, `1h30`, `4h`. `1:30` is ambiguous. */
export const readDuration = (typed: string, bare?: 's' | 'min' | 'h' | 'day'): ReadQuantity<Duration> => {
  const times = clock(typed);
  if (times) {
    const either = times.left * 3_600_000 + times.right * 60_000;
    const or = times.left * 60_000 + times.right * 1000;
    return { ok: false, why: { kind: 'ambiguous', either, or, typed } };
  }
  const read = measure(typed, { dimension: 'duration', system: 'metric', bare });
  return inUnit(read, (value) => duration(value * 1000));
};

/** An efflux time: `14`, `14.5 sec`, or `1:05` for a minute and five seconds. */
export const readSeconds = (typed: string): ReadQuantity<Seconds> => {
  const times = clock(typed);
  if (times) return { ok: true, value: seconds(times.left * 60 + times.right) };
  return inUnit(measure(typed, { dimension: 'duration', system: 'metric', bare: 's' }), seconds);
};

/** A number without a unit. `1,440` is ambiguous: a caller that knows its limits may choose. */
export const readNumber = (typed: string): ReadQuantity<number> => {
  const text = asciiText(typed)
    .replace(/^\+ ?/, '')
    .replace(/(?<=\d)\.$/, '');
  if (text === '') return { ok: false, why: { kind: 'empty', typed } };
  const numeral = readNumeral(text.replace(/^- ?/, ''));
  if (!numeral) return { ok: false, why: { kind: 'not-a-number', typed } };
  if (text.startsWith('-')) return { ok: false, why: { kind: 'negative', typed } };
  return numeral.kind === 'value'
    ? { ok: true, value: numeral.value }
    : { ok: false, why: { kind: 'ambiguous', either: numeral.grouped, or: numeral.decimal, typed } };
};

/** `80` and `80%` are both 80. */
export const readPercent = (typed: string): ReadQuantity<number> => {
  const read = readNumber(asciiText(typed).replace(/ ?(?:%|percent|per cent)$/i, ''));
  return read.ok ? read : { ok: false, why: { ...read.why, typed } };
};

/** `1.42-1.46`, `1.42 – 1.46`, `12 to 16 s`; `readEnd` parses each end, and the lower comes first. */
export const readRange = <T extends number>(
  typed: string,
  readEnd: (typed: string) => ReadQuantity<T>,
): ReadQuantity<{ low: T; high: T }> => {
  const text = asciiText(typed);
  if (text === '') return { ok: false, why: { kind: 'empty', typed } };
  const [, first, second] = /^(.+?) ?(?:-|\bto\b|\.{2,3}) ?(.+)$/i.exec(text) ?? [];
  if (first === undefined || second === undefined) return { ok: false, why: { kind: 'not-a-range', typed } };
  const low = readEnd(first);
  if (!low.ok) return low;
  const high = readEnd(second);
  if (!high.ok) return high;
  if (low.value > high.value)
    return { ok: false, why: { kind: 'upside-down', low: low.value, high: high.value, typed } };
  return { ok: true, value: { low: low.value, high: high.value } };
};
