import type { Transaction } from 'kysely';
import type { Clock } from '../../clock.ts';
import type { StudioId } from '../../studio/ids.ts';
import type { Claim, Credentials } from '../../studio/logbook/roomPorts.ts';
import { writeAll, type Reading, type Turns, type Writing } from '../engine/turns.ts';
import { withoutNul } from '../engine/withoutNul.ts';
import type { Tables } from '../migrations/tables.ts';
import { memberOfLinkCode, spendLinkCode } from '../people/linkCodes.ts';
import { noteChange } from '../people/noteChange.ts';
import { mayTry } from './mayTry.ts';

export type StoredCredentials = Omit<Credentials, 'passcode' | 'setPasscode'>;

/** Names, sessions and codes of one studio's room. */
export const storedCredentials = (turns: Turns, clock: Clock, studio: StudioId): StoredCredentials => {
  const scope = { rows: studio };
  const read = <T>(work: (reading: Reading) => Promise<T>) => turns.read(scope, work);
  const write = <T>(work: (writing: Writing) => Promise<T>) => writeAll(turns, scope, work);

  const claimed = ({ db }: Reading, key: string) =>
    db.selectFrom('room_claims').where('studio_id', '=', studio).where('name_key', '=', key);

  const saveClaim = async (
    db: Transaction<Tables>,
    key: string,
    { member, name, secret }: Required<Claim>,
  ): Promise<void> => {
    const row = { name: withoutNul(name), member_id: member, secret };
    await db
      .insertInto('room_claims')
      .values({ studio_id: studio, name_key: key, ...row })
      .onConflict((conflict) => conflict.columns(['studio_id', 'name_key']).doUpdateSet(row))
      .execute();
  };

  const claims: Credentials['claims'] = () =>
    read(async ({ db }) => {
      const rows = await db
        .selectFrom('room_claims')
        .where('studio_id', '=', studio)
        .orderBy('name')
        .selectAll()
        .execute();
      return rows.map(({ name_key: key, member_id: member, name, secret }) => ({
        key,
        member,
        name,
        ...(secret !== null && { secret }),
      }));
    });

  return {
    isShared: turns.isShared,

    mayTry: (key, pace) => mayTry(turns, studio, key, pace),

    claims,

    claim: async (key) => (await claims()).find((claim) => claim.key === key),

    take: (key, claim) =>
      turns.write(scope, async (writing) => {
        const held = await claimed(writing, key)
          .where('secret', 'is not', null)
          .select('name_key')
          .executeTakeFirst();
        if (held) return { keep: false, value: false };
        await saveClaim(writing.db, key, claim);
        return { keep: true, value: true };
      }),

    linked: (code) => read(({ db }) => memberOfLinkCode(db, studio, code, clock.now())),

    takeLinked: (code, key, claim) =>
      turns.write(scope, async (writing) => {
        const { db } = writing;
        const { member } = claim;
        if ((await memberOfLinkCode(db, studio, code, clock.now())) !== member)
          return { keep: false, value: 'no-code' };
        const holder = await claimed(writing, key).select('member_id').executeTakeFirst();
        if (holder && holder.member_id !== member) return { keep: false, value: 'not-free' };
        await spendLinkCode(db, studio, member);
        await saveClaim(db, key, claim);
        return { keep: true, value: 'taken' };
      }),

    release: (key, member, name) =>
      write(async ({ db }) => {
        await db
          .insertInto('room_claims')
          .values({ studio_id: studio, name_key: key, member_id: member, name, secret: null })
          .onConflict((conflict) => conflict.columns(['studio_id', 'name_key']).doUpdateSet({ secret: null }))
          .execute();
        await db
          .deleteFrom('room_sessions')
          .where(({ and }) => and({ studio_id: studio, member_id: member }))
          .execute();
        await noteChange(db, studio, 'sessions_changed');
      }),

    session: (hash) =>
      read(({ db }) =>
        db
          .selectFrom('room_sessions')
          .where(({ and }) => and({ hash, studio_id: studio }))
          .where('until', '>', clock.now())
          .select(['hash', 'member_id as member', 'name', 'until'])
          .executeTakeFirst(),
      ),

    sessions: () =>
      write(async ({ db }) => {
        await db.deleteFrom('room_sessions').where('until', '<=', clock.now()).execute();
        return db
          .selectFrom('room_sessions')
          .where('studio_id', '=', studio)
          .select(['hash', 'member_id as member', 'name', 'until'])
          .execute();
      }),

    begin: ({ hash, member, name, until }) =>
      write(async ({ db }) => {
        await db
          .insertInto('room_sessions')
          .values({ hash, studio_id: studio, member_id: member, name: withoutNul(name), until })
          .execute();
      }),

    end: (which) =>
      write(async ({ db }) => {
        let ended = db.deleteFrom('room_sessions').where('studio_id', '=', studio);
        if ('hash' in which) ended = ended.where('hash', '=', which.hash);
        else if ('member' in which) ended = ended.where('member_id', '=', which.member);
        else ended = ended.where('hash', '!=', which.allBut);
        await ended.execute();
        await noteChange(db, studio, 'sessions_changed');
      }),

    addCode: (hash, purpose, until) =>
      write(async ({ db }) => {
        await db.deleteFrom('room_codes').where('until', '<=', clock.now()).execute();
        await db.insertInto('room_codes').values({ hash, studio_id: studio, purpose, until }).execute();
      }),

    code: (hash, purpose, how) =>
      turns.write(scope, async ({ db }) => {
        const row = await db
          .selectFrom('room_codes')
          .where(({ and }) => and({ hash, studio_id: studio, purpose }))
          .where('until', '>', clock.now())
          .select('hash')
          .executeTakeFirst();
        if (row === undefined || how === 'look') return { keep: false, value: row !== undefined };
        await db.deleteFrom('room_codes').where('hash', '=', hash).execute();
        return { keep: true, value: true };
      }),

    endCodes: (purpose) =>
      write(async ({ db }) => {
        await db
          .deleteFrom('room_codes')
          .where(({ and }) => and({ studio_id: studio, purpose }))
          .execute();
      }),
  };
};
