import {
  ComponentType,
  InteractionResponseType as Callback,
  InteractionType,
  type APIApplicationCommandAutocompleteInteraction,
  type APIChatInputApplicationCommandInteraction,
  type APIInteraction,
  type APIMessageApplicationCommandInteraction,
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
import { logMessage } from './logMessage.ts';
import { openForm } from './openForm.ts';
import { pressKey, readPressId } from '../render/pressId.ts';
import { textAlone } from '../render/renderReply.ts';
import { interactionResponder } from './interactionResponder.ts';

/** Handles any interaction. It never throws: a bug is logged and answered. */
export const handleInteraction = async (bot: Bot, interaction: APIInteraction): Promise<void> => {
  try {
    switch (interaction.type) {
      case InteractionType.ApplicationCommand:
        // The type of the data tells the type of the interaction, but TypeScript cannot infer that.
        if (interaction.data.type === ApplicationCommandType.ChatInput)
          return await onCommand(bot, interaction as APIChatInputApplicationCommandInteraction);
        if (interaction.data.type === ApplicationCommandType.Message)
          return await logMessage(bot, interaction as APIMessageApplicationCommandInteraction, (content) =>
            sayPrivately(bot, interaction, content),
          );
        return;
      case InteractionType.ApplicationCommandAutocomplete:
        return await complete(bot, interaction);
      case InteractionType.MessageComponent:
        return await runPress(bot, interaction, pressedId(interaction), {});
      case InteractionType.ModalSubmit:
        return await runPress(bot, interaction, interaction.data.custom_id, filledIn(interaction.data));
      default:
        return;
    }
  } catch (error) {
    bot.ports.log.error({ ...forLog(error), interaction: interaction.id }, 'could not handle an interaction');
    await sayPrivately(bot, interaction, discordWords.broken(interaction.id)).catch(() => undefined);
  }
};

const sayPrivately = (bot: Bot, interaction: APIInteraction, content: string): Promise<unknown> =>
  interaction.type === InteractionType.ApplicationCommandAutocomplete
    ? offer(bot, interaction, [])
    : interactionResponder(bot, interaction).answer(textAlone(content), true);

const onCommand = async (bot: Bot, interaction: APIChatInputApplicationCommandInteraction): Promise<void> => {
  const { focused: _, ...line } = commandTyped(interaction.data.name, interaction.data.options ?? []);
  const leaf = leafAt(bot.ports.desk.commands, line.path);
  if (!leaf) return void (await sayPrivately(bot, interaction, discordWords.changed));
  const who = await identify(interaction, undefined, bot);
  if (typeof who === 'string') return void (await sayPrivately(bot, interaction, discordWords[who]));
  const used = { interaction, who, line, leaf, key: keyOf(interaction.id) };
  await (leaf.form && Object.keys(line.typed).length === 0 ? openForm(bot, used) : answerCommand(bot, used));
};

const pressedId = ({ data }: APIMessageComponentInteraction): string =>
  data.component_type === ComponentType.Button ? data.custom_id : (data.values[0] ?? '');

/** Runs what the id of a button, select menu or form stands for, with the form's values. */
const runPress = async (
  bot: Bot,
  interaction: APIMessageComponentInteraction | APIModalSubmitInteraction,
  id: string,
  filled: Record<string, string>,
): Promise<void> => {
  const { ports } = bot;
  const press = await readPressId(id, ports);
  const parsed = press && parseLine(press.line, ports.desk.commands);
  const leaf = parsed?.ok === true ? leafAt(ports.desk.commands, parsed.value.path) : undefined;
  if (!press || parsed?.ok !== true || !leaf)
    return void (await sayPrivately(bot, interaction, discordWords.tooOld));
  const who = await identify(interaction, press.studio, bot);
  if (typeof who === 'string') return void (await sayPrivately(bot, interaction, discordWords[who]));
  // An id that was made for another studio: its line may hold that studio's words.
  if (press.studio !== undefined && press.studio !== who.studio)
    return void (await sayPrivately(bot, interaction, discordWords.tooOld));
  const options = Object.entries({ ...parsed.value.typed, ...filled }).filter(([, value]) => value !== '');
  const line = { ...parsed.value, typed: Object.fromEntries(options) };
  const used = { interaction, who, leaf, line, key: actKey(interaction, id, press.opened) };
  await (press.press === 'edit' ? openForm(bot, used) : answerCommand(bot, used));
};

const keyOf = (interaction: string): string => `discord:${interaction}`;

/**
 * The idempotency key of a press or form. A button pressed again and a form sent again have new interaction ids, but
 * they are the same act.
 */
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
  const who = await identify(interaction, undefined, bot);
  if (typeof who === 'string' || focused === undefined || !option)
    return void (await offer(bot, interaction, []));
  const request = { ...who, ...line, key: keyOf(interaction.id), now: clock.now() };
  const listed = matching(option, line.typed[focused] ?? '');
  await offer(bot, interaction, listed ?? (await desk.suggest(request, focused)));
};

/** A list of choices that is too long to register is filtered by what was typed. */
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
