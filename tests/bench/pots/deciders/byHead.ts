import type { Decider } from '../people/decider.ts';
import type { Hands } from '../people/hands.ts';

/** Somebody who asks nobody, and always dips in the end. */
export const byHead = (name: string, begin: () => (hands: Hands) => void): Decider => ({
  name,
  writes: false,
  begin: () => {
    const act = begin();
    return {
      visit: (hands) => {
        act(hands);
        return true;
      },
      toppedUp: () => undefined,
      close: () => undefined,
    };
  },
});
