import {
  ApplicationCommandOptionType as OptionType,
  ApplicationCommandType,
  ApplicationIntegrationType,
  InteractionContextType,
  type APIApplicationCommandBasicOption,
  type APIApplicationCommandSubcommandOption,
  type RESTPostAPIChatInputApplicationCommandsJSONBody,
} from 'discord.js';
import { isGroup, type Command, type Leaf, type Option } from '../../contract/contract.ts';
import { discordWords } from '../../words/platform/discordWords.ts';
import { clipped } from './markdown.ts';
import type { Words } from '../ports.ts';

const MOST_CHOICES = 25;
const DESCRIPTION = 100;

type SlashCommand = RESTPostAPIChatInputApplicationCommandsJSONBody;

/** The commands as Discord registers them; they are offered in servers only, where a studio is known. */
export const slashCommands = (commands: Command[], words: Words): SlashCommand[] =>
  commands.map((command) => ({
    type: ApplicationCommandType.ChatInput,
    name: command.name,
    description: clipped(command.about(words), DESCRIPTION),
    contexts: [InteractionContextType.Guild],
    integration_types: [ApplicationIntegrationType.GuildInstall],
    options: isGroup(command)
      ? command.leaves.map((leaf) => subcommand(leaf, words))
      : optionsOf(command, words),
  }));

const subcommand = (leaf: Leaf, words: Words): APIApplicationCommandSubcommandOption => ({
  type: OptionType.Subcommand,
  name: leaf.name,
  description: clipped(leaf.about(words), DESCRIPTION),
  options: optionsOf(leaf, words),
});

/** Needed options first, as Discord wants them; a leaf that can be asked in a form needs none up front. */
const optionsOf = (leaf: Leaf, words: Words): APIApplicationCommandBasicOption[] => {
  const all = Object.entries(leaf.options)
    .filter(([, { kind }]) => !kind.pressed)
    .map(([name, option]) => slashOption(name, option, option.needed && !leaf.form, words));
  return [...all.filter((option) => option.required), ...all.filter((option) => !option.required)];
};

const slashOption = (
  name: string,
  { kind, about }: Option<unknown>,
  required: boolean,
  words: Words,
): APIApplicationCommandBasicOption => {
  const { control } = kind;
  const explained = discordWords.suchAs(about(words), kind.example);
  const described = kind.example === '' || explained.length > DESCRIPTION ? about(words) : explained;
  const common = { name, description: clipped(described, DESCRIPTION), required };
  if (control === 'switch') return { ...common, type: OptionType.Boolean };
  if (typeof control === 'object' && control.pick.length <= MOST_CHOICES)
    return {
      ...common,
      type: OptionType.String,
      choices: control.pick.map((choice) => ({ name: clipped(choice.name, 100), value: choice.value })),
    };
  const completes = kind.suggest !== undefined || typeof control === 'object';
  // Quantities are typed with their units, so that even a number is text.
  return { ...common, type: OptionType.String, ...(completes ? { autocomplete: true } : {}) };
};
