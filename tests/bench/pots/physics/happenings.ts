import { chance, moments } from './chance.ts';
import type { Pail } from './pail.ts';
import type { RoomSettings } from './settings.ts';

/** Something that nobody writes down; minutes since the first midnight. */
export interface Happening {
  at: number;
  befall(pail: Pail): void;
}

/** All that befalls one pail in so many days, whatever anybody decides, oldest first. */
export const happenings = (room: RoomSettings, seed: number, bucket: number, days: number): Happening[] => {
  const luckOf = (what: string) => chance(seed, bucket, what);
  const by = (
    what: 'water' | 'powder' | 'salt' | 'lid-off',
    perDay: number,
    span: readonly [number, number],
    befall: (pail: Pail, size: number) => void,
  ): Happening[] => {
    const [when, size] = [luckOf(`${what} when`), luckOf(`${what} size`)];
    return moments(when, perDay, days).map((day) => {
      const much = size.within(span);
      return { at: 1_440 * day, befall: (pail) => befall(pail, much) };
    });
  };
  const nature = luckOf('nature');
  const { strangers, flowDrift } = room;
  const dries = nature.within(room.evaporation);
  const lean = nature.within(flowDrift.lean);
  const nights = Array.from({ length: days }, (_, day): Happening => {
    const drift = lean + nature.normal(flowDrift.sd);
    return {
      at: 1_440 * (day + 1),
      befall: (pail) => {
        pail.pourWater(-dries);
        pail.flow += drift;
      },
    };
  });
  return [
    ...nights,
    ...by('water', strangers.water.perDay, strangers.water.ml, (pail, ml) => pail.pourWater(ml)),
    ...by('powder', strangers.powder.perDay, strangers.powder.grams, (pail, grams) => pail.addPowder(grams)),
    ...by('salt', strangers.salt.perDay, strangers.salt.rungs, (pail, rungs) => pail.thicken(rungs)),
    ...by('lid-off', strangers.lidOff.perDay, strangers.lidOff.ml, (pail, ml) => pail.pourWater(-ml)),
  ].sort((a, b) => a.at - b.at);
};
