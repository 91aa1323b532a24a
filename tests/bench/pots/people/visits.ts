import { chance, moments } from '../physics/chance.ts';
import type { RoomSettings } from '../physics/settings.ts';

/** Somebody comes to a bucket to dip. */
export interface Visit {
  no: number;
  /** Minutes since the first midnight. */
  at: number;
  bucket: number;
  person: number;
}

/** Who shares a room (common practice). */
export const people = 24;
const opens = 10 * 60;
const openFor = 12 * 60;
/** Monday first; two class evenings and Saturday are busy, Monday is not (common practice). */
const busyness = [0.4, 1.3, 0.8, 1.3, 0.8, 1.6, 0.8] as const;

/** Every visit of so many days, oldest first, the same whoever decides. */
export const visitsOf = (room: RoomSettings, seed: number, days: number): Visit[] => {
  const luck = chance(seed, 'visits');
  return Array.from({ length: days }, (_, day) => {
    const perDay = room.visits * room.buckets * (busyness[day % 7] ?? 1);
    // Two draws, the later taken: evenings are fuller.
    return moments(luck, perDay, 1).map(() => ({
      at: 1_440 * day + opens + openFor * Math.max(luck.next(), luck.next()),
      bucket: Math.floor(luck.next() * room.buckets),
      person: Math.floor(luck.next() * people),
    }));
  })
    .flat()
    .sort((a, b) => a.at - b.at)
    .map((visit, no) => ({ no, ...visit }));
};
