import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { MemberId, StudioId } from '../../studio/ids.ts';
import { refoldAndSave } from '../states/refoldAndSave.ts';
import { loadSnapshot } from '../states/loadSnapshot.ts';
import { studioAnew } from '../states/foldedAnew.ts';
import { spendLinkCode } from './linkCodes.ts';
import { noteChange } from './noteChange.ts';
import type { Writing } from '../engine/turns.ts';

interface Joining {
  studio: StudioId;
  from: MemberId;
  into: MemberId;
}

/** Moves everything that refers to one member to the other. */
const moveRows = async ({ db }: Writing, { studio, from, into }: Joining): Promise<void> => {
  const kept = db
    .selectFrom('reminders as other')
    .where('other.studio_id', '=', studio)
    .where('other.member_id', '=', into)
    .select('other.key');
  await db
    .deleteFrom('reminders')
    .where(({ and }) => and({ studio_id: studio, member_id: from }))
    .where('key', 'in', kept)
    .execute();
  for (const table of [
    'member_identities',
    'reminders',
    'room_claims',
    'room_sessions',
    'room_posts',
    'studio_notes',
    'open_questions',
  ] as const)
    await db
      .updateTable(table)
      .set({ member_id: into })
      .where(({ and }) => and({ studio_id: studio, member_id: from }))
      .execute();
  // The keys of room lines contain the member's id; they move too, so that a repeated line is still recognised.
  const [theirs, next] = [`room:${from}:`, `room:${into}:`];
  for (const table of ['replies', 'room_posts'] as const)
    await db
      .updateTable(table)
      .set(({ fn, val }) => ({ key: fn<string>('replace', ['key', val(theirs), val(next)]) }))
      .where('studio_id', '=', studio)
      .where('key', '>=', theirs)
      .where('key', '<', `${theirs}\u{10ffff}`)
      .execute();
  for (const member of [from, into]) await spendLinkCode(db, studio, member);
  await db.deleteFrom('members').where('studio_id', '=', studio).where('id', '=', from).execute();
};

const mentionsMember = (member: MemberId, { hold, unlogged }: BucketState): boolean =>
  hold?.by === member || unlogged?.some(({ found }) => found.by === member) === true;

/** Folds again the states that contain the old id. */
const refoldMentioning = async ({ db, snapshots }: Writing, { studio, from }: Joining): Promise<void> => {
  const snapshot = snapshots.get(studio) ?? (await loadSnapshot(db, studio));
  const streams = new Map(snapshot.streams);
  for (const [stream, stood] of snapshot.streams) {
    // One that is stored as of an earlier entry may mention them, although it does so no more.
    const isStored = stood.stored === undefined || stood.stored === stood.seq;
    if (!stood.state || (isStored && !mentionsMember(from, stood.state))) continue;
    streams.set(stream, await refoldAndSave(db, studio, stream, stood.seq));
  }
  const { coats: _, ...rest } = snapshot;
  snapshots.set(studio, {
    ...rest,
    streams,
    studio: await studioAnew(db, studio),
  });
};

/**
 * Links two members under the second's id and name. Entries are not rewritten: their authors are read through the
 * join, so every state still follows from the entries.
 */
export const joinMembers = async (writing: Writing, joining: Joining): Promise<void> => {
  const { db } = writing;
  const { studio, from, into } = joining;
  const called = await db
    .selectFrom('members')
    .where(({ and }) => and({ studio_id: studio, id: from }))
    .select('name')
    .executeTakeFirst();
  await moveRows(writing, joining);
  await db
    .updateTable('member_joins')
    .set({ into_id: into })
    .where(({ and }) => and({ studio_id: studio, into_id: from }))
    .execute();
  await db
    .insertInto('member_joins')
    .values({ studio_id: studio, member_id: from, into_id: into, name: called?.name ?? '' })
    .execute();
  await refoldMentioning(writing, joining);
  await noteChange(db, studio, 'posts_changed');
  await noteChange(db, studio, 'sessions_changed');
};
