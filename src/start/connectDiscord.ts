import { definedOnly } from '../definedOnly.ts';
import type { App } from './app.ts';
import { startDiscord, type Discord, type DiscordSettings } from '../discord/connection/startDiscord.ts';
import type { DiscordPorts } from '../discord/ports.ts';
import { days, later } from '../studio/ids.ts';

/** How long buttons with a stored line work. */
const heldLineLifetime = days(30);

export const connectDiscord = (
  { store, desk, words, clock }: Pick<App, 'store' | 'desk' | 'words' | 'clock'>,
  { servers, ...settings }: DiscordSettings & { servers?: 'off' | readonly string[] },
  { log, draw, fatal }: Pick<DiscordPorts, 'log' | 'draw' | 'fatal'>,
): Promise<Discord> => {
  const { books, people, heldLines, kept } = store;
  return startDiscord(settings, {
    desk,
    words,
    clock,
    log,
    people,
    async admits(server) {
      if (servers === undefined) return true;
      return servers === 'off'
        ? (await people.studioKnownAs('discord', server)) !== undefined
        : servers.includes(server);
    },
    serverOf: (studio) => people.externalOfStudio(studio, 'discord'),
    async isKeeper(studio, member, roles) {
      const { keepers, keeperRole } = await books.studio(studio);
      return keepers.includes(member) || (keeperRole !== undefined && roles.includes(keeperRole));
    },
    async addressOf(studio, member) {
      const user = await people.externalOf(studio, member, 'discord');
      const { channel, inChannel } = await books.studio(studio);
      return {
        ...definedOnly({ user, channel }),
        inChannel: inChannel.includes(member),
      };
    },
    channelOf: async (studio) => (await books.studio(studio)).channel,
    held: {
      hold: (studio, line) => heldLines.hold(studio, line, later(clock.now(), heldLineLifetime)),
      held: (id) => heldLines.held(id, clock.now()),
    },
    registered: { hash: (scope) => kept.get(scope), keep: (scope, hash) => kept.set(scope, hash) },
    draw,
    fatal,
  });
};
