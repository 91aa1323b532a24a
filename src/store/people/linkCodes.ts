import { createHash, randomInt } from 'node:crypto';
import type { Kysely, Transaction } from 'kysely';
import { instant, minutes, type Instant, type MemberId, type StudioId } from '../../studio/ids.ts';
import { linkLength, linkLetters, readLinkCode } from '../../studio/people/linkCode.ts';
import type { Tables } from '../migrations/tables.ts';

const lasts = minutes(15);
/** Wrong codes allowed in that time. A code has 39 bits, so even thousands of tries a day are hopeless. */
const mostWrong = 5;

const hashOf = (studio: StudioId, code: string): string =>
  createHash('sha256').update(`${studio}:${code}`).digest('base64url');

/** Makes a new code for a member and invalidates the one before. Only its hash is stored. */
export const makeLinkCode = async (
  db: Transaction<Tables>,
  studio: StudioId,
  member: MemberId,
  now: Instant,
): Promise<{ code: string; until: Instant }> => {
  const code = Array.from({ length: linkLength }, () =>
    linkLetters.charAt(randomInt(linkLetters.length)),
  ).join('');
  const row = { hash: hashOf(studio, code), until: instant(now + lasts) };
  await db.deleteFrom('link_codes').where('until', '<=', now).execute();
  await db
    .insertInto('link_codes')
    .values({ studio_id: studio, member_id: member, ...row })
    .onConflict((conflict) => conflict.columns(['studio_id', 'member_id']).doUpdateSet(row))
    .execute();
  return { code, until: row.until };
};

/** The member whose valid code this is. */
export const memberOfLinkCode = async (
  db: Kysely<Tables>,
  studio: StudioId,
  typed: string,
  now: Instant,
): Promise<MemberId | undefined> => {
  const code = readLinkCode(typed);
  if (code === undefined) return undefined;
  const row = await db
    .selectFrom('link_codes')
    .where(({ and }) => and({ studio_id: studio, hash: hashOf(studio, code) }))
    .where('until', '>', now)
    .select('member_id')
    .executeTakeFirst();
  return row?.member_id;
};

export const spendLinkCode = async (
  db: Transaction<Tables>,
  studio: StudioId,
  member: MemberId,
): Promise<void> => {
  await db.deleteFrom('link_codes').where('studio_id', '=', studio).where('member_id', '=', member).execute();
};

/** Whether a member has typed so many wrong codes lately that no code is accepted from them. */
export const hasTriedTooOften = async (
  db: Kysely<Tables>,
  studio: StudioId,
  member: MemberId,
  now: Instant,
): Promise<boolean> => {
  const { count } = await db
    .selectFrom('wrong_codes')
    .where(({ and }) => and({ studio_id: studio, member_id: member }))
    .where('at', '>', instant(now - lasts))
    .select(({ fn }) => fn.countAll<number>().as('count'))
    .executeTakeFirstOrThrow();
  return count >= mostWrong;
};

export const noteWrongCode = async (
  db: Transaction<Tables>,
  studio: StudioId,
  member: MemberId,
  at: Instant,
): Promise<void> => {
  await db
    .deleteFrom('wrong_codes')
    .where('at', '<=', instant(at - lasts))
    .execute();
  await db.insertInto('wrong_codes').values({ studio_id: studio, member_id: member, at }).execute();
};
