import {
  Client,
  DiscordjsError,
  DiscordjsErrorCodes,
  Events,
  GatewayDispatchEvents,
  Options,
  Status,
  type GatewayInteractionCreateDispatchData,
} from 'discord.js';
import { definedOnly } from '../../definedOnly.ts';
import type { Voice } from '../../contract/desk.ts';
import { DiscordProblem } from './discordProblem.ts';
import { failureOf, forLog } from '../failure.ts';
import type { Bot } from '../bot.ts';
import { discordVoice } from '../message/discordVoice.ts';
import { guardConnection } from './guardConnection.ts';
import { handleInteraction } from '../answer/handleInteraction.ts';
import type { DiscordPorts } from '../ports.ts';
import { registerCommands } from './registerCommands.ts';
import { within } from '../answer/within.ts';

export interface DiscordSettings {
  token: string;
  /** Registers the commands in this server only, where changes show at once. */
  devGuild?: string;
  /** The shards of this process, of so many in all, when several processes share the servers. */
  shards?: { ids: readonly number[]; of: number };
  api?: string;
}

export interface Discord {
  voice: Voice;
  /** Whether the gateway is connected now; the client reconnects by itself. */
  isConnected(): boolean;
  /** Waits for running commands, then disconnects. */
  stop(): Promise<void>;
}

/** For commands under way, and then for the connection: the program stops within five seconds. */
const GRACE = 2_200;
const GOODBYE = 600;

/** Connects to Discord and answers until stopped. If it cannot connect, it cleans up after itself. */
export const startDiscord = async (
  { token, devGuild, api, shards }: DiscordSettings,
  ports: DiscordPorts,
): Promise<Discord> => {
  const client = new Client({
    // Interactions need no gateway intents: the bot reads no messages and lists no members.
    intents: [],
    // As many shards as Discord asks for: beyond 2,500 servers it rejects a single connection.
    ...(shards === undefined ? { shards: 'auto' } : { shards: [...shards.ids], shardCount: shards.of }),
    makeCache: Options.cacheWithLimits({
      ...Options.DefaultMakeCacheSettings,
      MessageManager: 0,
      UserManager: 0,
    }),
    // The client keeps a queue for each interaction that it answered, for an hour if it is not told otherwise.
    rest: { handlerSweepInterval: 10_000, ...definedOnly({ api }) },
  });
  let fail: (why: DiscordProblem) => void = () => undefined;
  const failed = new Promise<never>((_, reject) => (fail = reject));
  failed.catch(() => undefined);
  const unguard = guardConnection(client, ports.log, fail);
  const underWay = new Set<Promise<void>>();
  const ready = new Promise<Client<true>>((resolve) => client.once(Events.ClientReady, resolve));
  const bot = ready.then(({ application }): Bot => ({
    rest: client.rest,
    application: application.id,
    ports,
  }));
  // Uses the raw payload: it has one shape for every kind of interaction, and no cache.
  client.ws.on(
    GatewayDispatchEvents.InteractionCreate,
    (interaction: GatewayInteractionCreateDispatchData) => {
      const handled = bot
        .then((one) => handleInteraction(one, interaction))
        .catch((error: unknown) => ports.log.error(forLog(error), 'skipped what Discord sent'))
        .finally(() => underWay.delete(handled));
      underWay.add(handled);
    },
  );
  const leave = async (): Promise<void> => {
    client.ws.removeAllListeners(GatewayDispatchEvents.InteractionCreate);
    unguard();
    await within(GRACE, Promise.allSettled(underWay));
    await within(GOODBYE, Promise.allSettled([client.destroy()]));
    // If it is stopped between retries, the client would retry all the same and come online later.
    client.ws.shards.clear();
  };
  try {
    await Promise.race([client.login(token), failed]);
    const { application } = await Promise.race([bot, failed]);
    await registerCommands(client.rest, application, devGuild, ports).catch((error: unknown) =>
      ports.log.error(forLog(error), 'could not register the commands; those of before stay'),
    );
  } catch (error) {
    await leave();
    throw problemOf(error);
  }
  failed.catch(ports.fatal);
  return {
    voice: discordVoice(client.rest, ports),
    isConnected: () => client.ws.shards.every(({ status }) => status === Status.Ready),
    stop: leave,
  };
};

const problemOf = (error: unknown): unknown => {
  if (error instanceof DiscordProblem) return error;
  if (error instanceof DiscordjsError && error.code === DiscordjsErrorCodes.TokenInvalid)
    return new DiscordProblem('token', { cause: error });
  return failureOf(error) === 'unreached' ? new DiscordProblem('unreachable', { cause: error }) : error;
};
