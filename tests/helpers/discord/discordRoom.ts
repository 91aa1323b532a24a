import { setTimeout as sleep } from 'node:timers/promises';
import { asks, logs, type Command, type Kind, type Reply } from '../../../src/contract/contract.ts';
import { openDesk } from '../../../src/desk/dispatch.ts';
import type { DiscordPorts } from '../../../src/discord/ports.ts';
import {
  type Discord,
  type DiscordSettings,
  startDiscord,
} from '../../../src/discord/connection/startDiscord.ts';
import { openStore, type Store } from '../../../src/store/openStore.ts';
import { days, instant, later, studioStream } from '../../../src/studio/ids.ts';
import { handbook } from '../handbook.ts';
import { en } from '../../../src/words/en.ts';
import { said, t } from '../../../src/words/text/text.ts';
import { newLogbook } from '../store/storeFile.ts';
import { DiscordDouble } from './discordDouble.ts';
import type { Place } from './discordInteraction.ts';
import { nowIn } from './discordWorld.ts';

/** An option type for tests: any text, with the given suggestions. */
export const anyText = (suggested?: string[]): Kind<string> => ({
  control: 'text',
  example: 'gull grey',
  read: (typed) => ({ ok: true, value: typed }),
  ...(suggested
    ? {
        suggest: async (typed) =>
          suggested.filter((one) => one.startsWith(typed)).map((one) => ({ name: one, value: one })),
      }
    : {}),
});

const wanted = (kind: Kind<string>) => ({ kind, needed: true as const, about: () => 'What to say' });
const optional = (kind: Kind<string>) => ({ kind, needed: false as const, about: () => 'What to say' });

const pick: Kind<string> = {
  ...anyText(),
  control: {
    pick: [
      { name: 'Water', value: 'water' },
      { name: 'Dry', value: 'dry' },
    ],
  },
};
const flag: Kind<string> = { ...anyText(), control: 'switch' };

/** Commands that cover what Discord must handle. What they log is a real entry. */
export const testCommands = (shown: Partial<Reply> = {}): Command[] => {
  const answer = (title: Reply['title']): Reply => ({ kind: 'answer', title, data: {}, ...shown });
  return [
    logs({
      name: 'pour',
      about: () => 'Say what you poured',
      who: 'member',
      options: {
        what: { ...wanted(pick) },
        amount: wanted(anyText()),
        bucket: optional(anyText(['gull grey', 'gorse'])),
        all: optional(flag),
      },
      form: ['what', 'amount', 'bucket'],
      async run({ what, amount, bucket }, { book, now, member }) {
        await book.logStudio({ kind: 'water', hard: true }, { at: now, loggedAt: now, by: member });
        const entries = await book.entries(studioStream, { most: 100 });
        return answer(
          t`Poured ${said(amount)} of ${said(what)} into ${said(bucket ?? 'a bucket')}: ${entries.length} in all.`,
        );
      },
    }),
    asks({
      name: 'look',
      about: () => 'Ask about a bucket',
      who: 'member',
      options: { bucket: wanted(anyText(['gull grey', 'gorse'])) },
      run: ({ bucket }, { role }) => Promise.resolve(answer(t`Looked at ${said(bucket)} as ${[role]}.`)),
    }),
    {
      name: 'odd',
      about: () => 'What seldom happens',
      leaves: [
        asks({
          name: 'slow',
          about: () => 'Takes its time and says so',
          who: 'member',
          options: {},
          slow: true,
          run: () => Promise.resolve(answer(t`Drawn.`)),
        }),
        asks({
          name: 'stuck',
          about: () => 'Takes its time and does not say so',
          who: 'member',
          options: {},
          run: async () => {
            await sleep(1_700);
            return answer(t`At last.`);
          },
        }),
        logs({
          name: 'refuse',
          about: () => 'Is announced to all, and refuses',
          who: 'member',
          options: {},
          slow: true,
          run: () => Promise.resolve({ kind: 'refusal', title: t`Not today.`, data: {} }),
        }),
        logs({
          name: 'break',
          about: () => 'Has a bug',
          who: 'member',
          options: {},
          run: () => Promise.reject(new Error('a planted bug')),
        }),
        asks({
          name: 'keepers',
          about: () => 'For keepers',
          who: 'keeper',
          options: {},
          run: () => Promise.resolve(answer(t`Hello, keeper.`)),
        }),
      ],
    },
  ];
};

/** A studio on the stand-in for Discord, with the real client, desk and store. */
export interface DiscordRoom {
  discord: DiscordDouble;
  bot: Discord;
  store: Store;
  file: string;
  ports: DiscordPorts;
  place: Place;
  /** Why the bot reported that its connection will not recover. */
  fatal: string[];
  logged: { level: string; about: object; message: string }[];
  entries(): Promise<number>;
  stop(): Promise<void>;
}

export const openDiscordRoom = async (
  commands: Command[] = testCommands(),
  settings: Partial<DiscordSettings> = {},
  more: Partial<DiscordPorts> = {},
): Promise<DiscordRoom> => {
  const discord = await DiscordDouble.start();
  const clock = { now: () => instant(nowIn(discord.world)) };
  const file = await newLogbook();
  const store = await openStore(file, { clock });
  const logged: DiscordRoom['logged'] = [];
  const note = (level: string) => (about: object, message: string) =>
    void logged.push({ level, about, message });
  const fatal: string[] = [];
  const { books, people, heldLines, kept } = store;
  const studio = await people.studioOf('discord', discord.world.guildId, 'Wrackline Clay Co-op');
  const ports: DiscordPorts = {
    desk: openDesk({
      commands,
      books,
      words: en,
      handbook,
      labels: {
        roomOf: () => undefined,
        print: async (sheet) => (await import('../../../src/labels/labelsPdf.ts')).labelsPdf(sheet),
      },
      report: () => 'bug-1',
    }),
    words: en,
    clock,
    log: { info: note('info'), warn: note('warn'), error: note('error') },
    people,
    admits: () => Promise.resolve(true),
    serverOf: (of) => people.externalOfStudio(of, 'discord'),
    isKeeper: (of, member, roles) =>
      books.read(of, async (book) => {
        const { keepers, keeperRole } = await book.studio();
        return keepers.includes(member) || (keeperRole !== undefined && roles.includes(keeperRole));
      }),
    addressOf: () => Promise.resolve({}),
    channelOf: () => Promise.resolve(undefined),
    held: {
      hold: (of, line) => heldLines.hold(of, line, later(clock.now(), days(30))),
      held: (id) => heldLines.held(id, clock.now()),
    },
    registered: {
      hash: (scope) => kept.get(`discord commands ${scope}`),
      keep: (scope, hash) => kept.set(`discord commands ${scope}`, hash),
    },
    draw: () => Promise.resolve(Buffer.from('png')),
    fatal: (why) => void fatal.push(String(why)),
    ...more,
  };
  const bot = await startDiscord({ token: discord.token, api: discord.api, ...settings }, ports);
  return {
    discord,
    bot,
    store,
    file,
    ports,
    fatal,
    logged,
    place: { by: discord.person('Mara'), channel: discord.channel() },
    entries: () =>
      books.read(studio, async (book) => (await book.entries(studioStream, { most: 100 })).length),
    stop: async () => {
      await bot.stop();
      await store.close();
      await discord.stop();
    },
  };
};
