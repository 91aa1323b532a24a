import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  readDuration,
  readLength,
  readMass,
  readNumber,
  readRange,
  readSeconds,
  readTemperature,
  readVolume,
} from '../../src/parse/readQuantity.ts';

const amount = fc.double({ min: 0, max: 1e6, noNaN: true });
const readers = [
  (typed: string) => readMass(typed, 'us', 'g'),
  (typed: string) => readVolume(typed, 'imperial', 'ml'),
  (typed: string) => readLength(typed, 'mm'),
  (typed: string) => readDuration(typed, 'min'),
  (typed: string) => readSeconds(typed),
  (typed: string) => readTemperature(typed),
  (typed: string) => readNumber(typed),
];
const volumeUnits = [
  'ml',
  'l',
  'cl',
  'tsp',
  'tbsp',
  'cup',
  'fl oz',
  'pint',
  'quart',
  'gallon',
  'drops',
  'cc',
];

test('what is printed in the base unit is read back the same', () => {
  fc.assert(
    fc.property(amount, (number) => {
      expect(readMass(`${number} g`, 'us')).toEqual({ ok: true, value: number });
      expect(readVolume(`${number}ml`, 'metric')).toEqual({ ok: true, value: number });
      expect(readLength(`${number} mm`)).toEqual({ ok: true, value: number });
      expect(readSeconds(String(number))).toEqual({ ok: true, value: number });
      expect(readNumber(String(number))).toEqual({ ok: true, value: number });
    }),
    { numRuns: 2000 },
  );
});

test('a frost printed in Celsius is read back the same', () => {
  fc.assert(
    fc.property(fc.double({ min: -60, max: 150, noNaN: true }), (number) => {
      expect(readTemperature(`${number} °C`)).toEqual({ ok: true, value: number === 0 ? 0 : number });
    }),
  );
});

test('the decimal sign, the case and the spacing never change what is read', () => {
  const hundredths = fc.integer({ min: 0, max: 10_000_000 }).map((n) => n / 100);
  fc.assert(
    fc.property(hundredths, fc.constantFrom(...volumeUnits), (number, unit) => {
      const plain = readVolume(`${number} ${unit}`, 'us');
      expect(plain.ok).toBe(true);
      expect(readVolume(`${number}${unit.toUpperCase()}`, 'us')).toEqual(plain);
      expect(readVolume(` ${String(number).replace('.', ',')}\u00a0${unit}. `, 'us')).toEqual(plain);
    }),
    { numRuns: 2000 },
  );
});

test('parts add up', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 15 }), (pounds, ounces) => {
      const read = readMass(`${pounds} lb ${ounces} oz`, 'us');
      expect(read.ok && read.value).toBeCloseTo(pounds * 453.59237 + ounces * 28.349523125, 6);
    }),
  );
});

test('a range printed low to high is read back the same', () => {
  const end = fc.integer({ min: 0, max: 100_000 }).map((n) => n / 100);
  fc.assert(
    fc.property(end, end, fc.constantFrom('-', ' – ', ' to '), (one, other, dash) => {
      const [low, high] = one < other ? [one, other] : [other, one];
      expect(readRange(`${low}${dash}${high}`, readNumber)).toEqual({ ok: true, value: { low, high } });
    }),
  );
});

test('whatever is typed, the answer is a finite number or a reason with the text in it', () => {
  const messy = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.string({ unit: fc.constantFrom(...'0123456789 .,/-+½²:\'"eElmgcozb°٣–#') }),
    fc.tuple(fc.double(), fc.string({ maxLength: 3 })).map(([number, rest]) => `${number}${rest}`),
  );
  fc.assert(
    fc.property(messy, fc.constantFrom(...readers), (typed, reader) => {
      const read = reader(typed);
      if (read.ok) expect(Number.isFinite(read.value)).toBe(true);
      else expect(read.why.typed).toBe(typed);
    }),
    { numRuns: 20_000 },
  );
});

test('a long line of digits or signs is answered at once', () => {
  for (const one of ['1', '1 ', '1,', '1/', '1 l ', '1-', ' ', '.', '½'])
    for (const reader of readers) expect(reader(one.repeat(2000)).ok).toBeTypeOf('boolean');
});
