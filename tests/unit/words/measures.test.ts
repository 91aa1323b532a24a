import { describe, expect, it } from 'vitest';
import { dryContentText, powderWithin, volumeWithin, waterWithin } from '../../../src/words/text/measures.ts';

describe('an amount with what it may be off', () => {
  // JCGM 100, 7.2.6: the estimate is rounded to where its uncertainty is, which has one or two digits.
  it.each([
    [957, 323, '1.0 ± 0.3 l'],
    [652, 380, '0.7 ± 0.4 l'],
    [652, 150, '0.65 ± 0.15 l'],
    [652, 38, '650 ± 40 ml'],
    [42, 5, '42 ± 5 ml'],
    [1300, 400, '1.3 ± 0.4 l'],
    [12, 0.6, '12.0 ± 0.6 ml'],
  ])('%f ± %f ml has the digits of its uncertainty', (value, u95, text) => {
    expect(waterWithin(value, u95, 'metric')).toBe(text);
  });

  it('goes for powder likewise', () => {
    expect(powderWithin(617, 230, 'metric')).toBe('0.6 ± 0.2 kg');
    expect(powderWithin(85, 23, 'metric')).toBe('90 ± 20 g');
  });

  it('has one unit for both', () => {
    // 12.5 l and 3.3 l in US gallons of 3.785411784 l (NIST Handbook 44, appendix C).
    expect(volumeWithin(12_500, 3300, 'us')).toBe('3.3 gal in the pail, ± 0.87 gal');
    expect(volumeWithin(15_000, 1500, 'metric')).toBe('15 l in the pail, ± 1.5 l');
    expect(volumeWithin(850, 123, 'metric')).toBe('850 ml in the pail, ± 120 ml');
  });
});

it.each([
  // 617 g/l × 3.785411784 l / 453.59237 g; 617 g/l × 0.56826125 l / 28.349523125 g (NIST Handbook 44, appendix C).
  ['metric', '617 g to the litre'],
  ['us', '5.15 lb to the gallon'],
  ['imperial', '12.4 oz to the pint'],
] as const)('dry content is told as the trade does: %s', (units, text) => {
  expect(dryContentText(617, units)).toBe(text);
});
