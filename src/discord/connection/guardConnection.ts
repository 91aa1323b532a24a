import { type Client, Events, GatewayCloseCodes } from 'discord.js';
import type { Log } from '../../contract/log.ts';
import { DiscordProblem } from './discordProblem.ts';
import { forLog } from '../failure.ts';

/** The client tries again twice a second for ever; after so many it is left to those who wait longer each time. */
const MOST_TRIES = 5;

/**
 * Watches for a connection that will not come back: the client then stays alive and deaf. Returns how to stop
 * watching.
 */
export const guardConnection = (
  client: Client,
  log: Log,
  lost: (why: DiscordProblem) => void,
): (() => void) => {
  let watching = true;
  const end = (...why: ConstructorParameters<typeof DiscordProblem>): void => {
    if (watching) lost(new DiscordProblem(...why));
    watching = false;
  };
  const tries = new Map<number, number>();
  client.on(Events.ShardReconnecting, (shard) => {
    if (!watching) return;
    const tried = (tries.get(shard) ?? 0) + 1;
    tries.set(shard, tried);
    log.info({ tried }, 'reconnecting to Discord');
    if (tried > MOST_TRIES) end('unreachable');
  });
  client.on(Events.ShardReady, (shard) => tries.delete(shard));
  client.on(Events.ShardResume, (shard) => {
    tries.delete(shard);
    log.info({}, 'resumed the session with Discord');
  });
  client.on(Events.ShardError, (error) => log.warn(forLog(error), 'the connection to Discord had an error'));
  client.on(Events.Error, (error) => log.error(forLog(error), 'the Discord client had an error'));
  client.on(Events.Warn, (warning) => log.warn({ warning }, 'the Discord client warns'));
  client.on(Events.ShardDisconnect, ({ code }) =>
    end(code === GatewayCloseCodes.AuthenticationFailed ? 'token' : 'ended', { code }),
  );
  client.on(Events.Invalidated, () => end('ended'));
  return () => (watching = false);
};
