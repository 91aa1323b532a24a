import type { Instant } from '../studio/ids.ts';
import { offsetAt } from '../studio/time/wallTime.ts';

/** Shifts an instant so that UTC shows the zone's wall time: the chart library's axes know no zones. */
export const localMilliseconds = (at: Instant, zone: string): number => at + offsetAt(at, zone);
