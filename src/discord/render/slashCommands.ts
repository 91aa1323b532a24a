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

/** The commands in Discord's registration format. They work in servers only, because a server tells the studio. */
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

/** Required options first, as Discord demands. A leaf with a form requires none, because the form asks. */
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
  // What is picked shows its choices, and needs no example.
  const shows = control === 'switch' || typeof control === 'object';
  const described = shows || kind.example === '' || explained.length > DESCRIPTION ? about(words) : explained;
  const common = { name, description: clipped(described, DESCRIPTION), required };
  if (control === 'switch') return { ...common, type: OptionType.Boolean };
  if (typeof control === 'object' && control.pick.length <= MOST_CHOICES)
    return {
      ...common,
      type: OptionType.String,
      choices: control.pick.map((choice) => ({ name: clipped(choice.name, 100), value: choice.value })),
    };
  const completes = kind.suggest !== undefined || typeof control === 'object';
  // A quantity includes its unit, so that even a number is registered as text.
  return { ...common, type: OptionType.String, ...(completes ? { autocomplete: true } : {}) };
};
