import { setTimeout as pause } from 'node:timers/promises';
import { asStoreProblem, StoreProblem } from '../storeProblem.ts';

/** Each try waits for the driver's busy timeout first: about six seconds in all. */
const mostTries = 50;

/** Retries while somebody else holds the file, without blocking the event loop in between. */
export const whileBusy = async <T>(file: string, attempt: () => T | Promise<T>): Promise<T> => {
  for (let tries = 1; ; tries += 1) {
    try {
      return await attempt();
    } catch (error) {
      const problem = asStoreProblem(error, file);
      if (!(problem instanceof StoreProblem) || problem.kind !== 'busy' || tries >= mostTries) throw problem;
      await pause(10 + Math.random() * 20);
    }
  }
};
