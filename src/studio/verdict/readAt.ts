import { hours, since, type Instant } from '../ids.ts';

/** What is told without its age is of about now. */
export const ofNow = hours(1);

/** When something was read, where that was not about now. */
export const readAt = (at: Instant, now: Instant): { at?: Instant } => (since(at, now) > ofNow ? { at } : {});
