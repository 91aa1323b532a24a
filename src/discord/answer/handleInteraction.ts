import {
  ComponentType,
  InteractionResponseType as Callback,
  InteractionType,
  type APIApplicationCommandAutocompleteInteraction,
  type APIChatInputApplicationCommandInteraction,
  type APIInteraction,
  type APIMessageComponentInteraction,
  type APIModalSubmitInteraction,
  ApplicationCommandType,
} from 'discord.js';
import type { Choice, Option } from '../../contract/contract.ts';
import { leafAt, parseLine } from '../../contract/parseLine.ts';
import { discordWords } from '../../words/platform/discordWords.ts';
import { forLog } from '../failure.ts';
import { answerCommand } from './answerCommand.ts';
import type { Bot } from '../bot.ts';
import { commandTyped } from './commandTyped.ts';
import { filledIn } from '../render/form.ts';
import { identify } from './identify.ts';
import { clipped } from '../render/markdown.ts';
import { openForm } from './openForm.ts';
import { pressKey, readPressId } from '../render/pressId.ts';
import { interactionResponder } from './interactionResponder.ts';

/** Answers whatever somebody did with the bot. It never throws: a bug is logged and answered. */
export const handleInteraction = async (bot: Bot, interaction: APIInteraction): Promise<void> => {
  try {
    switch (interaction.type) {
      case InteractionType.ApplicationCommand:
        if (interaction.data.type !== ApplicationCommandType.ChatInput) return;
        // The check above tells one kind of command from the others, which the type does not follow.
        return await typed(bot, interaction as APIChatInputApplicationCommandInteraction);
      case InteractionType.ApplicationCommandAutocomplete:
        return await complete(bot, interaction);
      case InteractionType.MessageComponent:
        return await pressed(bot, interaction);
      case InteractionType.ModalSubmit:
        return await submitted(bot, interaction);
      default:
        return;
    }
  } catch (error) {
    bot.ports.log.error({ ...forLog(error), interaction: interaction.id }, 'could not handle an interaction');
    await say(bot, interaction, discordWords.broken(interaction.id)).catch(() => undefined);
  }
};

const say = (bot: Bot, interaction: APIInteraction, content: string): Promise<unknown> =>
  interaction.type === InteractionType.ApplicationCommandAutocomplete
    ? offer(bot, interaction, [])
    : interactionResponder(bot, interaction).answer(
        { content, rest: [], components: [], attachments: [], files: [] },
        true,
      );

const typed = async (bot: Bot, interaction: APIChatInputApplicationCommandInteraction): Promise<void> => {
  const { focused: _, ...line } = commandTyped(interaction.data.name, interaction.data.options ?? []);
  const leaf = leafAt(bot.ports.desk.commands, line.path);
  if (!leaf) return void (await say(bot, interaction, discordWords.changed));
  const who = await identify(interaction, undefined, bot.ports);
  if (!who) return void (await say(bot, interaction, discordWords.serverOnly));
  const used = { interaction, who, line, leaf, key: keyOf(interaction.id) };
  await (leaf.form && Object.keys(line.typed).length === 0 ? openForm(bot, used) : answerCommand(bot, used));
};

const pressed = async (bot: Bot, interaction: APIMessageComponentInteraction): Promise<void> => {
  const { data } = interaction;
  const id = data.component_type === ComponentType.Button ? data.custom_id : (data.values[0] ?? '');
  await follow(bot, interaction, id, {});
};

const submitted = (bot: Bot, interaction: APIModalSubmitInteraction): Promise<void> =>
  follow(bot, interaction, interaction.data.custom_id, filledIn(interaction.data));

/** Does what the id of a button, menu row or form stands for, with what was filled in. */
const follow = async (
  bot: Bot,
  interaction: APIMessageComponentInteraction | APIModalSubmitInteraction,
  id: string,
  filled: Record<string, string>,
): Promise<void> => {
  const { ports } = bot;
  const press = await readPressId(id, ports);
  const parsed = press && parseLine(press.line, ports.desk.commands);
  const leaf = parsed?.ok === true ? leafAt(ports.desk.commands, parsed.value.path) : undefined;
  if (!press || parsed?.ok !== true || !leaf) return void (await say(bot, interaction, discordWords.tooOld));
  const who = await identify(interaction, press.studio, ports);
  if (!who) return void (await say(bot, interaction, discordWords.serverOnly));
  const options = Object.entries({ ...parsed.value.typed, ...filled }).filter(([, value]) => value !== '');
  const line = { ...parsed.value, typed: Object.fromEntries(options) };
  const used = { interaction, who, leaf, line, key: actKey(interaction, id, press.opened) };
  await (press.press === 'edit' ? openForm(bot, used) : answerCommand(bot, used));
};

const keyOf = (interaction: string): string => `discord:${interaction}`;

/** A button that is pressed again, and a form that is sent again, are the same act: the platform gives each an id of its own. */
const actKey = (
  interaction: APIMessageComponentInteraction | APIModalSubmitInteraction,
  id: string,
  opened: string | undefined,
): string => {
  if (interaction.type === InteractionType.ModalSubmit) return keyOf(opened ?? interaction.id);
  const user = interaction.member?.user ?? interaction.user;
  return pressKey(interaction.message.id, user?.id ?? '', id);
};

const complete = async (
  bot: Bot,
  interaction: APIApplicationCommandAutocompleteInteraction,
): Promise<void> => {
  const { desk, clock } = bot.ports;
  const { focused, ...line } = commandTyped(interaction.data.name, interaction.data.options);
  const option = focused === undefined ? undefined : leafAt(desk.commands, line.path)?.options[focused];
  const who = await identify(interaction, undefined, bot.ports);
  if (!who || focused === undefined || !option) return void (await offer(bot, interaction, []));
  const request = { ...who, ...line, key: `discord:${interaction.id}`, now: clock.now() };
  const listed = matching(option, line.typed[focused] ?? '');
  await offer(bot, interaction, listed ?? (await desk.suggest(request, focused)));
};

/** A list of set values that is too long to be registered is narrowed by what was typed. */
const matching = ({ kind }: Option<unknown>, start: string): Choice[] | undefined =>
  kind.suggest === undefined && typeof kind.control === 'object'
    ? kind.control.pick.filter(({ name }) => name.toLowerCase().includes(start.toLowerCase()))
    : undefined;

const ROWS = 25;

const offer = (
  bot: Bot,
  interaction: APIApplicationCommandAutocompleteInteraction,
  choices: Choice[],
): Promise<unknown> =>
  interactionResponder(bot, interaction).raw({
    type: Callback.ApplicationCommandAutocompleteResult,
    data: {
      choices: choices
        .filter(({ name, value }) => name !== '' && value !== '' && value.length <= 100)
        .slice(0, ROWS)
        .map(({ name, value }) => ({ name: clipped(name, 100), value })),
    },
  });
