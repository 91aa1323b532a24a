import { setTimeout as pause } from 'node:timers/promises';
import { asStoreProblem, StoreProblem } from './storeProblem.ts';

/** Each try waits for the driver's busy timeout first: some six seconds in all. */
const mostTries = 50;

/** Tries again while somebody else holds on to the file, so that nothing else stands still meanwhile. */
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
