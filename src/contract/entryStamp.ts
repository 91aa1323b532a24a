import { definedOnly } from '../definedOnly.ts';
import type { Instant } from '../studio/ids.ts';
import type { Logged } from '../studio/logbook/ports.ts';
import type { Logging } from './contract.ts';

/** The stamp of an entry: when it was done, when it was logged, and by whom. */
export const entryStamp = (
  { now, happenedAt, member }: Pick<Logging, 'now' | 'happenedAt' | 'member'>,
  { when, note }: { when?: Instant; note?: string },
): Logged => ({
  at: when ?? happenedAt,
  loggedAt: now,
  by: member,
  ...definedOnly({ note }),
});

/** Of what holds from now on, such as a setting. */
export const stampNow = ({ now, member }: Pick<Logging, 'now' | 'member'>, note?: string): Logged => ({
  at: now,
  loggedAt: now,
  by: member,
  ...definedOnly({ note }),
});
