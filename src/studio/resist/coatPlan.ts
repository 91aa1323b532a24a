import type { ResistCoat } from './resistCoat.ts';
import { instant, type Instant } from '../ids.ts';
import { sessionsAfter } from '../time/session.ts';
import type { Studio } from '../settings/studio.ts';

/** When the member probably wants to glaze over a coat: as they said, or at the next session. */
export const coatPlan = (
  { plannedFor, onAt, loggedAt }: ResistCoat,
  { sessions, hours, zone }: Pick<Studio, 'sessions' | 'hours' | 'zone'>,
): { at: Instant; session?: string } | undefined => {
  if (plannedFor !== undefined) return { at: plannedFor };
  const [next] = sessionsAfter(instant(Math.max(onAt, loggedAt)), sessions, hours, zone);
  return next && { at: next.from, session: next.name };
};
