import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { keepConnected } from '../../../src/start/keepConnected.ts';

beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] }));
afterEach(() => void vi.useRealTimers());

/** A platform whose connections do what the test says, one after another. */
const platform = (plan: ((lost: (why: unknown) => void) => Promise<void>)[]) => {
  const seen = { connects: 0, stops: 0, gaveUp: [] as unknown[], said: [] as string[] };
  const note = (_about: object, message: string) => void seen.said.push(message);
  const kept = keepConnected({
    connect: async (lost) => {
      const does = plan[Math.min(seen.connects, plan.length - 1)];
      seen.connects += 1;
      await does?.(lost);
      return { stop: () => Promise.resolve(void (seen.stops += 1)) };
    },
    isFinal: (why) => why === 'final',
    giveUp: (why) => void seen.gaveUp.push(why),
    sentence: (why) => `trouble: ${String(why)}`,
    log: { info: note, warn: note, error: note },
    pauses: { first: 1_000, most: 8_000 },
  });
  return { seen, kept };
};

const fails = () => Promise.reject(new Error('down'));

test('what cannot connect is tried again after pauses that double, and no longer than the longest', async () => {
  const { seen, kept } = platform([fails]);
  // At most 1, 2, 4, 8, 8 … seconds, at least half of each.
  await vi.advanceTimersByTimeAsync(15_000);
  expect(seen.connects).toBeGreaterThanOrEqual(5);
  expect(seen.connects).toBeLessThanOrEqual(7);
  const before = seen.connects;
  await vi.advanceTimersByTimeAsync(80_000);
  expect(seen.connects - before).toBeGreaterThanOrEqual(10);
  expect(seen.connects - before).toBeLessThanOrEqual(21);
  await kept.stop();
});

test('a connection that is lost is left before the next is made', async () => {
  const { seen, kept } = platform([
    (lost) => {
      setTimeout(lost, 100, 'gone');
      return Promise.resolve();
    },
    () => Promise.resolve(),
  ]);
  await vi.advanceTimersByTimeAsync(50);
  expect(kept.now()).toBeDefined();
  await vi.advanceTimersByTimeAsync(100);
  expect(kept.now()).toBeUndefined();
  expect(seen.stops).toBe(1);
  await vi.advanceTimersByTimeAsync(1_000);
  expect(kept.now()).toBeDefined();
  expect(seen.said).toEqual(['trouble: gone']);
  await kept.stop();
  expect(seen.stops).toBe(2);
});

test('trouble that another try does not mend is handed over, once', async () => {
  const { seen } = platform([() => Promise.reject<void>('final')]);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(seen).toMatchObject({ connects: 1, gaveUp: ['final'], said: [] });
});
