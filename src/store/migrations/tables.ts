import type { Generated } from 'kysely';
import type { Instant, MemberId, Seq, StreamNo, StudioId } from '../../studio/ids.ts';

export interface Tables {
  studios: {
    id: StudioId;
    name: string;
    created_at: Instant;
    /** Raised by each write to its logbook, where several processes write: what they remember may be stale. */
    version: Generated<number>;
    /** Raised when posts or people of its room were changed, and when sessions ended. */
    posts_changed: Generated<number>;
    sessions_changed: Generated<number>;
  };
  /** The only table with a member's name, so that it can be erased: entries carry ids. */
  members: { studio_id: StudioId; id: MemberId; name: string; created_at: Instant };
  studio_identities: {
    platform: string;
    /** Text, because a platform's 64-bit number does not fit in a JavaScript number. */
    external_id: string;
    studio_id: StudioId;
  };
  member_identities: { studio_id: StudioId; platform: string; external_id: string; member_id: MemberId };
  /**
   * A stream, and a cache of the state that its entries fold to up to `seq`, valid for one version of the fold. Entries after
   * it may have been logged since.
   */
  streams: {
    studio_id: StudioId;
    stream_no: StreamNo;
    seq: Seq;
    folded_by: string | null;
    state: string | null;
  };
  events: {
    studio_id: StudioId;
    stream_no: StreamNo;
    seq: Seq;
    at: Instant;
    logged_at: Instant;
    member_id: MemberId;
    event: string;
    /** The entry that this one undoes. */
    undoes: Seq | null;
  };
  /** Free text about an entry, in a table of its own so that it can be redacted. */
  notes: {
    studio_id: StudioId;
    stream_no: StreamNo;
    seq: Seq;
    note: string;
    /** The keeper who removed its words. */
    removed_by: MemberId | null;
  };
  replies: { studio_id: StudioId; key: string; value: string; at: Instant };
  held_lines: { id: string; studio_id: StudioId; line: string; until: Instant };
  kept: { name: string; value: string };
  /** A name in the room and the member who claimed it. Without a secret, anybody may claim it again. */
  room_claims: {
    studio_id: StudioId;
    name_key: string;
    name: string;
    member_id: MemberId;
    secret: string | null;
  };
  room_sessions: { hash: string; studio_id: StudioId; member_id: MemberId; name: string; until: Instant };
  room_codes: { hash: string; studio_id: StudioId; purpose: string; until: Instant };
  room_posts: {
    studio_id: StudioId;
    no: number;
    key: string;
    id: string;
    at: Instant;
    member_id: MemberId;
    line: string;
    private: number;
    reply: string;
  };
  /**
   * Only `next_at` decides when a reminder is due. In a file a claim sets it to the end of its lease; where several
   * processes send, the lease is a column of its own, by the database's clock.
   */
  reminders: {
    id: Generated<number>;
    studio_id: StudioId;
    member_id: MemberId;
    key: string;
    subject: string;
    about: string;
    status: 'pending' | 'told' | 'done' | 'dropped';
    due_at: Instant;
    next_at: Instant;
    good_until: Instant;
    put_off_to: Instant | null;
    nonce: string;
    claimed: number;
    /** The first try whose outcome is unknown. */
    unsure_since: Instant | null;
    tries: number;
    leased_until: Generated<Instant | null>;
  };
  /** A removed note has null words; its number is not used again. */
  studio_notes: {
    studio_id: StudioId;
    no: number;
    member_id: MemberId;
    at: Instant;
    title: string | null;
    text: string | null;
    words: string | null;
  };
  /** A question that /ask could not answer. `key` is its text without case and spacing. */
  open_questions: {
    studio_id: StudioId;
    no: number;
    key: string;
    text: string;
    bucket: StreamNo | null;
    at: Instant;
    times: number;
    /** Who asked, if they wanted the keepers to know. */
    member_id: MemberId | null;
  };
  /** Two linked members: entries with `member_id` belong to `into_id`. */
  member_joins: {
    studio_id: StudioId;
    member_id: MemberId;
    into_id: MemberId;
    /** The former name, kept so that erasure can find it. */
    name: string;
  };
  /** One code for each member, stored as a hash. */
  link_codes: { studio_id: StudioId; member_id: MemberId; hash: string; until: Instant };
  /** A wrong code that a member typed. */
  wrong_codes: { id: Generated<number>; studio_id: StudioId; member_id: MemberId; at: Instant };
  /** How much a member has logged on a day of UTC, counted from the first of 1970. */
  daily_entries: { studio_id: StudioId; member_id: MemberId; day: number; entries: number };
  /** A pending erasure: whose words to take out of what. The row is deleted when it is done. */
  erasures: {
    id: Generated<number>;
    studio_id: StudioId;
    step: 'gather' | 'clean' | 'compact';
    members: string;
    words: string;
  };
  /** How often something was tried that may be guessed: until then its tries are used up. The key is a hash. */
  tries: { studio_id: StudioId; key: string; until: Instant };
  /** A file that is shown once, for the process that a phone asks for it. */
  shown_once: { studio_id: StudioId; no: number; member_id: MemberId; sealed: string; until: Instant };
}
