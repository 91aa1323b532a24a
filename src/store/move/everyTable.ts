import type { Tables } from '../migrations/tables.ts';

/** Every table with its key, those first that others refer to. */
const keys = {
  studios: ['id'],
  members: ['studio_id', 'id'],
  studio_identities: ['platform', 'external_id'],
  member_identities: ['studio_id', 'platform', 'external_id'],
  member_joins: ['studio_id', 'member_id'],
  streams: ['studio_id', 'stream_no'],
  events: ['studio_id', 'stream_no', 'seq'],
  notes: ['studio_id', 'stream_no', 'seq'],
  studio_notes: ['studio_id', 'no'],
  open_questions: ['studio_id', 'no'],
  replies: ['studio_id', 'key'],
  held_lines: ['id'],
  reminders: ['id'],
  room_claims: ['studio_id', 'name_key'],
  room_sessions: ['hash'],
  room_codes: ['hash'],
  room_posts: ['studio_id', 'no'],
  link_codes: ['studio_id', 'member_id'],
  wrong_codes: ['id'],
  daily_entries: ['studio_id', 'member_id', 'day'],
  erasures: ['id'],
  tries: ['studio_id', 'key'],
  shown_once: ['studio_id', 'no'],
  kept: ['name'],
} as const satisfies Record<keyof Tables, readonly string[]>;

export interface TableName {
  name: string;
  key: readonly string[];
  /** Numbered by the database: a copy gets numbers of its own, in the same order. */
  isNumbered: boolean;
}

const numbered: ReadonlySet<string> = new Set(['reminders', 'wrong_codes', 'erasures']);

export const everyTable: readonly TableName[] = Object.entries(keys).map(([name, key]) => ({
  name,
  key,
  isNumbered: numbered.has(name),
}));
