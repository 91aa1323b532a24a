import type { LoggedEvent } from './ports.ts';
import { erasedMark } from '../people/withoutWords.ts';

/** Where an event has what somebody typed to call things by; all else in it is figures and words of ours. */
const typed = new Set(['name', 'nick', 'glaze', 'recipe', 'cup', 'why', 'body', 'kiln', 'pieces']);

const without = (value: unknown, under: string, name: RegExp): unknown => {
  if (typeof value === 'string') return typed.has(under) ? value.replace(name, erasedMark) : value;
  if (Array.isArray(value)) return value.map((item) => without(item, under, name));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, without(item, key, name)]));
};

/** Anybody's event without somebody's name in what buckets, cups, sessions, recipes and pieces are called. */
export const eventWithoutName = (event: LoggedEvent, name: RegExp): LoggedEvent =>
  // Only strings are exchanged: it has the shape that it had.
  without(event, '', name) as LoggedEvent;
