import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { calmLog } from '../../../src/monitor/calmLog.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const written = () => {
  const lines: { about: object; message: string }[] = [];
  const write = (about: object, message: string) => void lines.push({ about, message });
  return { lines, log: calmLog({ info: write, warn: write, error: write }) };
};

test('the same error is written at most once a minute, with how often it came meanwhile', () => {
  const { lines, log } = written();
  for (let times = 0; times < 121; times += 1) {
    log.error({ err: new Error('no route'), times }, 'could not connect');
    vi.advanceTimersByTime(1_000);
  }
  expect(lines.map(({ about }) => ('suppressed' in about ? about.suppressed : 0))).toEqual([0, 59, 60]);
  vi.advanceTimersByTime(10 * 60_000);
  // The last repeat is logged too, and nothing after it.
  expect(lines).toHaveLength(4);
  log.error({ err: new Error('no route') }, 'could not connect');
  expect(lines).toHaveLength(5);
});

test('another error, and what is no error, is written at once', () => {
  const { lines, log } = written();
  log.error({ err: new Error('no route') }, 'could not connect');
  log.error({ err: new Error('refused') }, 'could not connect');
  log.error({ err: new Error('no route') }, 'could not draw');
  for (let times = 0; times < 3; times += 1) log.info({}, 'connected');
  expect(lines).toHaveLength(6);
});
