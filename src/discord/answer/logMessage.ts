import type { APIMessage, APIMessageApplicationCommandInteraction } from 'discord.js';
import { leafAt } from '../../contract/parseLine.ts';
import { discordWords } from '../../words/platform/discordWords.ts';
import type { Bot } from '../bot.ts';
import { plainPath } from '../render/messageCommands.ts';
import { answerCommand } from './answerCommand.ts';
import { identify } from './identify.ts';

/** Why a message cannot be read, as discordWords says it. */
type Unreadable = 'changed' | 'fromBot' | 'picture' | 'noWords';

/** A message’s words and when it was written; otherwise why it has none. */
const wordsOf = (message: APIMessage | undefined): { words: string; when: string } | Unreadable => {
  if (!message) return 'changed';
  if (message.author.bot === true) return 'fromBot';
  const words = message.content.trim();
  if (words === '') return message.attachments.length > 0 ? 'picture' : 'noWords';
  return { words, when: message.timestamp };
};

/** “Log as a reading”, chosen from a message's menu: a draft for whoever chose it, as of when the message was written. */
export const logMessage = async (
  bot: Bot,
  interaction: APIMessageApplicationCommandInteraction,
  sayPrivately: (content: string) => Promise<unknown>,
): Promise<void> => {
  const { desk } = bot.ports;
  const { name, target_id: target, resolved } = interaction.data;
  const leaf = leafAt(desk.commands, plainPath);
  if (!leaf || name !== discordWords.logMessage) return void (await sayPrivately(discordWords.changed));
  const who = await identify(interaction, undefined, bot);
  if (typeof who === 'string') return void (await sayPrivately(discordWords[who]));
  const read = wordsOf(resolved.messages[target]);
  if (typeof read === 'string') return void (await sayPrivately(discordWords[read]));
  const line = { path: [...plainPath], typed: { words: read.words, when: read.when } };
  await answerCommand(bot, { interaction, who, line, leaf, key: `discord:${interaction.id}` });
};
