import type { LoggedEvent } from './ports.ts';
import { erasedMark } from '../people/withoutWords.ts';

/** The fields of events that hold names people typed; all others hold numbers or words of our own. */
const typedFields = new Set([
  'name',
  'nick',
  'glaze',
  'recipe',
  'cup',
  'vessel',
  'why',
  'body',
  'bodies',
  'atmosphere',
  'kiln',
  'pieces',
]);

const valueWithoutName = (value: unknown, under: string, name: RegExp): unknown => {
  if (typeof value === 'string') return typedFields.has(under) ? value.replace(name, erasedMark) : value;
  if (Array.isArray(value)) return value.map((item) => valueWithoutName(item, under, name));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, item]) => [key, valueWithoutName(item, key, name)]),
  );
};

/** Takes a name out of what an event calls buckets, cups, sessions, recipes and pieces. */
export const eventWithoutName = (event: LoggedEvent, name: RegExp): LoggedEvent =>
  // Only strings are replaced, so the event keeps its shape.
  valueWithoutName(event, '', name) as LoggedEvent;
