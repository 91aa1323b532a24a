import { definedOnly } from '../../definedOnly.ts';
import { valid, type Checked } from '../../glaze/checked.ts';
import { vapourPressureDeficit, type Air } from '../../glaze/air/psychrometrics.ts';
import { celsius, fraction, type Celsius } from '../../glaze/units.ts';

/** What is known of a room's air. */
type Room = { [Of in keyof Air]?: Air[Of] | undefined };

/** The room that the house rule's hours of drying are meant for. */
const usualRoom: Air = { temperature: celsius(20), humidity: fraction(0.5) };
/** Beyond this factor the estimate is unreliable: common practice. */
export const longestDryingFactor = 3;
/** Below this temperature the wax of an emulsion does not form a film: common practice. */
const coldestFilm = celsius(10);

/** The same by Dalton's law alone, without an upper limit: infinite in saturated air. */
export const timesByAir = (room: Room): Checked<number> => {
  const usual = vapourPressureDeficit(usualRoom);
  if (!usual.ok) return usual;
  const here = vapourPressureDeficit({ ...usualRoom, ...definedOnly(room) });
  return here.ok ? valid(Math.max(1, usual.value / here.value)) : here;
};

/**
 * How many times longer a resist coat takes to dry in this room than in a usual one; what is not said is taken as
 * usual.
 * @formula factor = min(3, max(1, VPD(20 °C, 50 %)/VPD(room)))
 * @param temperature of the room, °C · @param humidity relative, 0 to 1
 * @returns factor, 1 to 3, never rounded; a warmer or drier room never shortens the wait
 * @range −40 to 60 °C, humidity 0 to 1; outside is refused
 * @source Dalton's law for the rate on ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 5 and 6; the bounds are *common practice*
 * @example dryingFactor({ temperature: celsius(15), humidity: fraction(0.7) }) //=> { ok: true, value: 2.286 }
 */
export const dryingFactor = (room: Room): Checked<number> => {
  const times = timesByAir(room);
  return times.ok ? valid(Math.min(longestDryingFactor, times.value)) : times;
};

/** Whether it is too cold for an emulsion ever to form a film. */
export const isTooColdForFilm = (temperature: Celsius): boolean => temperature < coldestFilm;
