import { days, since, type Instant, type MemberId, type Role } from '../ids.ts';
import type { PieceState } from '../piece/foldPieces.ts';
import type { Reminder } from '../remind/reminder.ts';
import { coatReady, isReadyAt } from '../resist/coatReady.ts';
import type { ResistCoat } from '../resist/resistCoat.ts';
import type { Studio } from '../settings/studio.ts';
import type { RoundItem } from './roundItem.ts';

export interface Walker {
  member: MemberId;
  role: Role;
  now: Instant;
}

/** Pots of others wait for a keeper only after this long: common practice. */
const patience = days(1);
/** Older plans were fired, and nobody ticked them off: common practice. */
const oldest = days(30);

/** One's own coats; for a keeper also those of others that have long been dry. */
export const coatItems = (
  coats: readonly ResistCoat[],
  studio: Studio,
  { member, role, now }: Walker,
): RoundItem[] =>
  coats
    .toSorted((a, b) => a.onAt - b.onAt)
    .flatMap((coat): RoundItem[] => {
      const ready = coatReady(coat, studio);
      const mine = coat.by === member && !coat.disowned;
      const waits = isReadyAt(ready, now) && ready !== 'never' && since(ready.readyAt, now) >= patience;
      return mine || (role === 'keeper' && waits) ? [{ kind: 'coat', coat, ready }] : [];
    });

/** One's own pieces that are not done; for a keeper also those of others that are late. */
export const pieceItems = (pieces: readonly PieceState[], { member, role, now }: Walker): RoundItem[] =>
  pieces.flatMap((piece): RoundItem[] => {
    const { by, at, steps, done, said } = piece;
    if (done.length >= steps.length || since(at, now) > oldest) return [];
    const late = since(said.plannedFor ?? at, now) >= patience;
    return by === member || (role === 'keeper' && late) ? [{ kind: 'piece', piece }] : [];
  });

/** What a reminder is about is on the round by itself, except where only the reminder knows of it. */
export const reminderItems = (reminders: readonly Reminder[], now: Instant): RoundItem[] =>
  reminders
    .filter(
      ({ stands, about, goodUntil }) =>
        stands && now < goodUntil && (about.kind === 'unreachable' || about.kind === 'asked'),
    )
    .map((reminder) => ({ kind: 'reminder', reminder }));
