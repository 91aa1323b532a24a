import { valid, type Checked } from '../../glaze/checked.ts';
import { vapourPressureDeficit, type Air } from '../../glaze/air/psychrometrics.ts';
import { celsius, fraction, type Celsius } from '../../glaze/units.ts';

/** The room for which a house's hours of drying are meant. */
const usualRoom: Air = { temperature: celsius(20), humidity: fraction(0.5) };
/** Beyond this the estimate says more about the formula than about the coat: common practice. */
export const longest = 3;
/** Common practice: the wax of an emulsion no longer flows together into a film. */
const coldestFilm = celsius(10);

/** The same by Dalton's law alone, without an upper bound: endless in air that takes up no water. */
export const timesByAir = (room: Partial<Air>): Checked<number> => {
  const usual = vapourPressureDeficit(usualRoom);
  if (!usual.ok) return usual;
  const here = vapourPressureDeficit({ ...usualRoom, ...room });
  return here.ok ? valid(Math.max(1, usual.value / here.value)) : here;
};

/**
 * How many times longer a resist coat needs in this room than in a usual one; what is not said is as usual.
 * @formula factor = min(3, max(1, VPD(20 °C, 50 %)/VPD(room)))
 * @param temperature of the room, °C · @param humidity relative, 0 to 1
 * @returns factor, 1 to 3, never rounded; a warmer or drier room never shortens the wait
 * @range −40 to 60 °C, humidity 0 to 1; outside is refused
 * @source Dalton's law for the rate on ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 5 and 6; the bounds are *common practice*
 * @example dryingFactor({ temperature: celsius(15), humidity: fraction(0.7) }) //=> { ok: true, value: 2.286 }
 */
export const dryingFactor = (room: Partial<Air>): Checked<number> => {
  const times = timesByAir(room);
  return times.ok ? valid(Math.min(longest, times.value)) : times;
};

/** Whether it is so cold that an emulsion may never form a film, however long it is left. */
export const isTooColdForFilm = (temperature: Celsius): boolean => temperature < coldestFilm;
