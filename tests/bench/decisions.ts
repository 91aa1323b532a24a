import { decide } from '../../src/studio/verdict/decide.ts';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';
import type { Instant } from '../../src/studio/ids.ts';

/** Decisions for each second of CPU time, over the given buckets; loading is not counted. */
export const decisionsPerSecond = (
  buckets: readonly BucketState[],
  now: Instant,
  seconds: number,
): number => {
  const run = (until: number): number => {
    let done = 0;
    while (performance.now() < until) {
      for (let i = 0; i < 100; i += 1) {
        const bucket = buckets[(done + i) % buckets.length];
        if (bucket) decide(bucket, { now, role: 'member' });
      }
      done += 100;
    }
    return done;
  };
  run(performance.now() + 500);
  const before = process.cpuUsage();
  const done = run(performance.now() + seconds * 1_000);
  const { user, system } = process.cpuUsage(before);
  return (done * 1_000_000) / (user + system);
};
