import type { Kysely } from 'kysely';
import type { MemberId, StudioId } from '../../studio/ids.ts';
import { compiledOnce } from '../engine/compiledOnce.ts';
import type { Tables } from '../migrations/tables.ts';

interface Asked extends Record<string, unknown> {
  studio: StudioId;
  member: MemberId;
}

// Compiled once, because every command asks.
const currentMember = compiledOnce<Asked, { id: MemberId }>((db, value) =>
  db
    .selectFrom('members')
    .where('studio_id', '=', value('studio'))
    .where('id', '=', value('member'))
    .select('id'),
);
const joined = compiledOnce<Asked, { id: MemberId }>((db, value) =>
  db
    .selectFrom('member_joins')
    .where('studio_id', '=', value('studio'))
    .where('member_id', '=', value('member'))
    .select('into_id as id'),
);

/** The current id of a member: a different one after a link, undefined once they are forgotten. */
export const standsFor = async (
  db: Kysely<Tables>,
  studio: StudioId,
  member: MemberId,
): Promise<MemberId | undefined> => {
  const [same] = await currentMember(db, { studio, member });
  if (same) return same.id;
  const [other] = await joined(db, { studio, member });
  return other && (await currentMember(db, { studio, member: other.id }))[0]?.id;
};
