import type { LoggedEvent } from './ports.ts';
import { erasedMark } from '../people/withoutWords.ts';

/**
 * A forgotten member's own event, without what they called their pots and without their name in what else they typed.
 * Numbers, buckets and the studio's own names stay, so every fold gives the same result.
 */
export const eventWithoutWords = (event: LoggedEvent, name: RegExp | undefined): LoggedEvent => {
  const mended = <T extends object>(whole: T, ...fields: (keyof T)[]): T =>
    fields.reduce((rest, field) => {
      const text = rest[field];
      return name && typeof text === 'string' ? { ...rest, [field]: text.replace(name, erasedMark) } : rest;
    }, whole);
  switch (event.kind) {
    case 'on':
      return { ...event, pieces: erasedMark };
    case 'piece':
      return { ...event, piece: { ...mended(event.piece, 'body'), name: erasedMark } };
    case 'deflocculant':
      return mended(event, 'what');
    case 'hold':
      return mended(event, 'why');
    case 'tile':
      return mended(event, 'body');
    case 'fired':
      return { ...event, fired: mended(event.fired, 'body', 'kiln') };
    case 'addition': {
      const { added, brings } = event;
      return {
        ...event,
        ...(added.what === 'other' && { added: mended(added, 'name') }),
        ...(brings?.hold && { brings: { ...brings, hold: mended(brings.hold, 'why') } }),
      };
    }
    default:
      return event;
  }
};

/** What somebody called their pots. Answers repeat it. */
export const labelOf = (event: LoggedEvent): string | undefined => {
  if (event.kind === 'on') return event.pieces;
  return event.kind === 'piece' ? event.piece.name : undefined;
};
