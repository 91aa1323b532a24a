import type { Clock } from '../../clock.ts';
import type { Instant, MemberId, StudioId } from '../../studio/ids.ts';
import type {
  Claim,
  CodePurpose,
  Credentials,
  Session,
  Tried,
  TryPace,
} from '../../studio/logbook/roomPorts.ts';
import { memberOfLinkCode, spendLinkCode } from '../people/linkCodes.ts';
import { withoutNul } from '../engine/withoutNul.ts';
import type { Tables } from '../migrations/tables.ts';
import type { Turns, Writing } from '../engine/turns.ts';
import { mayTry } from './mayTry.ts';
import { noteChange } from '../people/noteChange.ts';

/** Names, sessions and codes of one studio's room. */
export class StoredCredentials implements Omit<Credentials, 'passcode' | 'setPasscode'> {
  readonly #turns: Turns;
  readonly #clock: Clock;
  readonly #studio: StudioId;

  constructor(turns: Turns, clock: Clock, studio: StudioId) {
    this.#turns = turns;
    this.#clock = clock;
    this.#studio = studio;
  }

  get isShared(): boolean {
    return this.#turns.isShared;
  }

  mayTry(key: string, pace: TryPace): Promise<Tried> {
    return mayTry(this.#turns, this.#studio, key, pace);
  }

  claims(): Promise<(Claim & { key: string })[]> {
    return this.#turns.read({ rows: this.#studio }, async ({ db }) => {
      const rows = await db
        .selectFrom('room_claims')
        .where('studio_id', '=', this.#studio)
        .orderBy('name')
        .selectAll()
        .execute();
      return rows.map((row) => ({
        key: row.name_key,
        member: row.member_id,
        name: row.name,
        ...(row.secret !== null && { secret: row.secret }),
      }));
    });
  }

  async claim(key: string): Promise<Claim | undefined> {
    return (await this.claims()).find((claim) => claim.key === key);
  }

  /** Claims a name that is free. When several try at once, only one succeeds. */
  take(key: string, { member, name, secret }: Required<Claim>): Promise<boolean> {
    return this.#turns.write({ rows: this.#studio }, async ({ db }) => {
      const held = await db
        .selectFrom('room_claims')
        .where('studio_id', '=', this.#studio)
        .where('name_key', '=', key)
        .where('secret', 'is not', null)
        .select('name_key')
        .executeTakeFirst();
      if (held) return { keep: false, value: false };
      await this.#claim(db, key, { name: withoutNul(name), member_id: member, secret });
      return { keep: true, value: true };
    });
  }

  /** The member whose valid `/link` code this is. */
  linked(code: string): Promise<MemberId | undefined> {
    return this.#turns.read({ rows: this.#studio }, ({ db }) =>
      memberOfLinkCode(db, this.#studio, code, this.#clock.now()),
    );
  }

  /** Claims a name for the owner of a `/link` code, and uses up the code. */
  takeLinked(
    code: string,
    key: string,
    { member, name, secret }: Required<Claim>,
  ): Promise<'taken' | 'no-code' | 'not-free'> {
    return this.#turns.write({ rows: this.#studio }, async ({ db }) => {
      if ((await memberOfLinkCode(db, this.#studio, code, this.#clock.now())) !== member)
        return { keep: false, value: 'no-code' };
      const claim = await db
        .selectFrom('room_claims')
        .where('studio_id', '=', this.#studio)
        .where('name_key', '=', key)
        .select('member_id')
        .executeTakeFirst();
      if (claim && claim.member_id !== member) return { keep: false, value: 'not-free' };
      await spendLinkCode(db, this.#studio, member);
      await this.#claim(db, key, { name: withoutNul(name), member_id: member, secret });
      return { keep: true, value: 'taken' };
    });
  }

  release(key: string, member: MemberId, name: string): Promise<void> {
    return this.#turns.write({ rows: this.#studio }, async ({ db }) => {
      await db
        .insertInto('room_claims')
        .values({ studio_id: this.#studio, name_key: key, member_id: member, name, secret: null })
        .onConflict((conflict) => conflict.columns(['studio_id', 'name_key']).doUpdateSet({ secret: null }))
        .execute();
      await db
        .deleteFrom('room_sessions')
        .where('studio_id', '=', this.#studio)
        .where('member_id', '=', member)
        .execute();
      await noteChange(db, this.#studio, 'sessions_changed');
      return { keep: true, value: undefined };
    });
  }

  session(hash: string): Promise<Session | undefined> {
    return this.#turns.read({ rows: this.#studio }, async ({ db }) => {
      const row = await db
        .selectFrom('room_sessions')
        .where('hash', '=', hash)
        .where('studio_id', '=', this.#studio)
        .where('until', '>', this.#clock.now())
        .select(['member_id', 'name', 'until'])
        .executeTakeFirst();
      return row && { hash, member: row.member_id, name: row.name, until: row.until };
    });
  }

  sessions(): Promise<Session[]> {
    return this.#turns.write({ rows: this.#studio }, async ({ db }) => {
      await db.deleteFrom('room_sessions').where('until', '<=', this.#clock.now()).execute();
      const rows = await db
        .selectFrom('room_sessions')
        .where('studio_id', '=', this.#studio)
        .select(['hash', 'member_id', 'name', 'until'])
        .execute();
      return {
        keep: true,
        value: rows.map(({ hash, member_id: member, name, until }) => ({ hash, member, name, until })),
      };
    });
  }

  begin({ hash, member, name, until }: Session): Promise<void> {
    return this.#turns.write({ rows: this.#studio }, async ({ db }) => {
      await db
        .insertInto('room_sessions')
        .values({ hash, studio_id: this.#studio, member_id: member, name: withoutNul(name), until })
        .execute();
      return { keep: true, value: undefined };
    });
  }

  end(which: { hash: string } | { member: MemberId } | { allBut: string }): Promise<void> {
    return this.#turns.write({ rows: this.#studio }, async ({ db }) => {
      const ours = db.deleteFrom('room_sessions').where('studio_id', '=', this.#studio);
      await (
        'hash' in which
          ? ours.where('hash', '=', which.hash)
          : 'member' in which
            ? ours.where('member_id', '=', which.member)
            : ours.where('hash', '!=', which.allBut)
      ).execute();
      await noteChange(db, this.#studio, 'sessions_changed');
      return { keep: true, value: undefined };
    });
  }

  addCode(hash: string, purpose: CodePurpose, until: Instant): Promise<void> {
    return this.#turns.write({ rows: this.#studio }, async ({ db }) => {
      await db.deleteFrom('room_codes').where('until', '<=', this.#clock.now()).execute();
      await db.insertInto('room_codes').values({ hash, studio_id: this.#studio, purpose, until }).execute();
      return { keep: true, value: undefined };
    });
  }

  code(hash: string, purpose: CodePurpose, how: 'spend' | 'look'): Promise<boolean> {
    return this.#turns.write({ rows: this.#studio }, async ({ db }) => {
      const row = await db
        .selectFrom('room_codes')
        .where('hash', '=', hash)
        .where('studio_id', '=', this.#studio)
        .where('purpose', '=', purpose)
        .where('until', '>', this.#clock.now())
        .select('hash')
        .executeTakeFirst();
      if (row === undefined || how === 'look') return { keep: false, value: row !== undefined };
      await db.deleteFrom('room_codes').where('hash', '=', hash).execute();
      return { keep: true, value: true };
    });
  }

  endCodes(purpose: CodePurpose): Promise<void> {
    return this.#turns.write({ rows: this.#studio }, async ({ db }) => {
      await db
        .deleteFrom('room_codes')
        .where('studio_id', '=', this.#studio)
        .where('purpose', '=', purpose)
        .execute();
      return { keep: true, value: undefined };
    });
  }

  async #claim(
    db: Writing['db'],
    key: string,
    row: Omit<Tables['room_claims'], 'studio_id' | 'name_key'>,
  ): Promise<void> {
    await db
      .insertInto('room_claims')
      .values({ studio_id: this.#studio, name_key: key, ...row })
      .onConflict((conflict) => conflict.columns(['studio_id', 'name_key']).doUpdateSet(row))
      .execute();
  }
}
