import { describe, expect, it, test } from 'vitest';
import {
  readDuration,
  readLength,
  readMass,
  readNumber,
  readPercent,
  readRange,
  readSeconds,
  readTemperature,
  readVolume,
} from '../../../src/parse/readQuantity.ts';
import type { ReadQuantity } from '../../../src/parse/measure.ts';

const value = <T>(read: ReadQuantity<T>): T => {
  if (!read.ok) throw new Error(`refused: ${JSON.stringify(read.why)}`);
  return read.value;
};
const why = (read: ReadQuantity<unknown>) => (read.ok ? `read as ${JSON.stringify(read.value)}` : read.why);

/**
 * NIST Handbook 44, Appendix C: the gallon is 231 cubic inches, the inch 25.4 mm, the pound 0.45359237 kg,
 * all exact; the imperial gallon is 4.54609 litres exactly. NIST SP 811, Appendix B.8 for the seven-digit
 * factors. Digits *from memory*.
 */
describe('the size of a unit is the published one', () => {
  test.each([
    ['1 gallon', 3785.411784],
    ['1 quart', 946.352946],
    ['1 pint', 473.176473],
    ['1 cup', 236.5882365],
    ['1 fl oz', 29.5735295625],
    ['1 tbsp', 14.78676478125],
    ['1 tsp', 4.92892159375],
    ['1 l', 1000],
    ['1 dl', 100],
    ['1 cl', 10],
    ['1 ml', 1],
    ['1 cc', 1],
    ['1 cm³', 1],
  ])('US volume: %s is %d ml', (typed, ml) => {
    expect(value(readVolume(typed, 'us'))).toBeCloseTo(ml, 10);
    expect(value(readVolume(typed, 'metric'))).toBeCloseTo(ml, 10);
  });

  test.each([
    ['1 gallon', 4546.09],
    ['1 quart', 1136.5225],
    ['1 pint', 568.26125],
    ['1 fl oz', 28.4130625],
  ])('imperial volume: %s is %d ml', (typed, ml) => {
    expect(value(readVolume(typed, 'imperial'))).toBeCloseTo(ml, 10);
  });

  it('takes the named system over the studio’s', () => {
    expect(value(readVolume('1 imperial gallon', 'us'))).toBeCloseTo(4546.09, 10);
    expect(value(readVolume('2 U.S. gal.', 'imperial'))).toBeCloseTo(7570.823568, 10);
    expect(value(readVolume('1 UK pint', 'metric'))).toBeCloseTo(568.26125, 10);
  });

  it('counts kitchen spoons in an imperial studio as 5 and 15 ml (common practice)', () => {
    expect(value(readVolume('3 tsp', 'imperial'))).toBe(15);
    expect(value(readVolume('1 tbsp', 'imperial'))).toBe(15);
  });

  it('counts a drop as 0.05 ml (common practice)', () => {
    expect(value(readVolume('20 drops', 'us'))).toBeCloseTo(1, 12);
  });

  test.each([
    ['1 lb', 453.59237],
    ['1 oz', 28.349523125],
    ['1 kg', 1000],
    ['1 g', 1],
    ['1 mg', 0.001],
  ])('mass: %s is %d g', (typed, g) => {
    expect(value(readMass(typed, 'us'))).toBeCloseTo(g, 10);
  });

  test.each([
    ['1 in', 25.4],
    ['1 ft', 304.8],
    ['1 m', 1000],
    ['1 cm', 10],
    ['1 mm', 1],
  ])('length: %s is %d mm', (typed, mm) => {
    expect(value(readLength(typed))).toBeCloseTo(mm, 10);
  });

  // NIST SP 811, Appendix B.8: t/°C = (t/°F − 32)/1.8; the fixed points of water and the crossing at −40.
  test.each([
    ['32F', 0],
    ['212 °F', 100],
    ['-40F', -40],
    ['-40 C', -40],
    ['68 fahrenheit', 20],
    ['18C', 18],
    ['18', 18],
    ['18°', 18],
    ['18ºC', 18],
    ['18 degrees', 18],
    ['18 deg C', 18],
    ['−2,5 °C', -2.5],
  ])('temperature: %s is %d °C', (typed, celsius) => {
    expect(value(readTemperature(typed))).toBeCloseTo(celsius, 10);
  });

  it('reads a bare temperature in Fahrenheit where the caller says so', () => {
    expect(value(readTemperature('68', 'F'))).toBeCloseTo(20, 12);
  });
});

describe('a quantity is read as people write it', () => {
  test.each([
    ['350 ml', 350],
    ['350 ML', 350],
    ['350ml', 350],
    ['350 mls.', 350],
    ['350\u00a0ml', 350],
    ['350\u202fml', 350],
    ['３５０ｍｌ', 350],
    ['٣٥٠ ml', 350],
    ['۳۵۰ ml', 350],
    ['\u200e350 ml\u200f', 350],
    ['350 ㎖', 350],
    ['1,5 l', 1500],
    ['1.5 L', 1500],
    ['1,25 litres', 1250],
    ['0,500 l', 500],
    ['1.200 l', 1200],
    ['.5 l', 500],
    ['1½ l', 1500],
    ['1 ½ l', 1500],
    ['½ l', 500],
    ['1 1/2 l', 1500],
    ['1-1/2 l', 1500],
    ['1⁄2 l', 500],
    ['3/4 l', 750],
    ['1,500 ml', 1500],
    ['1 500 ml', 1500],
    ['1,234.5 ml', 1234.5],
    ['1.234,5 ml', 1234.5],
    ['1,234,567 ml', 1234567],
    ['1.234.567 ml', 1234567],
    ['1 l 200 ml', 1200],
    ['1 l, 200 ml', 1200],
    ['1 l and 200 ml', 1200],
    ['1 l + 200 ml', 1200],
    ['1l200ml', 1200],
    ['1 l .5 ml', 1000.5],
    ['1e3 ml', 1000],
    ['+5 ml', 5],
    ['0 ml', 0],
    ['half a litre', 500],
    ['a half litre', 500],
    ['half litre', 500],
    ['a litre', 1000],
    ['one and a half litres', 1500],
    ['two litres', 2000],
    ['a quarter of a litre', 250],
  ])('%s is %d ml', (typed, ml) => {
    expect(value(readVolume(typed, 'metric'))).toBeCloseTo(ml, 9);
  });

  test.each([
    ['1/2 cup', 236.5882365 / 2],
    ['1 1/2 cups', 236.5882365 * 1.5],
    ['half a cup', 236.5882365 / 2],
    ['1.5 gal', 3785.411784 * 1.5],
    ['3 tsp', 14.78676478125],
    ['2 fl. oz.', 59.147059125],
    ['2 fluid ounces', 59.147059125],
    ['1 cup 2 tbsp', 236.5882365 + 29.5735295625],
    ['1 gal 1 qt', 3785.411784 * 1.25],
  ])('%s is %d ml in US measures', (typed, ml) => {
    expect(value(readVolume(typed, 'us'))).toBeCloseTo(ml, 9);
  });

  test.each([
    ['246.2g', 246.2],
    ['246.2 G', 246.2],
    ['246,2 g', 246.2],
    ['246. g', 246],
    ['2 lb', 907.18474],
    ['2lb', 907.18474],
    ['2#', 907.18474],
    ['2 lb 3 oz', 992.233309375],
    ['2lb3oz', 992.233309375],
    ['2 lbs. 3 oz.', 992.233309375],
    ['1.200 kg', 1200],
    ['12,500 g', 12500],
  ])('%s is %d g', (typed, g) => {
    expect(value(readMass(typed, 'us'))).toBeCloseTo(g, 9);
  });

  test.each([
    ['7cm', 70],
    ['2 3/4"', 69.85],
    ['2¾″', 69.85],
    ['2 3/4”', 69.85],
    ['1\' 2"', 355.6],
    ['1′2″', 355.6],
    ["1'2''", 355.6],
    ['1 ft 2 in', 355.6],
    ['0.8 mm', 0.8],
    ['0,8mm', 0.8],
  ])('%s is %d mm', (typed, mm) => {
    expect(value(readLength(typed))).toBeCloseTo(mm, 9);
  });

  test.each([
    ['3 min', 180_000],
    ['3 m', 180_000],
    ['90 sec', 90_000],
    ['4h', 14_400_000],
    ['4 hrs', 14_400_000],
    ['1h30', 5_400_000],
    ['1 h 30 min', 5_400_000],
    ['1 hour and 30 minutes', 5_400_000],
    ['half an hour', 1_800_000],
    ['an hour', 3_600_000],
    ['1½ hours', 5_400_000],
    ['2 days', 172_800_000],
    ['1 week', 604_800_000],
  ])('%s is %d ms', (typed, ms) => {
    expect(value(readDuration(typed))).toBeCloseTo(ms, 6);
  });

  test.each([
    ['14', 14],
    ['14s', 14],
    ['14.5 sec', 14.5],
    ['14,5', 14.5],
    ['1:05', 65],
    ['1:05.5', 65.5],
    ['1\'05"', 65],
    ['1 min 5 s', 65],
    ['1m5', 65],
  ])('%s is %d s of efflux', (typed, s) => {
    expect(value(readSeconds(typed))).toBeCloseTo(s, 9);
  });

  it('gives a bare number the unit that the caller named, in the studio’s system', () => {
    expect(value(readVolume('350', 'metric', 'ml'))).toBe(350);
    expect(value(readVolume('2', 'imperial', 'pint'))).toBeCloseTo(1136.5225, 9);
    expect(value(readMass('246.2', 'metric', 'g'))).toBe(246.2);
    expect(value(readLength('3', 'in'))).toBeCloseTo(76.2, 9);
    expect(value(readDuration('3', 'min'))).toBe(180_000);
  });
});

describe('a number and a range', () => {
  it('reads a number with either decimal sign', () => {
    expect(value(readNumber('1.44'))).toBe(1.44);
    expect(value(readNumber('1,44'))).toBe(1.44);
    expect(value(readNumber('2½'))).toBe(2.5);
    expect(value(readNumber('80.'))).toBe(80);
  });

  it('reads a percentage with or without its sign', () => {
    expect(value(readPercent('80'))).toBe(80);
    expect(value(readPercent('80%'))).toBe(80);
    expect(value(readPercent('12,5 ％'))).toBe(12.5);
  });

  test.each([
    '1.42-1.46',
    '1.42–1.46',
    '1.42 — 1.46',
    '1.42 to 1.46',
    '1.42..1.46',
    '1,42 - 1,46',
    '1.42−1.46',
  ])('%s is a range', (typed) =>
    expect(value(readRange(typed, readNumber))).toEqual({ low: 1.42, high: 1.46 }),
  );

  it('reads the ends of a range by the reader it is given', () => {
    expect(value(readRange('12-16 s', readSeconds))).toEqual({ low: 12, high: 16 });
    expect(value(readRange('0:55 to 1:05', readSeconds))).toEqual({ low: 55, high: 65 });
  });

  it('refuses what is no range, and one written high to low', () => {
    expect(why(readRange('1.44', readNumber))).toEqual({ kind: 'not-a-range', typed: '1.44' });
    expect(why(readRange('1.42-', readNumber))).toEqual({ kind: 'not-a-range', typed: '1.42-' });
    expect(why(readRange(' ', readNumber))).toEqual({ kind: 'empty', typed: ' ' });
    expect(why(readRange('1.46-1.24', readNumber))).toEqual({
      kind: 'upside-down',
      low: 1.46,
      high: 1.24,
      typed: '1.46-1.24',
    });
    expect(why(readRange('thin to thick', readNumber))).toEqual({ kind: 'not-a-number', typed: 'thin' });
  });
});

describe('a slip is refused and named, and nothing is dropped in silence', () => {
  it('says that nothing was typed', () => {
    expect(why(readVolume('', 'us'))).toEqual({ kind: 'empty', typed: '' });
    expect(why(readNumber(' \u00a0 '))).toEqual({ kind: 'empty', typed: ' \u00a0 ' });
  });

  it('refuses a negative amount but not a frost', () => {
    expect(why(readVolume('-5 ml', 'us'))).toEqual({ kind: 'negative', typed: '-5 ml' });
    expect(why(readVolume('−5 ml', 'us'))).toEqual({ kind: 'negative', typed: '−5 ml' });
    expect(why(readNumber('-1.4'))).toEqual({ kind: 'negative', typed: '-1.4' });
    expect(value(readTemperature('-4 C'))).toBe(-4);
  });

  it('asks for the unit when the caller has none in mind', () => {
    expect(why(readVolume('350', 'us'))).toEqual({ kind: 'no-unit', wanted: 'volume', typed: '350' });
    expect(why(readMass('2 lb 3', 'us', 'g'))).toEqual({ kind: 'no-unit', wanted: 'mass', typed: '2 lb 3' });
  });

  it('names a unit that it does not know', () => {
    expect(why(readVolume('3 dollops', 'us'))).toEqual({
      kind: 'unknown-unit',
      unit: 'dollops',
      wanted: 'volume',
      typed: '3 dollops',
    });
    expect(why(readVolume('3 cups of water', 'us'))).toMatchObject({
      kind: 'unknown-unit',
      unit: 'cups of water',
    });
    expect(why(readMass('3 gr', 'us'))).toMatchObject({ kind: 'unknown-unit', unit: 'gr' });
  });

  it('says which kind of quantity it was given instead', () => {
    expect(why(readVolume('2 lb', 'us'))).toEqual({
      kind: 'wrong-dimension',
      unit: 'lb',
      is: 'mass',
      wanted: 'volume',
      typed: '2 lb',
    });
    expect(why(readVolume('8 oz', 'us'))).toMatchObject({ kind: 'wrong-dimension', is: 'mass' });
    expect(why(readMass('350 ml', 'us'))).toMatchObject({
      kind: 'wrong-dimension',
      is: 'volume',
      wanted: 'mass',
    });
    expect(why(readLength('3 min'))).toMatchObject({ kind: 'wrong-dimension', is: 'duration' });
  });

  it('asks when a comma may part thousands or decimals', () => {
    expect(why(readVolume('1,500 l', 'us'))).toEqual({
      kind: 'ambiguous',
      either: 1_500_000,
      or: 1500,
      typed: '1,500 l',
    });
    expect(why(readNumber('1,440'))).toEqual({ kind: 'ambiguous', either: 1440, or: 1.44, typed: '1,440' });
  });

  it('asks when a colon may part hours or minutes', () => {
    expect(why(readDuration('1:30'))).toEqual({
      kind: 'ambiguous',
      either: 5_400_000,
      or: 90_000,
      typed: '1:30',
    });
  });

  test.each([
    'ml',
    'lots',
    '~350 ml',
    '350 ml!',
    '1/0 l',
    '0/0 l',
    '1/2/3 l',
    '1.2.3 l',
    '1,23,456 ml',
    '1 5000 ml',
    '10² ml',
    '1e999 ml',
    'NaN ml',
    'Infinity ml',
    '3 oz 2 lb',
    '2 l 1 l',
    '200 ml 1 l',
    '350 ml ml',
    '350 ml 350',
    '--5 ml',
    '5 ml -3 ml',
    '1:05 ml',
    '0x10 ml',
    '1_000 ml',
    'Ⅻ ml',
    '5 m l',
  ])('refuses %s', (typed) => {
    expect(readVolume(typed, 'us').ok).toBe(false);
  });

  test.each(['1:65', '1:5', ':30', '1:', '18 C 3 F', 'won’t-run'])('refuses the seconds %s', (typed) => {
    expect(readSeconds(typed).ok).toBe(false);
  });

  it('refuses two temperatures at once', () => {
    expect(readTemperature('18 C 3 F').ok).toBe(false);
  });
});
