import type { DiscordPorts, StudioId } from '../ports.ts';

/** What pressing something does with its line: run it, open its form, or fill the form that it was opened with. */
export type Press = 'run' | 'edit' | 'form';

/** Where a message is shown: in a server, which tells the studio, or directly, where the id must. */
export interface Place {
  studio: StudioId;
  direct: boolean;
}

const LETTERS: Record<Press, string> = { run: 'r', edit: 'e', form: 'f' };
const MOST = 100;

/** The id of a button, menu row or form: the line itself where it fits, else the id under which it is held. */
export const pressId = async (
  press: Press,
  line: string,
  { studio, direct }: Place,
  { held }: DiscordPorts,
): Promise<string> => {
  const whole = `${LETTERS[press]}/${direct ? studio : ''}/${line}`;
  if (whole.length <= MOST) return whole;
  return `${LETTERS[press]}*${await held.hold(studio, line)}`;
};

/** The press behind an id, and the studio where the id tells it; undefined when it has expired or is none of ours. */
export const readPressId = async (
  id: string,
  { held }: DiscordPorts,
): Promise<{ press: Press; line: string; studio?: StudioId } | undefined> => {
  const [, letter, direct, line, key] = /^([ref])(?:\/([^/]*)\/(.*)|\*(.+))$/s.exec(id) ?? [];
  const press = (['run', 'edit', 'form'] as const).find((one) => LETTERS[one] === letter);
  if (press === undefined) return undefined;
  if (key !== undefined) {
    const found = await held.held(key);
    return found && { press, ...found };
  }
  if (line === undefined) return undefined;
  // An id comes back as this program made it, so that its studio is one.
  return { press, line, ...(direct ? { studio: direct as StudioId } : {}) };
};
