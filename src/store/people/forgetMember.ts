import type { Transaction } from 'kysely';
import type { MemberId, StudioId } from '../../studio/ids.ts';
import { queueErasure, type Erasure } from './erasureRow.ts';
import { noteChange } from './noteChange.ts';
import type { Tables } from '../migrations/tables.ts';

/**
 * Deletes at once what identifies a member: name, identities, room logins and reminders. Their entries keep an id
 * that leads to nobody.
 */
export const forgetMember = async (
  db: Transaction<Tables>,
  studio: StudioId,
  member: MemberId,
): Promise<Pick<Erasure, 'members' | 'names'>> => {
  const joins = await db
    .selectFrom('member_joins')
    .where(({ and }) => and({ studio_id: studio, into_id: member }))
    .select(['member_id', 'name'])
    .execute();
  const members = [member, ...joins.map((row) => row.member_id)];
  const calledIn = (table: 'room_claims' | 'room_sessions' | 'member_identities') =>
    db.selectFrom(table).where(({ and }) => and({ studio_id: studio, member_id: member }));
  const known = [
    joins,
    await db
      .selectFrom('members')
      .where(({ and }) => and({ studio_id: studio, id: member }))
      .select('name')
      .execute(),
    // At the terminal, a member's identity is their name.
    await calledIn('member_identities').select('external_id as name').execute(),
    await calledIn('room_claims').select('name').execute(),
    await calledIn('room_sessions').select('name').execute(),
  ];
  const names = [...new Set(known.flat().map(({ name }) => name))].filter((name) => name !== '');
  await db
    .updateTable('member_joins')
    .set({ name: '' })
    .where(({ and }) => and({ studio_id: studio, into_id: member }))
    .execute();
  for (const table of [
    'member_identities',
    'room_claims',
    'room_sessions',
    'link_codes',
    'reminders',
    'open_questions',
    'wrong_codes',
    'daily_entries',
    'shown_once',
  ] as const)
    await db.deleteFrom(table).where('studio_id', '=', studio).where('member_id', 'in', members).execute();
  await db.deleteFrom('members').where('studio_id', '=', studio).where('id', '=', member).execute();
  await noteChange(db, studio, 'sessions_changed');
  await queueErasure(db, { studio, step: 'gather', members, names, texts: [] });
  return { members, names };
};
