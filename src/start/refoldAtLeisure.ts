import { setTimeout as sleep } from 'node:timers/promises';
import type { Log } from '../contract/log.ts';
import type { Store } from '../store/openStore.ts';
import { mainWords } from '../words/platform/mainWords.ts';

/** Brings the buckets of an earlier release up to date while the program runs; returns a function that stops it. */
export const refoldAtLeisure = (
  store: Pick<Store, 'refoldOutdated'>,
  log: Log,
  /** Whoever waited for the start comes first. */
  after = 10_000,
): (() => Promise<void>) => {
  const stopping = new AbortController();
  const { signal } = stopping;
  const going = (async () => {
    await sleep(after, undefined, { signal, ref: false }).catch(() => undefined);
    try {
      const buckets = await store.refoldOutdated(signal);
      if (buckets > 0) log.info({ buckets }, mainWords.refolded);
    } catch (err) {
      // Each is still folded when somebody asks for it.
      log.error({ err }, mainWords.notRefolded);
    }
  })();
  return async () => {
    stopping.abort();
    await going;
  };
};
