import { chance, moments } from '../physics/chance.ts';
import { habits, type RoomSettings } from '../physics/settings.ts';

/** Somebody comes to a bucket to dip. */
export interface Visit {
  no: number;
  /** Minutes since the first midnight. */
  at: number;
  bucket: number;
  person: number;
}

/** Every visit of so many days, oldest first, the same whoever decides. */
export const visitsOf = (room: RoomSettings, seed: number, days: number): Visit[] => {
  const luck = chance(seed, 'visits');
  return Array.from({ length: days }, (_, day) => {
    const perDay = room.visits * room.buckets * (habits.busyness[day % 7] ?? 1);
    // Two draws, the later taken: evenings are fuller.
    return moments(luck, perDay, 1).map(() => ({
      at: 1_440 * day + habits.opens + habits.openFor * Math.max(luck.next(), luck.next()),
      bucket: Math.floor(luck.next() * room.buckets),
      person: Math.floor(luck.next() * habits.people),
    }));
  })
    .flat()
    .sort((a, b) => a.at - b.at)
    .map((visit, no) => ({ no, ...visit }));
};
