import type { Log } from '../contract/log.ts';

const shortest = 1_000;
/** Long enough to stay far below the thousand connections a day that Discord allows. */
const longest = 5 * 60_000;

interface Connectable<T> {
  /** Connects. It calls `lost` later when the connection will not recover. */
  connect(lost: (why: unknown) => void): Promise<T>;
  /** Whether a retry cannot help. */
  isFinal(why: unknown): boolean;
  giveUp(why: unknown): void;
  sentence(why: unknown): string;
  log: Log;
  /** The first and the longest pause; pauses double in between. */
  pauses?: { first: number; most: number };
}

export interface KeptConnected<T> {
  now(): T | undefined;
  stop(): Promise<void>;
}

/** Half of the pause is random, so that many clients do not reconnect at the same moment. */
const pauseAfter = (tries: number, { first, most }: { first: number; most: number }): number =>
  Math.min(most, first * 2 ** Math.min(tries, 20)) * (0.5 + Math.random() / 2);

/** Keeps one platform connected: a failure is logged and retried after a growing pause, without affecting the others. */
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

  /** One connection from start to end; returns why it ended. */
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
      // After a connection that lasted long the pauses start short again; after a brief one they keep growing.
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
      // During a connection attempt nothing needs to finish.
      if (current !== undefined) await going;
    },
  };
};
