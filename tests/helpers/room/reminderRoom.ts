import { onTestFinished } from 'vitest';
import type { Reply } from '../../../src/contract/contract.ts';
import type { Voice } from '../../../src/contract/desk.ts';
import { connectDiscord } from '../../../src/start/connectDiscord.ts';
import { startReminders, type Reminders } from '../../../src/reminders/startReminders.ts';
import { openStore, type Store } from '../../../src/store/openStore.ts';
import { instant, type MemberId } from '../../../src/studio/ids.ts';
import { handbook } from '../handbook.ts';
import { en } from '../../../src/words/en.ts';
import { DiscordDouble } from '../discord/discordDouble.ts';
import type { Person } from '../discord/discordWorld.ts';
import { openReminderStudio, type ReminderStudio } from './reminderStudio.ts';
import { settableClock, newLogbook } from '../store/storeFile.ts';

export interface ReminderRoom extends ReminderStudio {
  discord: DiscordDouble;
  store: Store;
  mara: { person: Person; id: MemberId };
  keeper: { person: Person; id: MemberId };
  logged: { level: string; about: object; message: string }[];
  set(at: number): void;
  /** Sends what is due at an instant. */
  tick(at: number): Promise<number>;
  /** Messages to somebody, oldest first. */
  told(person: Person): string[];
  inChannel(channel: string): string[];
  member(name: string, about?: Omit<Person, 'id' | 'name'>): Promise<{ person: Person; id: MemberId }>;
  /** Restarts the reminders on the same file, as another process; returns them. */
  restart(): Promise<void>;
}

/** Reminders on the stand-in for Discord, with the real client, desk and store, and a settable clock. */
export const openReminderRoom = async (more: Voice[] = []): Promise<ReminderRoom> => {
  const discord = await DiscordDouble.start();
  const clock = settableClock();
  const store = await openStore(await newLogbook(), { clock });
  const room = await openReminderStudio(store, discord.world.guildId);
  const logged: ReminderRoom['logged'] = [];
  const note = (level: string) => (about: object, message: string) =>
    void logged.push({ level, about, message });
  const log = { info: note('info'), warn: note('warn'), error: note('error') };
  const bot = await connectDiscord(
    { store, desk: room.desk, words: en, clock },
    { token: discord.token, api: discord.api },
    { log, draw: () => Promise.reject(new Error('no pictures here')), fatal: () => undefined },
  );
  const open = (): Promise<Reminders> =>
    startReminders(
      {
        queue: store.reminders,
        books: store.books,
        words: en,
        handbook,
        clock,
        log,
        voices: [bot.voice, ...more],
      },
      // The test calls tick() itself.
      { every: 1e8 },
    );
  let reminders = await open();
  const member: ReminderRoom['member'] = async (name, about = {}) => {
    const person = discord.person(name, about);
    return { person, id: await store.people.memberOf(room.studio, 'discord', person.id, name) };
  };
  onTestFinished(async () => {
    await reminders.stop();
    await bot.stop();
    await store.close();
    await discord.stop();
  });
  const directTo = ({ id }: Person) =>
    [...discord.world.channels.values()].find(({ recipient }) => recipient === id)?.id ?? 'none yet';
  const inChannel = (channel: string) => discord.messagesIn(channel).map(({ content }) => content);
  return {
    ...room,
    discord,
    store,
    logged,
    mara: await member('Mara'),
    keeper: await member('Tove', { manages: true }),
    member,
    set: clock.set,
    tick: (at) => {
      clock.set(at);
      return reminders.tick();
    },
    told: (person) => inChannel(directTo(person)),
    inChannel,
    restart: async () => {
      await reminders.stop();
      reminders = await open();
    },
  };
};

/** A platform voice that reaches everybody, for tests that are not about Discord. */
export const recordingVoice = (): Voice & { said: { to: MemberId; reply: Reply }[] } => {
  const said: { to: MemberId; reply: Reply }[] = [];
  return {
    said,
    speak: async (_studio, to, reply) => {
      said.push({ to, reply });
      return 'said';
    },
  };
};

export const at = (iso: string) => instant(Date.parse(iso));
