import { days, type Instant } from '../../studio/ids.ts';

/** The day of UTC, counted from the first of 1970. */
export const utcDay = (now: Instant): number => Math.floor(now / days(1));
