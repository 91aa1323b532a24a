import {
  ApplicationCommandOptionType as OptionType,
  ApplicationCommandType,
  ApplicationIntegrationType,
  ChannelType,
  ComponentType,
  InteractionContextType,
  InteractionType,
  Locale,
  type APIApplicationCommandInteractionDataBasicOption,
  type APIApplicationCommandInteractionDataOption,
  type APIModalSubmission,
  type GatewayInteractionCreateDispatchData,
} from 'discord.js';
import { fields, list, text } from './discordBody.ts';
import { everyComponent } from './discordMessageRules.ts';
import { type Interaction, type Person, type StoredMessage, type World, user } from './discordWorld.ts';

/** An interaction before Discord has given it an id. */
export interface Draft {
  what: string;
  type: InteractionType;
  by: Person;
  channel: string;
  message: string | undefined;
  data(world: World, interaction: Interaction): GatewayInteractionCreateDispatchData;
}

/** The channel and user of an interaction. */
export interface Place {
  by: Person;
  channel: { id: string; kind: 'server' | 'dm' };
}

export type Typed = Record<string, string | number | boolean>;

const MANAGE_GUILD = 1n << 5n;
const SEND_MESSAGES = 1n << 11n;

export const common = (world: World, { id, token }: Interaction, { by, channel }: Place) => {
  const direct = channel.kind === 'dm';
  const base = {
    id,
    token,
    application_id: world.applicationId,
    version: 1 as const,
    locale: by.locale ?? Locale.EnglishUS,
    entitlements: [],
    authorizing_integration_owners: {
      [ApplicationIntegrationType.GuildInstall]: direct ? '0' : world.guildId,
    },
    app_permissions: SEND_MESSAGES.toString(),
    attachment_size_limit: 10 * 1024 * 1024,
    channel_id: channel.id,
  };
  const who = user(by.id, by.name);
  if (direct)
    return {
      ...base,
      context: InteractionContextType.BotDM,
      channel: { id: channel.id, type: ChannelType.DM as const },
      user: who,
    };
  return {
    ...base,
    context: InteractionContextType.Guild,
    channel: { id: channel.id, type: ChannelType.GuildText as const },
    guild_id: world.guildId,
    guild_locale: Locale.EnglishUS,
    guild: { id: world.guildId, locale: Locale.EnglishUS, features: [] },
    member: {
      user: who,
      nick: by.nick ?? null,
      roles: by.roles ?? [],
      permissions: ((by.manages === true ? MANAGE_GUILD : 0n) | SEND_MESSAGES).toString(),
      joined_at: '2024-01-01T00:00:00.000Z',
      deaf: false,
      mute: false,
      flags: 0,
    },
  };
};

const option = (
  name: string,
  value: Typed[string],
  focused: boolean,
): APIApplicationCommandInteractionDataBasicOption => {
  if (typeof value === 'boolean') return { name, type: OptionType.Boolean, value };
  if (typeof value === 'number')
    return { name, type: OptionType.Number, value, ...(focused ? { focused } : {}) };
  return { name, type: OptionType.String, value, ...(focused ? { focused } : {}) };
};

const command = (world: World, path: readonly string[], typed: Typed, focused?: string) => {
  const [name = '', leaf] = path;
  const options: APIApplicationCommandInteractionDataBasicOption[] = Object.entries(typed).map(
    ([key, value]) => option(key, value, key === focused),
  );
  const nested: APIApplicationCommandInteractionDataOption[] =
    leaf === undefined ? options : [{ name: leaf, type: OptionType.Subcommand, options }];
  return { id: world.applicationId, name, type: ApplicationCommandType.ChatInput as const, options: nested };
};

/** A slash command, `['reading']` or `['bucket', 'add']`, with its options. */
export const slash = (place: Place, path: readonly string[], typed: Typed = {}): Draft => ({
  what: `/${path.join(' ')}`,
  type: InteractionType.ApplicationCommand,
  by: place.by,
  channel: place.channel.id,
  message: undefined,
  data: (world, interaction) =>
    ({
      ...common(world, interaction, place),
      type: InteractionType.ApplicationCommand,
      data: command(world, path, typed),
    }) satisfies GatewayInteractionCreateDispatchData,
});

/** Autocomplete: the user is typing into the option `focused`. */
export const typing = (place: Place, path: readonly string[], focused: string, typed: Typed): Draft => ({
  what: `typing into ${focused} of /${path.join(' ')}`,
  type: InteractionType.ApplicationCommandAutocomplete,
  by: place.by,
  channel: place.channel.id,
  message: undefined,
  data: (world, interaction) =>
    ({
      ...common(world, interaction, place),
      type: InteractionType.ApplicationCommandAutocomplete,
      data: command(world, path, typed, focused),
    }) satisfies GatewayInteractionCreateDispatchData,
});

/** Presses a message's button, found by its label. */
export const press = (place: Place, on: StoredMessage, label: string): Draft => {
  const buttons = everyComponent(on.message.components).filter((one) => one['type'] === ComponentType.Button);
  const button = buttons.find((one) => one['label'] === label);
  if (!button || button['disabled'] === true)
    throw new Error(
      `no button "${label}" among ${buttons.map((one) => `"${text(one['label'])}"`).join(', ')}`,
    );
  return component(place, on, `pressing "${label}"`, text(button['custom_id']));
};

/** Chooses a row of a message's only menu, by its label. */
export const pick = (place: Place, on: StoredMessage, label: string): Draft => {
  const menu = everyComponent(on.message.components).find(
    (one) => one['type'] === ComponentType.StringSelect,
  );
  const chosen = list(menu?.['options']).find((one) => one['label'] === label);
  if (!menu || !chosen) throw new Error(`no menu offers "${label}"`);
  return component(place, on, `picking "${label}"`, text(menu['custom_id']), [text(chosen['value'])]);
};

const component = (
  place: Place,
  on: StoredMessage,
  what: string,
  custom_id: string,
  values?: string[],
): Draft => ({
  what,
  type: InteractionType.MessageComponent,
  by: place.by,
  channel: place.channel.id,
  message: on.message.id,
  data: (world, interaction) =>
    ({
      ...common(world, interaction, place),
      type: InteractionType.MessageComponent,
      message: on.message,
      data: values
        ? { custom_id, component_type: ComponentType.StringSelect, values }
        : { custom_id, component_type: ComponentType.Button },
    }) satisfies GatewayInteractionCreateDispatchData,
});

/** Sends an id that no button of the message has, as a client of somebody’s own making could. */
export const forge = (place: Place, on: StoredMessage, customId: string): Draft =>
  component(place, on, `forging ${customId}`, customId);

/** Submits a form that the bot opened. A field that is not named keeps its prefilled value. */
export const submit = (place: Place, opened: Interaction, filled: Record<string, string>): Draft => {
  const modal = fields(opened.acknowledged?.['data']);
  if (opened.acknowledged?.['type'] !== 9) throw new Error('no form was opened');
  const inputs = everyComponent(modal['components']).filter((one) => text(one['custom_id']) !== '');
  for (const name of Object.keys(filled))
    if (!inputs.some((one) => one['custom_id'] === name)) throw new Error(`the form has no field "${name}"`);
  const components: APIModalSubmission['components'] = inputs.map((one, i) => {
    const id = 2 * i + 1;
    const custom_id = text(one['custom_id']);
    const preset = list(one['options']).find((row) => row['default'] === true) ?? one;
    const value = filled[custom_id] ?? text(preset['value']);
    if (one['required'] !== false && value === '') throw new Error(`the form needs "${custom_id}"`);
    return {
      type: ComponentType.Label,
      id,
      component:
        one['type'] === ComponentType.StringSelect
          ? { type: ComponentType.StringSelect, id: id + 1, custom_id, values: value === '' ? [] : [value] }
          : { type: ComponentType.TextInput, id: id + 1, custom_id, value },
    };
  });
  return {
    what: 'sending the form',
    type: InteractionType.ModalSubmit,
    by: place.by,
    channel: place.channel.id,
    message: opened.message,
    data: (world, interaction) => {
      const message = opened.message === undefined ? undefined : world.messages.get(opened.message)?.message;
      return {
        ...common(world, interaction, place),
        type: InteractionType.ModalSubmit,
        data: { custom_id: text(modal['custom_id']), components },
        ...(message ? { message } : {}),
      } satisfies GatewayInteractionCreateDispatchData;
    },
  };
};
