import {
  ApplicationCommandType,
  ApplicationIntegrationType,
  InteractionContextType,
  type RESTPostAPIContextMenuApplicationCommandsJSONBody,
} from 'discord.js';
import type { Command } from '../../contract/contract.ts';
import { leafAt } from '../../contract/parseLine.ts';
import { discordWords } from '../../words/platform/discordWords.ts';

/** The command that understands plain words. */
export const plainPath = ['say'] as const;

/** The commands in a message's own menu. Discord sends the one message that a member chose, and no others. */
export const messageCommands = (commands: Command[]): RESTPostAPIContextMenuApplicationCommandsJSONBody[] =>
  leafAt(commands, plainPath)
    ? [
        {
          type: ApplicationCommandType.Message,
          name: discordWords.logMessage,
          contexts: [InteractionContextType.Guild],
          integration_types: [ApplicationIntegrationType.GuildInstall],
        },
      ]
    : [];
