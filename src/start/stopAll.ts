import { setTimeout as sleep } from 'node:timers/promises';
import type { Log } from '../contract/log.ts';
import { mainWords } from '../words/platform/mainWords.ts';

/** The parts that are stopped, and how long each may take: together less than five seconds. */
export interface Stop {
  stop(): Promise<void>;
  within: number;
}

/**
 * Stops one part after another. A part that does not end in its time is left behind, and one that fails does not keep
 * the others from ending.
 */
export const stopAll = async (parts: readonly Stop[], log: Log): Promise<void> => {
  for (const { stop, within } of parts) {
    const stopped = stop().then(
      () => 'stopped' as const,
      (err: unknown) => log.error({ err }, mainWords.notStopped),
    );
    const late = sleep(within, 'late' as const, { ref: false });
    if ((await Promise.race([stopped, late])) === 'late') log.warn({}, mainWords.leftBehind);
  }
};
