import { setTimeout as sleep } from 'node:timers/promises';
import type { Clock } from '../clock.ts';
import type { Log } from '../contract/log.ts';
import { utcDay } from '../store/lines/utcDay.ts';
import type { Store } from '../store/openStore.ts';
import { hours, minutes } from '../studio/ids.ts';
import { mainWords } from '../words/platform/mainWords.ts';

const wait = (ms: number, signal: AbortSignal) =>
  sleep(ms, undefined, { signal, ref: false }).catch(() => undefined);

/** Runs the work after a while; returns a function that stops it. Whoever waited for the start comes first. */
const afterStart = (after: number, work: (signal: AbortSignal) => Promise<void>): (() => Promise<void>) => {
  const stopping = new AbortController();
  const { signal } = stopping;
  const going = wait(after, signal).then(() => work(signal));
  return async () => {
    stopping.abort();
    await going;
  };
};

/** Brings the buckets of an earlier release up to date while the program runs; returns a function that stops it. */
export const refoldAtLeisure = (store: Pick<Store, 'refoldOutdated'>, log: Log, after = 10_000) =>
  afterStart(after, async (signal) => {
    try {
      const buckets = await store.refoldOutdated(signal);
      if (buckets > 0) log.info({ buckets }, mainWords.refolded);
    } catch (err) {
      // Each is still folded when somebody asks for it.
      log.error({ err }, mainWords.notRefolded);
    }
  });

/**
 * Once a day (of UTC), lets the buckets of each studio learn what its other buckets have shown; returns a function that
 * stops it. A day on which it failed is tried again.
 */
export const learnAtNight = (
  store: Pick<Store, 'learnAcross'>,
  { clock, log }: { clock: Clock; log: Log },
  { after = minutes(10), every = hours(1) }: { after?: number; every?: number } = {},
) =>
  afterStart(after, async (signal) => {
    let learned: number | undefined;
    while (!signal.aborted) {
      const today = utcDay(clock.now());
      if (today !== learned)
        await store.learnAcross(signal).then(
          () => (learned = today),
          (err: unknown) => log.error({ err }, mainWords.notLearned),
        );
      await wait(every, signal);
    }
  });
