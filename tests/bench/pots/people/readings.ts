import type { Chance } from '../physics/chance.ts';
import type { GlazeRoom } from '../physics/glazeRoom.ts';
import { weighingCup, type Kit } from '../physics/settings.ts';
import { swapped } from './digits.ts';

/** A reading as it was written down, and what it comes to. */
export interface Read {
  typed: string;
  value: number;
}

/** To a tenth, by somebody who may swap two digits. */
const written = ({ settings }: GlazeRoom, exact: number, luck: Chance): string => {
  const shown = exact.toFixed(1);
  return luck.happens(settings.faults.digitsSwapped) ? swapped(shown, luck) : shown;
};

/** A cupful on the scale; its value is the gravity. */
export const weighing = (room: GlazeRoom, bucket: number, kit: Kit, luck: Chance): Read => {
  const { tare, water } = weighingCup;
  const gravity = room.pail(bucket).gravityAtTop(room.now) + kit.gravityOff;
  const typed = written(room, tare + water * (gravity + luck.normal(room.settings.noise.gravity)), luck);
  return { typed, value: (Number(typed) - tare) / water };
};

/** Seconds through the flow cup, which may clog. */
export const timing = (room: GlazeRoom, bucket: number, kit: Kit, luck: Chance): Read => {
  const { faults, noise } = room.settings;
  const noisy = Math.exp(luck.normal(noise.seconds));
  const clog = luck.happens(faults.cupClogged) ? luck.within(faults.clogTimes) : 1;
  const typed = written(room, room.seconds(bucket) * kit.secondsTimes * noisy * clog, luck);
  return { typed, value: Number(typed) };
};
