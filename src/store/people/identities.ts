import type { Kysely } from 'kysely';
import { v7 as uuidv7 } from 'uuid';
import type { Clock } from '../../clock.ts';
import { memberId, studioId, type MemberId, type StudioId } from '../../studio/ids.ts';
import type { People } from '../../studio/logbook/ports.ts';
import { compiledOnce } from '../engine/compiledOnce.ts';
import { PeopleChanges } from './peopleChanges.ts';
import type { Turns } from '../engine/turns.ts';
import { withoutNul } from '../engine/withoutNul.ts';
import type { Tables } from '../migrations/tables.ts';

const mostRemembered = 100_000;

/** Members by their platform ids. Cached, because every command asks and the answers rarely change. */
export class Identities implements People {
  readonly #turns: Turns;
  readonly #clock: Clock;
  readonly #studios = new Map<string, StudioId>();
  readonly #members = new Map<string, MemberId>();

  /** Counts changes to people, so that an answer from before a change is not cached after it. */
  #changed = 0;

  constructor(turns: Turns, clock: Clock, changes = new PeopleChanges()) {
    this.#turns = turns;
    this.#clock = clock;
    changes.listen((change) => {
      this.#changed += 1;
      const gone = change.kind === 'joined' ? [change.from] : change.members;
      for (const [key, member] of this.#members) if (gone.includes(member)) this.#members.delete(key);
    });
  }

  async studioOf(platform: string, external: string, name: string): Promise<StudioId> {
    const identity = { platform: withoutNul(platform), external_id: withoutNul(external) };
    const key = JSON.stringify([platform, external]);
    const known = this.#studios.get(key);
    if (known) return known;
    const found = await this.#turns.write<StudioId | undefined>('directory', async ({ db }) => {
      const row = await db
        .selectFrom('studio_identities')
        .where('platform', '=', identity.platform)
        .where('external_id', '=', identity.external_id)
        .select('studio_id')
        .executeTakeFirst();
      if (row) return { keep: false, value: row.studio_id };
      const now = this.#clock.now();
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
    const studio = found ?? (await this.studioKnownAs(platform, external));
    if (studio === undefined) throw new Error('A studio was neither made nor found.');
    remember(this.#studios, key, studio);
    return studio;
  }

  studioKnownAs(platform: string, external: string): Promise<StudioId | undefined> {
    return this.#turns.read('directory', async ({ db }) => {
      const row = await db
        .selectFrom('studio_identities')
        .where('platform', '=', platform)
        .where('external_id', '=', external)
        .select('studio_id')
        .executeTakeFirst();
      return row?.studio_id;
    });
  }

  externalOfStudio(studio: StudioId, platform: string): Promise<string | undefined> {
    return this.#turns.read('directory', async ({ db }) => {
      const row = await db
        .selectFrom('studio_identities')
        .where('studio_id', '=', studio)
        .where('platform', '=', platform)
        .select('external_id')
        .executeTakeFirst();
      return row?.external_id;
    });
  }

  externalOf(studio: StudioId, member: MemberId, platform: string): Promise<string | undefined> {
    return this.#turns.read({ rows: studio }, async ({ db }) => {
      const row = await db
        .selectFrom('member_identities')
        .where('studio_id', '=', studio)
        .where('member_id', '=', member)
        .where('platform', '=', platform)
        .select('external_id')
        .executeTakeFirst();
      return row?.external_id;
    });
  }

  studios(): Promise<{ id: StudioId; name: string }[]> {
    return this.#turns.read('directory', ({ db }) =>
      db.selectFrom('studios').select(['id', 'name']).orderBy('created_at').orderBy('id').execute(),
    );
  }

  async studiosWithRoom(): Promise<StudioId[]> {
    const rows = await this.#turns.read('directory', ({ db }) =>
      db.selectFrom('room_claims').select('studio_id').distinct().execute(),
    );
    return rows.map((row) => row.studio_id);
  }

  async memberOf(studio: StudioId, platform: string, external: string, name: string): Promise<MemberId> {
    const identity = {
      studio_id: studio,
      platform: withoutNul(platform),
      external_id: withoutNul(external),
    };
    const key = JSON.stringify([studio, platform, external]);
    const known = this.#members.get(key);
    if (known) return known;
    const changed = this.#changed;
    if (this.#turns.isShared) {
      // Not remembered: of what another process changes, this one would not hear.
      const there = await this.#turns.read({ rows: studio }, ({ db }) => memberKnownAs(db, identity));
      if (there) return there;
    }
    const found = await this.#turns.write({ rows: studio }, async ({ db }) => {
      const there = await memberKnownAs(db, identity);
      if (there) return { keep: false, value: there };
      const now = this.#clock.now();
      const id = memberId(uuidv7({ msecs: now }));
      await db
        .insertInto('members')
        .values({ studio_id: studio, id, name: withoutNul(name), created_at: now })
        .execute();
      await db
        .insertInto('member_identities')
        .values({ ...identity, member_id: id })
        .execute();
      return { keep: true, value: id };
    });
    if (changed === this.#changed && !this.#turns.isShared) remember(this.#members, key, found);
    return found;
  }
}

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
const memberKnownAs = async (db: Kysely<Tables>, identity: Identity): Promise<MemberId | undefined> =>
  (await knownAs(db, identity))[0]?.member_id;

const remember = <V>(known: Map<string, V>, key: string, value: V) => {
  if (known.size >= mostRemembered) known.clear();
  known.set(key, value);
};
