import { Events, type Client } from 'discord.js';
import { forLog } from '../failure.ts';
import type { DiscordPorts } from '../ports.ts';

/**
 * Watches for a connection that will not come back: the client then stays alive and deaf, so that the
 * process has to end. Returns how to stop watching.
 */
export const guardConnection = (client: Client, { log, fatal }: DiscordPorts): (() => void) => {
  client.on(Events.ShardError, (error) => log.warn(forLog(error), 'the connection to Discord had an error'));
  client.on(Events.ShardReconnecting, () => log.info({}, 'reconnecting to Discord'));
  client.on(Events.ShardResume, () => log.info({}, 'resumed the session with Discord'));
  client.on(Events.Error, (error) => log.error(forLog(error), 'the Discord client had an error'));
  client.on(Events.Warn, (warning) => log.warn({ warning }, 'the Discord client warns'));
  client.on(Events.ShardDisconnect, ({ code }) => fatal(`Discord closed the connection for good (${code})`));
  client.on(Events.Invalidated, () => fatal('Discord ended the session for good'));
  const stray = (error: unknown): void => {
    if (isLostWhileResuming(error))
      log.warn(forLog(error), 'the session ended just after it was resumed; a new one follows');
    else fatal(`something went wrong that nobody handled: ${String(error)}`);
  };
  process.on('unhandledRejection', stray);
  return () => {
    process.removeListener('unhandledRejection', stray);
    client.removeAllListeners(Events.ShardDisconnect);
  };
};

/** The client trips over a session that ends in the moment of its resumption, and then connects anew all the same. */
const isLostWhileResuming = (error: unknown): boolean =>
  error instanceof TypeError && error.message.includes("reading 'sequence'");
