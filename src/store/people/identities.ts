import type { Kysely, Transaction } from 'kysely';
import { v7 as uuidv7 } from 'uuid';
import type { Clock } from '../../clock.ts';
import { memberId, studioId, type Instant, type MemberId, type StudioId } from '../../studio/ids.ts';
import type { People } from '../../studio/logbook/ports.ts';
import { LastUsed } from '../engine/snapshotCache.ts';
import { compiledOnce } from '../engine/compiledOnce.ts';
import { PeopleChanges } from './peopleChanges.ts';
import type { Turns } from '../engine/turns.ts';
import { withoutNul } from '../engine/withoutNul.ts';
import type { Tables } from '../migrations/tables.ts';

/** Every studio, oldest first. */
export const everyStudio = (db: Kysely<Tables>): Promise<{ id: StudioId; name: string }[]> =>
  db.selectFrom('studios').select(['id', 'name']).orderBy('created_at').orderBy('id').execute();

export const studioIdentified = async (
  db: Kysely<Tables>,
  platform: string,
  external: string,
): Promise<StudioId | undefined> => {
  const row = await db
    .selectFrom('studio_identities')
    .where(({ and }) => and({ platform, external_id: external }))
    .select('studio_id')
    .executeTakeFirst();
  return row?.studio_id;
};

interface Identity extends Record<string, unknown> {
  studio_id: StudioId;
  platform: string;
  external_id: string;
}
// Compiled once, because where several processes write every command asks.
const knownAs = compiledOnce<Identity, { member_id: MemberId }>((db, value) =>
  db
    .selectFrom('member_identities')
    .where('studio_id', '=', value('studio_id'))
    .where('platform', '=', value('platform'))
    .where('external_id', '=', value('external_id'))
    .select('member_id'),
);
export const memberIdentified = async (
  db: Kysely<Tables>,
  identity: Identity,
): Promise<MemberId | undefined> => (await knownAs(db, identity))[0]?.member_id;

/** Makes a member who is known by an identity. */
export const addMember = async (
  db: Transaction<Tables>,
  identity: Identity,
  { id, name, now }: { id: MemberId; name: string; now: Instant },
): Promise<void> => {
  await db
    .insertInto('members')
    .values({ studio_id: identity.studio_id, id, name, created_at: now })
    .execute();
  await db
    .insertInto('member_identities')
    .values({ ...identity, member_id: id })
    .execute();
};

const mostRemembered = 100_000;
/** Members by their platform ids. Cached, because every command asks and the answers rarely change. */
export const identities = (turns: Turns, clock: Clock, changes = new PeopleChanges()): People => {
  const studios = new LastUsed<string, StudioId>(mostRemembered);
  const members = new LastUsed<string, MemberId>(mostRemembered);
  /** Counts changes to people, so that an answer from before a change is not cached after it. */
  let changed = 0;
  changes.listen((change) => {
    changed += 1;
    const gone = change.kind === 'joined' ? [change.from] : change.members;
    for (const [key, member] of members) if (gone.includes(member)) members.delete(key);
  });

  const studioKnownAs = (platform: string, external: string): Promise<StudioId | undefined> =>
    turns.read('directory', ({ db }) => studioIdentified(db, platform, external));

  return {
    studioKnownAs,

    async studioOf(platform, external, name) {
      const identity = { platform: withoutNul(platform), external_id: withoutNul(external) };
      const key = JSON.stringify([platform, external]);
      const known = studios.get(key);
      if (known) return known;
      const found = await turns.write<StudioId | undefined>('directory', async ({ db }) => {
        const there = await studioIdentified(db, identity.platform, identity.external_id);
        if (there) return { keep: false, value: there };
        const now = clock.now();
        const id = studioId(uuidv7({ msecs: now }));
        await db
          .insertInto('studios')
          .values({ id, name: withoutNul(name), created_at: now })
          .execute();
        const { numInsertedOrUpdatedRows: added } = await db
          .insertInto('studio_identities')
          .values({ ...identity, studio_id: id })
          .onConflict((conflict) => conflict.doNothing())
          .executeTakeFirstOrThrow();
        return added === 1n ? { keep: true, value: id } : { keep: false, value: undefined };
      });
      // Another process may have been quicker.
      const studio = found ?? (await studioKnownAs(platform, external));
      if (studio === undefined) throw new Error('A studio was neither made nor found.');
      studios.set(key, studio);
      return studio;
    },

    externalOfStudio: (studio, platform) =>
      turns.read('directory', async ({ db }) => {
        const row = await db
          .selectFrom('studio_identities')
          .where(({ and }) => and({ studio_id: studio, platform }))
          .select('external_id')
          .executeTakeFirst();
        return row?.external_id;
      }),

    externalOf: (studio, member, platform) =>
      turns.read({ rows: studio }, async ({ db }) => {
        const row = await db
          .selectFrom('member_identities')
          .where(({ and }) => and({ studio_id: studio, member_id: member, platform }))
          .select('external_id')
          .executeTakeFirst();
        return row?.external_id;
      }),

    studios: () => turns.read('directory', ({ db }) => everyStudio(db)),

    async studiosWithRoom() {
      const rows = await turns.read('directory', ({ db }) =>
        db.selectFrom('room_claims').select('studio_id').distinct().execute(),
      );
      return rows.map((row) => row.studio_id);
    },

    async memberOf(studio, platform, external, name) {
      const key = JSON.stringify([studio, platform, external]);
      const known = members.get(key);
      if (known) return known;
      const identity = {
        studio_id: studio,
        platform: withoutNul(platform),
        external_id: withoutNul(external),
      };
      const before = changed;
      if (turns.isShared) {
        // Not remembered: of what another process changes, this one would not hear.
        const there = await turns.read({ rows: studio }, ({ db }) => memberIdentified(db, identity));
        if (there) return there;
      }
      const found = await turns.write({ rows: studio }, async ({ db }) => {
        const there = await memberIdentified(db, identity);
        if (there) return { keep: false, value: there };
        const now = clock.now();
        const id = memberId(uuidv7({ msecs: now }));
        await addMember(db, identity, { id, name: withoutNul(name), now });
        return { keep: true, value: id };
      });
      if (before === changed && !turns.isShared) members.set(key, found);
      return found;
    },
  };
};
