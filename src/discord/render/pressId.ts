import { createHash } from 'node:crypto';
import type { DiscordPorts, StudioId } from '../ports.ts';

/** What pressing something does with its line: run it, open its form, or fill the form that it was opened with. */
export type Press = 'run' | 'edit' | 'form';

/** Where a message is shown: in a server, which tells the studio, or directly, where the id must. */
export interface Place {
  studio: StudioId;
  direct: boolean;
}

/**
 * What a repeat of the same press shares: the message, who pressed, and what. Pressed again because its answer got
 * lost, or twice by a wet thumb, it is carried out once. Only a fingerprint of what is kept: it may hold a member's words.
 */
export const pressKey = (message: string, user: string, id: string): string =>
  `discord:${message}:${user}:${createHash('sha256').update(id).digest('base64url').slice(0, 22)}`;

const LETTERS: Record<Press, string> = { run: 'r', edit: 'e', form: 'f' };
const MOST = 100;

/**
 * The id of a button, menu row or form: the line itself where it fits, else the id under which it is held; a form's has
 * the interaction that opened it, too.
 */
export const pressId = async (
  press: Press,
  line: string,
  { studio, direct }: Place,
  { held }: DiscordPorts,
  opened?: string,
): Promise<string> => {
  const begin = opened === undefined ? LETTERS[press] : `${LETTERS[press]}${opened}`;
  const whole = `${begin}/${direct ? studio : ''}/${line}`;
  if (whole.length <= MOST) return whole;
  return `${begin}*${await held.hold(studio, line)}`;
};

/** The press behind an id, and the studio where the id tells it; undefined when it has expired or is none of ours. */
export const readPressId = async (
  id: string,
  { held }: DiscordPorts,
): Promise<{ press: Press; line: string; studio?: StudioId; opened?: string } | undefined> => {
  const [, letter, by, direct, line, key] = /^([ref])(\d*)(?:\/([^/]*)\/(.*)|\*(.+))$/s.exec(id) ?? [];
  const press = (['run', 'edit', 'form'] as const).find((one) => LETTERS[one] === letter);
  if (press === undefined) return undefined;
  const opened = by ? { opened: by } : {};
  if (key !== undefined) {
    const found = await held.held(key);
    return found && { press, ...found, ...opened };
  }
  if (line === undefined) return undefined;
  // An id comes back as this program made it, so that its studio is one.
  return { press, line, ...opened, ...(direct ? { studio: direct as StudioId } : {}) };
};
