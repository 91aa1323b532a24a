import { createHash } from 'node:crypto';
import { Routes, type REST } from 'discord.js';
import type { DiscordPorts } from '../ports.ts';
import { messageCommands } from '../render/messageCommands.ts';
import { slashCommands } from '../render/slashCommands.ts';

/**
 * Registers the commands, in one server or globally, if they changed since the last time. Discord has a daily limit on
 * creating commands, so a restart must not register them again.
 */
export const registerCommands = async (
  rest: REST,
  application: string,
  guild: string | undefined,
  { desk, words, registered, log }: DiscordPorts,
): Promise<void> => {
  const commands = [...slashCommands(desk.commands, words), ...messageCommands(desk.commands)];
  const scope = `${application}/${guild ?? 'everywhere'}`;
  const hash = createHash('sha256').update(JSON.stringify(commands)).digest('base64url');
  if ((await registered.hash(scope)) === hash) return;
  const route =
    guild === undefined
      ? Routes.applicationCommands(application)
      : Routes.applicationGuildCommands(application, guild);
  await rest.put(route, { body: commands });
  await registered.keep(scope, hash);
  log.info({ scope, commands: commands.length }, 'registered the commands with Discord');
};
