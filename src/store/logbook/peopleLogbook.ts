import { readEntryId, type EntryId, type Instant, type MemberId } from '../../studio/ids.ts';
import type { PeopleChange, WritableLogbook } from '../../studio/logbook/ports.ts';
import { withoutWords } from '../../studio/people/withoutWords.ts';
import { queueErasure } from '../people/erasureRow.ts';
import { forgetMember } from '../people/forgetMember.ts';
import { joinMembers } from '../people/joinMembers.ts';
import { hasTriedTooOften, makeLinkCode, memberOfLinkCode, noteWrongCode } from '../people/linkCodes.ts';
import { ReadingLogbook } from './readingLogbook.ts';
import type { TransactionOutcome, Writing } from '../engine/turns.ts';
import { withoutNul } from '../engine/withoutNul.ts';

type PeopleBook = Pick<
  WritableLogbook,
  'rename' | 'redact' | 'redactName' | 'offerLink' | 'offeredBy' | 'link' | 'forget'
>;

/** The part of a writable logbook that concerns people. Its writes run one after another. */
export class PeopleLogbook extends ReadingLogbook<Writing> implements PeopleBook {
  /** Changes to people, to announce after the commit. */
  readonly changes: PeopleChange[] = [];
  /** Written even when nothing else of the turn is. */
  evenSo: TransactionOutcome<unknown>['evenSo'];
  #writes: Promise<unknown> = Promise.resolve();

  rename(member: MemberId, name: string): Promise<void> {
    return this.inOrder(async () => {
      await this.turn.db
        .updateTable('members')
        .set({ name: withoutNul(name) })
        .where(({ and }) => and({ studio_id: this.studioId, id: member }))
        .execute();
    });
  }

  redact(entry: EntryId, by: MemberId): Promise<boolean> {
    return this.inOrder(async () => {
      const named = readEntryId(entry);
      if (!named) return false;
      const { studioId: studio, turn } = this;
      const row = await turn.db
        .selectFrom('notes')
        .where(({ and }) => and({ studio_id: studio, stream_no: named.stream, seq: named.seq }))
        .where('removed_by', 'is', null)
        .select('note')
        .executeTakeFirst();
      if (!row) return false;
      await turn.db
        .updateTable('notes')
        .set({ note: '', removed_by: by })
        .where(({ and }) => and({ studio_id: studio, stream_no: named.stream, seq: named.seq }))
        .execute();
      await this.#erase({ names: [], texts: [row.note] });
      return true;
    });
  }

  redactName(name: string): Promise<void> {
    return this.inOrder(() => this.#erase({ names: [withoutNul(name)], texts: [] }));
  }

  offerLink(member: MemberId, now: Instant): Promise<{ code: string; until: Instant }> {
    return this.inOrder(() => makeLinkCode(this.turn.db, this.studioId, member, now));
  }

  offeredBy(typed: string, now: Instant): Promise<MemberId | undefined> {
    return this.inOrder(() => memberOfLinkCode(this.turn.db, this.studioId, typed, now));
  }

  link(member: MemberId, typed: string, now: Instant): ReturnType<WritableLogbook['link']> {
    return this.inOrder(async () => {
      const { db } = this.turn;
      if (await hasTriedTooOften(db, this.studioId, member, now)) return { ok: false, why: 'too-many' };
      const into = await memberOfLinkCode(this.turn.db, this.studioId, typed, now);
      if (into === undefined) {
        // A refusal is not kept; that a code was tried is.
        this.evenSo = (after) => noteWrongCode(after, this.studioId, member, now);
        return { ok: false, why: 'no-such-code' };
      }
      if (into === member) return { ok: false, why: 'own-code' };
      await joinMembers(this.turn, { studio: this.studioId, from: member, into });
      this.changes.push({ kind: 'joined', studio: this.studioId, from: member, into });
      return { ok: true, into };
    });
  }

  forget(member: MemberId): Promise<void> {
    return this.inOrder(async () => {
      const { members, names } = await forgetMember(this.turn.db, this.studioId, member);
      const clean = withoutWords({ members, names, texts: [] });
      this.changes.push({ kind: 'erased', studio: this.studioId, members, clean });
    });
  }

  /** Queues the erasure of a removed studio note from everything that repeats it. */
  protected forgetTexts(texts: readonly string[]): Promise<void> {
    return texts.length === 0 ? Promise.resolve() : this.#erase({ names: [], texts });
  }

  async #erase(words: { names: readonly string[]; texts: readonly string[] }): Promise<void> {
    const erased = { members: [], ...words };
    await queueErasure(this.turn.db, { studio: this.studioId, step: 'clean', ...erased });
    this.changes.push({ kind: 'erased', studio: this.studioId, members: [], clean: withoutWords(erased) });
  }

  protected inOrder<T>(write: () => Promise<T>): Promise<T> {
    const done = this.#writes.then(write);
    this.#writes = done.catch(() => undefined);
    return done;
  }

  /** Resolves when all writes so far are done. */
  protected async written(): Promise<void> {
    await this.#writes;
  }
}
