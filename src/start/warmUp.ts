import { setImmediate as nextLoop } from 'node:timers/promises';
import type { App } from './app.ts';
import type { Log } from '../contract/log.ts';
import { mainWords } from '../words/platform/mainWords.ts';

/** Any question: the first one compiles what it is searched by. */
const question = 'why does a glaze crawl?';

/** Prepares what answers questions, a little at a time. Everybody else would wait with whoever asks first. */
export const warmUp = async ({ handbook }: Pick<App, 'handbook'>, log: Log): Promise<void> => {
  try {
    while (handbook.prepare()) await nextLoop();
    handbook.emergencies(question);
  } catch (err) {
    // Whoever needs it tries again, and is told what is wrong.
    log.error({ err }, mainWords.notWarm);
  }
};
