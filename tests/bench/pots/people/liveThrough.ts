import { GlazeRoom } from '../physics/glazeRoom.ts';
import { habits, type RoomSettings } from '../physics/settings.ts';
import type { Decider } from './decider.ts';
import { Hands } from './hands.ts';
import { Score } from './score.ts';
import { visitsOf } from './visits.ts';

/** One room under one decider for so many days. */
export const liveThrough = async (
  settings: RoomSettings,
  decider: Decider,
  { seed, days }: { seed: number; days: number },
): Promise<Score> => {
  const room = new GlazeRoom(settings, seed, days);
  const score = new Score();
  const deciding = await decider.begin(room, score);
  try {
    let day = -1;
    for (const visit of visitsOf(settings, seed, days)) {
      const today = Math.floor(visit.at / 1_440);
      if (today > day) {
        day = today;
        room.advance(Math.max(room.now, 1_440 * today + habits.keeperComes));
        await deciding.toppedUp(room.topUp());
      }
      room.advance(Math.max(room.now, visit.at));
      const hands = new Hands(room, visit, score, decider.writes);
      score.visits += 1;
      if (await deciding.visit(hands)) hands.dip();
      else score.sentAway += 1;
    }
  } finally {
    await deciding.close();
  }
  return score;
};
