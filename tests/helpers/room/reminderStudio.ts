import type { Desk } from '../../../src/contract/desk.ts';
import { openDesk } from '../../../src/desk/dispatch.ts';
import { speak } from '../../../src/desk/speak.ts';
import { commands } from '../../../src/start/registry.ts';
import type { Store } from '../../../src/store/openStore.ts';
import { instant, type MemberId, type Role, type StudioId } from '../../../src/studio/ids.ts';
import { handbook } from '../handbook.ts';
import { en } from '../../../src/words/en.ts';

export interface ReminderStudio {
  desk: Desk;
  studio: StudioId;
  /** Runs a line at an instant; throws if it is refused. */
  say(member: MemberId, at: number, line: string, role?: Role): Promise<string>;
}

/** The real desk for a Discord server's studio, without quiet hours. */
export const openReminderStudio = async (store: Store, guildId: string): Promise<ReminderStudio> => {
  const studio = await store.people.studioOf('discord', guildId, 'Wrackline Clay Co-op');
  const report = (error: unknown) => {
    throw error;
  };
  const desk = openDesk({ commands, books: store.books, words: en, handbook, report });
  let lines = 0;
  const say: ReminderStudio['say'] = async (member, at, line, role = 'member') => {
    const speaker = { studio, member, role, now: instant(at) };
    const reply = await speak(line, `test:${++lines}`, speaker, { desk, words: en });
    if (reply.kind !== 'answer') throw new Error(`${line}: ${JSON.stringify(reply.title)}`);
    return JSON.stringify(reply.data);
  };
  return { desk, studio, say };
};
