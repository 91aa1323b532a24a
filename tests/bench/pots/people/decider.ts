import type { GlazeRoom, TopUp } from '../physics/glazeRoom.ts';
import type { Hands } from './hands.ts';
import type { Score } from './score.ts';

/** Whoever decides, in one room, from its first day to its last. */
export interface Deciding {
  /** Whether the visit ends with a dip, instead of being sent away. */
  visit(hands: Hands): boolean | Promise<boolean>;
  /** A keeper filled up what had run low. */
  toppedUp(done: readonly TopUp[]): void | Promise<void>;
  close(): void | Promise<void>;
}

export interface Decider {
  name: string;
  /** Writes down what it reads: a mistake of bucket is one of the line, not of the cup. */
  writes: boolean;
  begin(room: GlazeRoom, score: Score): Deciding | Promise<Deciding>;
}
