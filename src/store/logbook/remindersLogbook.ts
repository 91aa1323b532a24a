import type { UpdateObject } from 'kysely';
import type { Instant, MemberId, StreamNo } from '../../studio/ids.ts';
import type { WritableLogbook } from '../../studio/logbook/ports.ts';
import { askedReminder } from '../../studio/remind/askedReminder.ts';
import type { Tables } from '../migrations/tables.ts';
import { newNonce, saveAsked } from '../reminders/replan.ts';
import { PeopleLogbook } from './peopleLogbook.ts';

/** The part of a writable logbook that concerns a member's reminders. */
export class RemindersLogbook
  extends PeopleLogbook
  implements Pick<WritableLogbook, 'remindAt' | 'putOff' | 'finish'>
{
  remindAt(member: MemberId, bucket: StreamNo, at: Instant, now: Instant): Promise<string> {
    return this.inOrder(() =>
      saveAsked(this.turn.db, this.studioId, askedReminder(member, bucket, at, now), now),
    );
  }

  putOff(member: MemberId, key: string, to: Instant): Promise<boolean> {
    return this.#setReminder(member, key, {
      status: 'pending',
      next_at: to,
      put_off_to: to,
      claimed: 0,
      leased_until: null,
      unsure_since: null,
      nonce: newNonce(),
    });
  }

  finish(member: MemberId, key: string): Promise<boolean> {
    return this.#setReminder(member, key, { status: 'done' });
  }

  #setReminder(member: MemberId, key: string, changed: UpdateObject<Tables, 'reminders'>): Promise<boolean> {
    return this.inOrder(async () => {
      const { numUpdatedRows } = await this.turn.db
        .updateTable('reminders')
        .set(changed)
        .where(({ and }) => and({ studio_id: this.studioId, member_id: member, key }))
        .executeTakeFirst();
      return numUpdatedRows > 0n;
    });
  }
}
