import { firstOutside, valid, type Checked } from '../checked.ts';
import { bisection } from '../statistics/bisection.ts';
import { celsius, pascals, type Celsius, type Fraction, type Pascals } from '../units.ts';

/** Air as a thermometer and a hygrometer show it. */
export interface Air {
  temperature: Celsius;
  humidity: Fraction;
}

/** One standard atmosphere. */
const standardPressure: Pascals = pascals(101_325);
/** The temperatures that a studio's rooms and sheds reach, in frost and beside the kiln. */
const coldest = -40;
const hottest = 60;

const overIce = (kelvin: number) =>
  -5674.5359 / kelvin +
  6.3925247 +
  kelvin * (-9.677843e-3 + kelvin * (6.2215701e-7 + kelvin * (2.0747825e-9 - kelvin * 9.484024e-13))) +
  4.1635019 * Math.log(kelvin);

const overWater = (kelvin: number) =>
  -5800.2206 / kelvin +
  1.3914993 +
  kelvin * (-4.8640239e-2 + kelvin * (4.1764768e-5 - kelvin * 1.4452093e-8)) +
  6.5459673 * Math.log(kelvin);

const saturation = (t: number) => Math.exp(t < 0.01 ? overIce(t + 273.15) : overWater(t + 273.15));

const outsideAir = ({ temperature, humidity }: Air, lowest = 0) =>
  firstOutside(
    ['air temperature', temperature, coldest, hottest],
    ['relative humidity', humidity, lowest, 1],
  );

/**
 * The pressure of water vapour over wet clay or a wet coat, at its temperature.
 * @formula ln p = C8/T + C9 + C10·T + C11·T² + C12·T³ + C13·ln T; over ice below 0.01 °C, with C1 to C7
 * @param t temperature, °C
 * @returns saturation vapour pressure, Pa, never rounded
 * @range −40 to 60 °C; outside is refused
 * @source ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 5 and 6, after Hyland & Wexler 1983
 * @example saturationPressure(celsius(20)) //=> { ok: true, value: 2338.8 }
 */
export const saturationPressure = (t: Celsius): Checked<Pascals> =>
  firstOutside(['temperature', t, coldest, hottest]) ?? valid(pascals(saturation(t)));

/**
 * How far a room's air is from saturated: the difference that dries a coat.
 * @formula VPD = (1 − RH)·p(t)
 * @param temperature of the air, °C · @param humidity relative, 0 to 1
 * @returns vapour pressure deficit, Pa, never rounded
 * @range −40 to 60 °C, humidity 0 to 1; outside is refused
 * @source definition, on ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 5 and 6
 * @example vapourPressureDeficit({ temperature: celsius(20), humidity: fraction(0.5) }) //=> { ok: true, value: 1169.4 }
 */
export const vapourPressureDeficit = ({ temperature, humidity }: Air): Checked<Pascals> =>
  outsideAir({ temperature, humidity }) ?? valid(pascals((1 - humidity) * saturation(temperature)));

/** The temperature at which a rising function crosses zero, to the precision of a double. */
const crossing = (rising: (t: number) => number, low: number, high: number) =>
  bisection((t) => rising(t) < 0, { low, high, rounds: 60 });

/**
 * The temperature at which a room's moisture condenses.
 * @formula p(td) = RH·p(t), solved for td
 * @param temperature of the air, °C · @param humidity relative, 0.01 to 1
 * @returns dew point, or frost point below 0.01 °C, °C, never rounded
 * @range −40 to 60 °C, humidity 0.01 to 1; outside is refused
 * @source ASHRAE Handbook Fundamentals 2017, ch. 1, dew point from eq. 5 and 6
 * @example dewPoint({ temperature: celsius(30), humidity: fraction(0.3) }) //=> { ok: true, value: 10.55 }
 */
export const dewPoint = ({ temperature, humidity }: Air): Checked<Celsius> =>
  outsideAir({ temperature, humidity }, 0.01) ??
  valid(
    celsius(crossing((t) => saturation(t) - humidity * saturation(temperature), -90, temperature + 1e-9)),
  );

const humidityRatio = (vapour: number) => (0.621945 * vapour) / (standardPressure - vapour);

/** Humidity ratio of air at t whose wet bulb is at w. ASHRAE Fundamentals 2017, ch. 1, eq. 33 and 35. */
const ratioAtWetBulb = (t: number, w: number) => {
  const saturated = humidityRatio(saturation(w));
  return w >= 0
    ? ((2501 - 2.326 * w) * saturated - 1.006 * (t - w)) / (2501 + 1.86 * t - 4.186 * w)
    : ((2830 - 0.24 * w) * saturated - 1.006 * (t - w)) / (2830 + 1.86 * t - 2.1 * w);
};

/**
 * How cold a wet pot gets in moving air: the temperature that a drying coat really has.
 * @formula W = ((2501 − 2.326w)Ws(w) − 1.006(t − w))/(2501 + 1.86t − 4.186w), solved for w; the ice form below 0 °C
 * @param temperature of the air, °C · @param humidity relative, 0 to 1
 * @returns wet-bulb temperature at 101 325 Pa, °C, never rounded
 * @range −40 to 60 °C, humidity 0 to 1; outside is refused
 * @source ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 33 and 35
 * @example wetBulb({ temperature: celsius(20), humidity: fraction(0.5) }) //=> { ok: true, value: 13.8 }
 */
export const wetBulb = ({ temperature, humidity }: Air): Checked<Celsius> => {
  const held = humidityRatio(humidity * saturation(temperature));
  return (
    outsideAir({ temperature, humidity }) ??
    valid(celsius(crossing((w) => ratioAtWetBulb(temperature, w) - held, -60, temperature + 1e-9)))
  );
};
