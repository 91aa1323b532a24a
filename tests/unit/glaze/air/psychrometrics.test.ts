import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { dewPoint, saturationPressure, wetBulb } from '../../../../src/glaze/air/psychrometrics.ts';
import { celsius, fraction } from '../../../../src/glaze/units.ts';
import { must } from '../../../helpers/glaze/must.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const temperatures = [-30, -10, -0.5, 0, 0.5, 5, 12.3, 20, 28.8, 35, 50];
const humidities = [0.05, 0.2, 0.5, 0.73, 0.95, 1];

describe('moist air, against psychrolib 1.1.1 (ASHRAE Handbook Fundamentals 2017)', () => {
  it.each(temperatures)('has the same saturation pressure at %f °C', (t) => {
    const theirs = psychrolib.GetSatVapPres(t);
    expect(Math.abs(must(saturationPressure(celsius(t))) / theirs - 1)).toBeLessThan(1e-9);
  });

  it.each(temperatures)('has the same wet bulb and dew point at %f °C', (t) => {
    for (const humidity of humidities) {
      const room = { temperature: celsius(t), humidity: fraction(humidity) };
      // its searches stop at 0.001 °C
      const bulb = psychrolib.GetTWetBulbFromRelHum(t, humidity, 101_325);
      expect(Math.abs(must(wetBulb(room)) - bulb), `wet bulb, ${humidity}`).toBeLessThan(0.02);
      const dew = psychrolib.GetTDewPointFromRelHum(t, humidity);
      expect(Math.abs(must(dewPoint(room)) - dew), `dew point, ${humidity}`).toBeLessThan(0.02);
    }
  });
});
