import type { Instant } from '../studio/ids.ts';
import type { Logged } from '../studio/logbook/ports.ts';
import type { Logging } from './contract.ts';

/** Of something that was done: when, as said or as sent, when it was logged, and by whom. */
export const entryStamp = (
  { now, happenedAt, member }: Pick<Logging, 'now' | 'happenedAt' | 'member'>,
  { when, note }: { when?: Instant; note?: string },
): Logged => ({
  at: when ?? happenedAt,
  loggedAt: now,
  by: member,
  ...(note !== undefined && { note }),
});
