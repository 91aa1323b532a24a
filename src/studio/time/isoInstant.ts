import { dateAt } from './wallTime.ts';
import type { Instant } from '../ids.ts';

/** An instant as ISO 8601 in UTC, for scripts. */
export const isoInstant = (at: Instant): string => dateAt(at).toISOString();
