import type { Instant } from '../studio/ids.ts';
import { offsetAt } from '../studio/time/wallTime.ts';

/** An instant moved so that a clock kept at UTC shows the zone's wall time: axes know no zones. */
export const localMilliseconds = (at: Instant, zone: string): number => at + offsetAt(at, zone);
