import { instant, type Instant } from './studio/ids.ts';

/** The only way to know what time it is. */
export interface Clock {
  now(): Instant;
}

export const systemClock: Clock = { now: () => instant(Date.now()) };
