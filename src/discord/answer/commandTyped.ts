import {
  ApplicationCommandOptionType as OptionType,
  type APIApplicationCommandInteractionDataBasicOption,
  type APIApplicationCommandInteractionDataOption,
} from 'discord.js';
import type { ParsedLine } from '../../contract/parseLine.ts';
import { discordWords } from '../../words/platform/discordWords.ts';

type Sent = APIApplicationCommandInteractionDataOption<never> | APIApplicationCommandInteractionDataOption;

/** A slash command in the desk's terms: its path, the typed options, and the option that is being typed now. */
export const commandTyped = (
  name: string,
  sent: readonly Sent[],
): ParsedLine & { focused: string | undefined } => {
  const [first] = sent;
  const nested = first?.type === OptionType.Subcommand;
  const options = nested ? (first.options ?? []) : sent.filter(isBasic);
  return {
    path: nested ? [name, first.name] : [name],
    typed: Object.fromEntries(options.map((option) => [option.name, valueOf(option)])),
    focused: options.find((option) => 'focused' in option && option.focused === true)?.name,
  };
};

const isBasic = (option: Sent): option is APIApplicationCommandInteractionDataBasicOption =>
  option.type !== OptionType.Subcommand && option.type !== OptionType.SubcommandGroup;

const valueOf = ({ type, value }: APIApplicationCommandInteractionDataBasicOption): string =>
  type === OptionType.Boolean ? (value ? discordWords.yes : discordWords.no) : String(value);
