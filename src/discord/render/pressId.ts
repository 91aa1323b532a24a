import { createHash } from 'node:crypto';
import type { DiscordPorts, StudioId } from '../ports.ts';

/** What a press does with its line: run it, open its form, or submit that form. */
export type Press = 'run' | 'edit' | 'form';

/** Where a message is shown: in a server, which tells the studio, or as a direct message, where the id must tell it. */
export interface Place {
  studio: StudioId;
  direct: boolean;
}

/**
 * The idempotency key of a press: a hash of the message, the user and the id. A button pressed twice, or again after a
 * lost answer, runs once. Only the hash is stored, because an id may hold a member's words.
 */
export const pressKey = (message: string, user: string, id: string): string =>
  `discord:${message}:${user}:${createHash('sha256').update(id).digest('base64url').slice(0, 22)}`;

const LETTERS: Record<Press, string> = { run: 'r', edit: 'e', form: 'f' };
const MOST = 100;

/**
 * The custom id of a button, menu row or form: the line itself if it fits, otherwise the id under which it is stored. A
 * form's id also has the interaction that opened it.
 */
export const pressId = (
  press: Press,
  line: string,
  { studio, direct }: Place,
  { held }: DiscordPorts,
  opened?: string,
): string => {
  const begin = opened === undefined ? LETTERS[press] : `${LETTERS[press]}${opened}`;
  const whole = `${begin}/${direct ? studio : ''}/${line}`;
  if (whole.length <= MOST) return whole;
  return `${begin}*${held.hold(studio, line)}`;
};

/**
 * Parses a custom id into its press, and its studio if the id has one. Undefined when it has expired or is not ours.
 */
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
  // Discord returns ids unchanged, so that the studio is the one written by this program.
  return { press, line, ...opened, ...(direct ? { studio: direct as StudioId } : {}) };
};
