import type { LoggedEvent } from './ports.ts';
import { erasedMark } from '../people/withoutWords.ts';

/**
 * A forgotten member's own event, without what they called their pots and without their name in what else they typed.
 * Numbers, buckets and the studio's own names stay, so every fold gives the same result.
 */
export const eventWithoutWords = (event: LoggedEvent, name: RegExp | undefined): LoggedEvent => {
  const mended = (text: string) => (name ? text.replace(name, erasedMark) : text);
  switch (event.kind) {
    case 'on':
      return { ...event, pieces: erasedMark };
    case 'piece':
      return {
        ...event,
        piece: {
          ...event.piece,
          name: erasedMark,
          ...(event.piece.body !== undefined && { body: mended(event.piece.body) }),
        },
      };
    case 'deflocculant':
      return { ...event, what: mended(event.what) };
    case 'hold':
      return { ...event, why: mended(event.why) };
    case 'tile':
      return event.body === undefined ? event : { ...event, body: mended(event.body) };
    case 'fired': {
      const { body, kiln, ...fired } = event.fired;
      return {
        ...event,
        fired: {
          ...fired,
          ...(body !== undefined && { body: mended(body) }),
          ...(kiln !== undefined && { kiln: mended(kiln) }),
        },
      };
    }
    case 'addition': {
      const { added, brings } = event;
      return {
        ...event,
        ...(added.what === 'other' &&
          added.name !== undefined && { added: { ...added, name: mended(added.name) } }),
        ...(brings?.hold && {
          brings: { ...brings, hold: { ...brings.hold, why: mended(brings.hold.why) } },
        }),
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
