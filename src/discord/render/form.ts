import {
  ComponentType,
  TextInputStyle,
  type APILabelComponent,
  type APIModalInteractionResponseCallbackData,
  type ModalSubmitLabelComponent,
  type APIModalSubmission,
} from 'discord.js';
import { typedOptions, type Choice, type Leaf, type Option } from '../../contract/contract.ts';
import { discordWords } from '../../words/platform/discordWords.ts';
import { clipped } from './markdown.ts';
import type { Words } from '../ports.ts';

const FIELDS = 5;
const MENU_ROWS = 25;

/** The options in a leaf's form. A leaf without a form of its own shows its first options. */
export const formFields = (leaf: Leaf): string[] => (leaf.form ?? typedOptions(leaf)).slice(0, FIELDS);

export const form = async (
  id: string,
  title: string,
  leaf: Leaf,
  typed: Record<string, string>,
  words: Words,
  suggest: (option: string) => Promise<Choice[]>,
): Promise<APIModalInteractionResponseCallbackData> => ({
  custom_id: id,
  title: clipped(title, 45),
  components: await Promise.all(
    formFields(leaf).flatMap((name) => {
      const option = leaf.options[name];
      return option ? [field(name, option, typed[name], words, suggest)] : [];
    }),
  ),
});

const field = async (
  name: string,
  option: Option<unknown>,
  typed: string | undefined,
  words: Words,
  suggest: (option: string) => Promise<Choice[]>,
): Promise<APILabelComponent> => {
  const choices = await choicesOf(name, option, suggest);
  return {
    type: ComponentType.Label,
    label: clipped(name, 45),
    description: clipped(option.about(words), 100),
    component: fitsMenu(choices, typed) ? picked(name, option, typed, choices) : written(name, option, typed),
  };
};

/** The choices for a select menu: fixed values, or all suggestions if they are few. */
const choicesOf = async (
  name: string,
  { kind }: Option<unknown>,
  suggest: (option: string) => Promise<Choice[]>,
): Promise<Choice[]> => {
  if (kind.control === 'switch')
    return [discordWords.yes, discordWords.no].map((word) => ({ name: word, value: word }));
  if (typeof kind.control === 'object') return kind.control.pick;
  return kind.suggest ? suggest(name) : [];
};

/**
 * Whether a select menu can be used: it must hold every possible value, and a full one may be missing some. It must
 * also hold what was typed.
 */
const fitsMenu = (choices: Choice[], typed: string | undefined): boolean =>
  choices.length > 0 &&
  choices.length < MENU_ROWS &&
  choices.every(({ value }) => value !== '' && value.length <= 100) &&
  (typed === undefined || choices.some(({ value }) => value === typed));

const picked = (
  name: string,
  { needed }: Option<unknown>,
  typed: string | undefined,
  choices: Choice[],
): APILabelComponent['component'] => ({
  type: ComponentType.StringSelect,
  custom_id: name,
  required: needed,
  min_values: needed ? 1 : 0,
  max_values: 1,
  options: choices.map((choice) => ({
    label: clipped(choice.name, 100),
    value: choice.value,
    // With a single choice nobody has to choose.
    ...(choice.value === typed || (needed && choices.length === 1) ? { default: true } : {}),
  })),
});

const written = (
  name: string,
  { needed, kind }: Option<unknown>,
  typed: string | undefined,
): APILabelComponent['component'] => ({
  type: ComponentType.TextInput,
  custom_id: name,
  style: TextInputStyle.Short,
  required: needed,
  max_length: 1000,
  ...(kind.example === '' ? {} : { placeholder: clipped(kind.example, 100) }),
  ...(typed === undefined ? {} : { value: clipped(typed, 1000) }),
});

/** What was filled in, by option; a field left empty is an empty string. */
export const filledIn = (submission: APIModalSubmission): Record<string, string> =>
  Object.fromEntries(
    submission.components
      .filter((one): one is ModalSubmitLabelComponent => one.type === ComponentType.Label)
      .flatMap(({ component }) => {
        if (component.type === ComponentType.TextInput)
          return [[component.custom_id, component.value.trim()]];
        if (component.type === ComponentType.StringSelect)
          return [[component.custom_id, component.values[0] ?? '']];
        return [];
      }),
  );
