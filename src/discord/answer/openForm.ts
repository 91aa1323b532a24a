import { InteractionResponseType as Callback } from 'discord.js';
import { printLine } from '../../contract/parseLine.ts';
import type { Bot } from '../bot.ts';
import type { Used } from './answerCommand.ts';
import { form } from '../render/form.ts';
import { pressId } from '../render/pressId.ts';
import { interactionResponder } from './interactionResponder.ts';

export const openForm = async (bot: Bot, { interaction, who, line, leaf }: Used): Promise<void> => {
  const { desk, words, clock } = bot.ports;
  const place = { studio: who.studio, direct: interaction.guild_id === undefined };
  const asked = printLine(line.path, line.typed, line.after);
  const request = { ...who, ...line, key: `discord:${interaction.id}`, now: clock.now() };
  const opened = await form(
    pressId('form', asked, place, bot.ports, interaction.id),
    `/${line.path.join(' ')}`,
    leaf,
    line.typed,
    words,
    (option) => desk.suggest({ ...request, typed: { ...line.typed, [option]: '' } }, option),
  );
  await interactionResponder(bot, interaction).raw({ type: Callback.Modal, data: opened });
};
