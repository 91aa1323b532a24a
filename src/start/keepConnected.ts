import type { Log } from '../contract/log.ts';

const shortest = 1_000;
/** Long enough that a day of trying stays far below the thousand connections that Discord allows a day. */
const longest = 5 * 60_000;

interface Connectable<T> {
  /** Connects; what is called `lost` later says that this connection will not come back. */
  connect(lost: (why: unknown) => void): Promise<T>;
  /** Trouble that another try does not mend. */
  isFinal(why: unknown): boolean;
  giveUp(why: unknown): void;
  /** The trouble in a sentence. */
  sentence(why: unknown): string;
  log: Log;
  /** The first pause and the longest; they double in between. */
  pauses?: { first: number; most: number };
}

export interface KeptConnected<T> {
  /** The connection there is now. */
  now(): T | undefined;
  stop(): Promise<void>;
}

/** Half of the pause is chance, so that many who lost the same connection do not come back together. */
const pauseAfter = (tries: number, { first, most }: { first: number; most: number }): number =>
  Math.min(most, first * 2 ** Math.min(tries, 20)) * (0.5 + Math.random() / 2);

/** Keeps one platform connected, apart from every other: what fails is said, and tried again after a pause that grows. */
export const keepConnected = <T extends { stop(): Promise<void> }>({
  connect,
  isFinal,
  giveUp,
  sentence,
  log,
  pauses = { first: shortest, most: longest },
}: Connectable<T>): KeptConnected<T> => {
  const stopping = new AbortController();
  const { signal } = stopping;
  const stopped = new Promise<void>((resolve) =>
    signal.addEventListener('abort', () => resolve(), { once: true }),
  );
  let current: T | undefined;

  /** One connection from its beginning to its end; answers why it ended. */
  const once = async (): Promise<unknown> => {
    try {
      let lose: (why: unknown) => void = () => undefined;
      const lost = new Promise<unknown>((resolve) => (lose = resolve));
      const connected = await connect(lose);
      if (!signal.aborted) current = connected;
      const why = await Promise.race([lost, stopped]);
      current = undefined;
      await connected.stop();
      return why;
    } catch (error) {
      current = undefined;
      return error;
    }
  };

  const going = (async () => {
    for (let tries = 0; !signal.aborted; tries += 1) {
      const began = performance.now();
      const why = await once();
      if (signal.aborted) return;
      if (isFinal(why)) return giveUp(why);
      // One that held for long begins anew with short pauses; one that comes and goes does not.
      if (performance.now() - began > pauses.most) tries = 0;
      const pause = pauseAfter(tries, pauses);
      log.error({ err: why, againInSeconds: Math.ceil(pause / 1_000) }, sentence(why));
      await Promise.race([new Promise((resolve) => setTimeout(resolve, pause)), stopped]);
    }
  })();
  return {
    now: () => current,
    stop: async () => {
      stopping.abort();
      // One that is still trying has nothing to finish.
      if (current !== undefined) await going;
    },
  };
};
