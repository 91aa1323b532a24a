import { setTimeout as sleep } from 'node:timers/promises';

/** It rests four times as long as it works. */
const rests = 4;

/** Does some work, and then lets others come first for a while; until the signal, when it rests no longer. */
export const atLeisure = async <T>(signal: AbortSignal, work: () => Promise<T>): Promise<T> => {
  const began = performance.now();
  const done = await work();
  const rest = rests * (performance.now() - began);
  await sleep(rest, undefined, { signal }).catch(() => undefined);
  return done;
};
