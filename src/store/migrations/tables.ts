import type { Generated } from 'kysely';
import type { Instant, MemberId, Seq, StreamNo, StudioId } from '../../studio/ids.ts';

interface StudioRow {
  id: StudioId;
  name: string;
  created_at: Instant;
}

/** The only place of a name, so that it can be forgotten: entries carry ids. */
interface MemberRow {
  studio_id: StudioId;
  id: MemberId;
  name: string;
  created_at: Instant;
}

interface StudioIdentityRow {
  platform: string;
  /** As text: a platform's 64-bit number does not fit in ours. */
  external_id: string;
  studio_id: StudioId;
}

interface MemberIdentityRow {
  studio_id: StudioId;
  platform: string;
  external_id: string;
  member_id: MemberId;
}

/** A stream's last seq, and the state that its entries add up to: a cache, good for the fold that it says. */
interface StreamRow {
  studio_id: StudioId;
  stream_no: StreamNo;
  seq: Seq;
  folded_by: string | null;
  state: string | null;
}

interface EventRow {
  studio_id: StudioId;
  stream_no: StreamNo;
  seq: Seq;
  at: Instant;
  logged_at: Instant;
  member_id: MemberId;
  event: string;
  /** The entry that this one takes back. */
  undoes: Seq | null;
}

/** Free words about an entry, apart from it, so that they can be redacted. */
interface NoteRow {
  studio_id: StudioId;
  stream_no: StreamNo;
  seq: Seq;
  note: string;
  /** The keeper who took its words out; they are gone then. */
  removed_by: MemberId | null;
}

/** Entries under one id are by the member of another since the two were linked. */
interface MemberJoinRow {
  studio_id: StudioId;
  member_id: MemberId;
  into_id: MemberId;
  /** What they were called until then. */
  name: string;
}

/** A code is kept as a hash only, one for each member. */
interface LinkCodeRow {
  studio_id: StudioId;
  member_id: MemberId;
  hash: string;
  until: Instant;
}

/** What somebody's words are still to be taken out of; the row goes when nothing is left of them. */
interface ErasureRow {
  id: Generated<number>;
  studio_id: StudioId;
  step: 'gather' | 'clean' | 'compact';
  members: string;
  words: string;
}

interface ReplyRow {
  studio_id: StudioId;
  key: string;
  value: string;
  at: Instant;
}

interface HeldLineRow {
  id: string;
  studio_id: StudioId;
  line: string;
  until: Instant;
}

interface KeptRow {
  name: string;
  value: string;
}

/** A name of the room and the member who claimed it; without a secret it is free to be claimed anew. */
interface RoomClaimRow {
  studio_id: StudioId;
  name_key: string;
  name: string;
  member_id: MemberId;
  secret: string | null;
}

interface RoomSessionRow {
  hash: string;
  studio_id: StudioId;
  member_id: MemberId;
  name: string;
  until: Instant;
}

interface RoomCodeRow {
  hash: string;
  studio_id: StudioId;
  purpose: string;
  until: Instant;
}

interface RoomPostRow {
  studio_id: StudioId;
  no: number;
  key: string;
  id: string;
  at: Instant;
  member_id: MemberId;
  line: string;
  private: number;
  reply: string;
}

/** `next_at` is the one thing that moves: a claim moves it to the end of its lease. */
interface ReminderRow {
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
  /** The first try of which nobody knows how it ended. */
  unsure_since: Instant | null;
  tries: number;
}

/** Words are null once a note was removed: its number is not given again. */
interface StudioNoteRow {
  studio_id: StudioId;
  no: number;
  member_id: MemberId;
  at: Instant;
  title: string | null;
  text: string | null;
  words: string | null;
}

export interface Tables {
  studios: StudioRow;
  members: MemberRow;
  studio_identities: StudioIdentityRow;
  member_identities: MemberIdentityRow;
  streams: StreamRow;
  events: EventRow;
  notes: NoteRow;
  replies: ReplyRow;
  held_lines: HeldLineRow;
  kept: KeptRow;
  room_claims: RoomClaimRow;
  room_sessions: RoomSessionRow;
  room_codes: RoomCodeRow;
  room_posts: RoomPostRow;
  reminders: ReminderRow;
  studio_notes: StudioNoteRow;
  member_joins: MemberJoinRow;
  link_codes: LinkCodeRow;
  erasures: ErasureRow;
}
