import { definedOnly } from '../definedOnly.ts';
import type { Instant } from '../studio/ids.ts';
import type { Logged } from '../studio/logbook/ports.ts';
import type { Logging } from './contract.ts';

/** Of what holds from now on, such as a setting. */
export const stampNow = ({ now, member }: Pick<Logging, 'now' | 'member'>, note?: string): Logged => ({
  at: now,
  loggedAt: now,
  by: member,
  ...definedOnly({ note }),
});

/** The stamp of an entry: when it was done, when it was logged, and by whom. */
export const entryStamp = (
  context: Pick<Logging, 'now' | 'happenedAt' | 'member'>,
  { when = context.happenedAt, note }: { when?: Instant | undefined; note?: string },
): Logged => ({ ...stampNow(context, note), at: when });
