import { setTimeout as sleep } from 'node:timers/promises';
import { failureOf } from '../failure.ts';

/** `told`: it is there to see. `late`: the platform takes it no longer. `lost`: nobody knows whether it came through. */
export type Delivery = 'told' | 'late' | 'lost';

/** Within the three seconds that an interaction waits for its first answer. */
export const QUICKLY = [0, 150, 400, 800];
export const PATIENTLY = [0, 500, 2_000, 8_000];

/**
 * Sends something again while its connection breaks: the client repeats server errors by itself, but not
 * these. Fit for what may be sent twice without harm; a second answer to an interaction is refused as
 * answered already, which is to say that the first is there.
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
