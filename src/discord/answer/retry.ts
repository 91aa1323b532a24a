import { setTimeout as sleep } from 'node:timers/promises';
import { failureOf } from '../failure.ts';

/** `told`: delivered. `late`: the interaction has expired. `lost`: it is not known whether it was delivered. */
export type Delivery = 'told' | 'late' | 'lost';

/** Pauses that fit into the three seconds in which an interaction needs its first response. */
export const QUICKLY = [0, 150, 400, 800];
export const PATIENTLY = [0, 500, 2_000, 8_000];

/**
 * Retries a request whose connection breaks (the client retries server errors itself, but not these). Only for requests
 * that are safe to repeat: a second response to an interaction is rejected as "already acknowledged", which shows that
 * the first arrived.
 */
export const retry = async (send: () => Promise<unknown>, pauses: readonly number[]): Promise<Delivery> => {
  for (const pause of pauses) {
    if (pause > 0) await sleep(pause);
    try {
      await send();
      return 'told';
    } catch (error) {
      const failure = failureOf(error);
      if (failure === 'answered') return 'told';
      if (failure === 'too-late') return 'late';
      if (failure !== 'cut' && failure !== 'unreached') throw error;
    }
  }
  return 'lost';
};
