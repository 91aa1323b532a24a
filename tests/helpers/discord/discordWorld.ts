import type { APIMessage, APIUser, InteractionType, Locale, UserFlags } from 'discord.js';
import type { Fields, SentFile } from './discordBody.ts';

/** A Discord user. */
export interface Person {
  id: string;
  name: string;
  nick?: string;
  locale?: Locale;
  roles?: string[];
  /** May manage the server. */
  manages?: boolean;
  /** No longer on the server. */
  left?: boolean;
  /** Does not accept direct messages from the bot. */
  dmClosed?: boolean;
}

export interface Channel {
  id: string;
  kind: 'server' | 'dm';
  recipient?: string;
  forbidden?: boolean;
  deleted?: boolean;
}

/** One interaction, and everything that came of it. */
export interface Interaction {
  id: string;
  token: string;
  type: InteractionType;
  by: Person;
  channel: string;
  createdAt: number;
  /** The message whose button or menu was pressed. */
  message: string | undefined;
  acknowledged: Fields | undefined;
  acknowledgedAt: number | undefined;
  original: string | undefined;
  /** Whether it still shows "thinking…". */
  waiting: boolean;
  followUps: string[];
}

export interface StoredMessage {
  message: APIMessage;
  files: SentFile[];
  ephemeral: boolean;
  allowedMentions: Fields;
}

export interface World {
  applicationId: string;
  guildId: string;
  bot: APIUser;
  /** How far this clock is ahead, in milliseconds, so that fifteen minutes can pass at once. */
  ahead: number;
  /** Whether bodies are checked against the rules. */
  checks: boolean;
  channels: Map<string, Channel>;
  people: Map<string, Person>;
  interactions: Map<string, Interaction>;
  messages: Map<string, StoredMessage>;
  nonces: Map<string, { id: string; at: number }>;
  /** Registered commands by scope: a guild's id or `global`. */
  commands: Map<string, Fields[]>;
}

const NO_FLAGS = 0 as UserFlags;
const EPOCH = 1_420_070_400_000n;
let counter = 0n;

/** A Discord id: its upper bits are the time. */
export const snowflake = (at: number): string =>
  (((BigInt(Math.floor(at)) - EPOCH) << 22n) | (counter++ & 0x3fffffn)).toString();

export const user = (id: string, name: string, bot = false): APIUser => ({
  id,
  username: name,
  discriminator: '0',
  global_name: name,
  avatar: null,
  bot,
  public_flags: NO_FLAGS,
  flags: NO_FLAGS,
  primary_guild: null,
});

export const nowIn = (world: World): number => Date.now() + world.ahead;

export const newWorld = (): World => {
  const at = Date.now();
  const applicationId = snowflake(at);
  return {
    applicationId,
    guildId: snowflake(at),
    bot: user(applicationId, 'glaze-room', true),
    ahead: 0,
    checks: true,
    channels: new Map(),
    people: new Map(),
    interactions: new Map(),
    messages: new Map(),
    nonces: new Map(),
    commands: new Map(),
  };
};
