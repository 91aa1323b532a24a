import { chance } from './chance.ts';
import { benchRooms, busy, type RoomSettings } from './settings.ts';

/** ln of how many times a rate or a noise may differ from the busy room's, one standard deviation. */
const spread = { rate: 0.6, noise: 0.2, seasons: 0.3 };

/** More of it than of all others taken together is no fault of people any more. */
const most = 0.6;

const cold = 0.2;
const manyCups = 0.3;

/**
 * A room that nobody has seen: every rate and every noise is drawn about the busy room's, and it may be cold, or have cups that
 * disagree. The same for the same number.
 */
export const wildRoom = (no: number): RoomSettings => {
  const luckOf = (what: string) => chance('wild', no, what);
  const times = (what: string, sd: number): number => Math.exp(luckOf(what).normal(sd));
  const { strangers, faults, noise, flowDrift, evaporation, kits } = busy;
  const rate = (what: string, perDay: number) => times(what, spread.rate) * perDay;
  const fault = (what: string, chance: number) => Math.min(most, rate(what, chance));
  const noisy = (what: string, sd: number) => times(what, spread.noise) * sd;
  const dries = times('evaporation', spread.seasons);
  const threeCups = benchRooms.find(({ kits: { length } }) => length > 1)?.kits;
  return {
    ...busy,
    name: `wild ${no}`,
    visits: times('visits', spread.seasons) * busy.visits,
    strangers: {
      water: { ...strangers.water, perDay: rate('water', strangers.water.perDay) },
      powder: { ...strangers.powder, perDay: rate('powder', strangers.powder.perDay) },
      salt: { ...strangers.salt, perDay: rate('salt', strangers.salt.perDay) },
      lidOff: { ...strangers.lidOff, perDay: rate('lid-off', strangers.lidOff.perDay) },
    },
    evaporation: [dries * evaporation[0], dries * evaporation[1]],
    flowDrift: { ...flowDrift, sd: times('drift', spread.seasons) * flowDrift.sd },
    celsius: luckOf('cold').happens(cold) ? [8, 13] : busy.celsius,
    faults: {
      ...faults,
      stirUnlogged: fault('stir', faults.stirUnlogged),
      additionUnlogged: fault('addition', faults.additionUnlogged),
      digitsSwapped: fault('digits', faults.digitsSwapped),
      cupClogged: fault('clog', faults.cupClogged),
      wrongBucket: fault('astray', faults.wrongBucket),
      blindLook: fault('blind', faults.blindLook),
    },
    noise: {
      gravity: noisy('gravity noise', noise.gravity),
      seconds: noisy('seconds noise', noise.seconds),
      look: noisy('look noise', noise.look),
      eye: noise.eye,
      pour: noise.pour,
    },
    kits: luckOf('cups').happens(manyCups) ? (threeCups ?? kits) : kits,
  };
};
