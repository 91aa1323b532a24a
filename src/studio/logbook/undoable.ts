import type { Entry } from '../entry.ts';
import { type Instant, type MemberId, type Role, minutes, since, studioStream } from '../ids.ts';
import type { LoggedEvent, Notes } from './ports.ts';

/** How long a member may undo their own entry. A keeper always may. */
export const undoWithin = minutes(15);

export type NotUndoable = 'undone' | 'an-undo' | 'the-setup' | 'not-yours' | 'too-late' | 'keepers-only';

/** Why this person may not undo an entry now; undefined when they may. */
export const notUndoable = (
  entry: Entry<LoggedEvent> & Notes,
  by: { member: MemberId; role: Role; now: Instant },
): NotUndoable | undefined => {
  if (entry.event.kind === 'undo') return 'an-undo';
  if (entry.event.kind === 'setup') return 'the-setup';
  if (entry.undoneBy !== undefined) return 'undone';
  if (by.role === 'keeper') return undefined;
  // Members decide how they are reached; everything else in the studio's stream is for keepers.
  if (entry.stream === studioStream && entry.event.kind !== 'reach') return 'keepers-only';
  if (entry.by !== by.member) return 'not-yours';
  return since(entry.loggedAt, by.now) > undoWithin ? 'too-late' : undefined;
};
