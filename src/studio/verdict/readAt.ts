import { hours, since, type Instant } from '../ids.ts';

/** A reading younger than this counts as of now and is shown without its age. */
export const ofNow = hours(1);

/** When something was read, where that was not about now. */
export const readAt = (at: Instant, now: Instant): { at?: Instant } => (since(at, now) > ofNow ? { at } : {});
