import psychrolib from 'psychrolib';
import { describe, expect, it, test } from 'vitest';
import { celsius, fraction } from '../../../../src/glaze/units.ts';
import { dryingFactor, isTooColdForFilm } from '../../../../src/studio/resist/dryingFactor.ts';

psychrolib.SetUnitSystem(psychrolib.SI);
const deficit = (t: number, humidity: number) => psychrolib.GetSatVapPres(t) * (1 - humidity);

/** The factor by psychrolib 1.1.1's saturation pressures (ASHRAE Handbook Fundamentals). */
const byPsychrolib = (t: number, humidity: number) =>
  Math.min(3, Math.max(1, deficit(20, 0.5) / deficit(t, humidity)));

const factor = (temperature: number, humidity: number): number => {
  const checked = dryingFactor({ temperature: celsius(temperature), humidity: fraction(humidity) });
  if (!checked.ok) throw new Error(checked.outOfRange.quantity);
  return checked.value;
};

describe('how much longer a coat needs', () => {
  test.each([2, 5, 10, 12, 15, 18, 20, 25, 30, 40])('agrees with psychrolib at %d °C', (temperature) => {
    for (let humidity = 0; humidity < 1; humidity += 0.05)
      expect(factor(temperature, humidity)).toBeCloseTo(byPsychrolib(temperature, humidity), 3);
  });

  it('is the docstring’s example', () => {
    expect(factor(15, 0.7)).toBeCloseTo(2.286, 3);
  });

  it('is one in the usual room, and never less in a warmer or drier one', () => {
    expect(factor(20, 0.5)).toBe(1);
    expect(factor(30, 0.3)).toBe(1);
  });

  it('is three at most, in air that takes up no water too', () => {
    expect(factor(5, 0.95)).toBe(3);
    expect(factor(20, 1)).toBe(3);
  });

  it('takes what is not said as usual', () => {
    expect(dryingFactor({})).toEqual({ ok: true, value: 1 });
    expect(dryingFactor({ temperature: celsius(10) })).toEqual({ ok: true, value: factor(10, 0.5) });
    expect(dryingFactor({ humidity: fraction(0.8) })).toEqual({ ok: true, value: factor(20, 0.8) });
  });

  it('refuses air that no studio has', () => {
    expect(dryingFactor({ temperature: celsius(90) }).ok).toBe(false);
    expect(dryingFactor({ humidity: fraction(1.2) }).ok).toBe(false);
    expect(dryingFactor({ humidity: fraction(NaN) }).ok).toBe(false);
  });
});

test('under 10 °C an emulsion may never form a film', () => {
  expect(isTooColdForFilm(celsius(9.9))).toBe(true);
  expect(isTooColdForFilm(celsius(10))).toBe(false);
});
