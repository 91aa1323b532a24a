import { InteractionResponseType as Callback, InteractionType } from 'discord.js';
import { type Fields, type SentFile, fields, list, text } from './discordBody.ts';
import { createMessage, editMessage } from './discordMessages.ts';
import { type BodyKind, bodyProblems } from './discordRules.ts';
import {
  type Channel,
  type Interaction,
  type StoredMessage,
  type World,
  nowIn,
  snowflake,
  user,
} from './discordWorld.ts';

/** One request of the bot, as received. */
export interface Call {
  method: string;
  /** The path below `/api/v10`, decoded, without the query. */
  path: string;
  query: URLSearchParams;
  body: unknown;
  files: SentFile[];
  at: number;
  /** Violations in the body, of Discord's rules or ours. */
  problems: string[];
}

export interface Answer {
  status: number;
  body?: unknown;
  headers?: Record<string, string>;
}

const SECOND = 1000;
const FIRST_REPLY = 3 * SECOND;
const TOKEN_LIFE = 15 * 60 * SECOND;
const NONCE_LIFE = 5 * 60 * SECOND;

const OK = (body: unknown): Answer => ({ status: 200, body });
export const refusal = (status: number, code: number, message: string): Answer => ({
  status,
  body: { code, message },
});

const UNKNOWN_CHANNEL = refusal(404, 10003, 'Unknown Channel');
const UNKNOWN_MEMBER = refusal(404, 10007, 'Unknown Member');
const UNKNOWN_MESSAGE = refusal(404, 10008, 'Unknown Message');
const UNKNOWN_WEBHOOK = refusal(404, 10015, 'Unknown Webhook');
const UNKNOWN_INTERACTION = refusal(404, 10062, 'Unknown interaction');
const ALREADY_ACKNOWLEDGED = refusal(400, 40060, 'Interaction has already been acknowledged.');
const MISSING_ACCESS = refusal(403, 50001, 'Missing Access');
const NO_DIRECT_MESSAGES = refusal(403, 50007, 'Cannot send messages to this user');
const MISSING_PERMISSIONS = refusal(403, 50013, 'Missing Permissions');
const EXPIRED_TOKEN = refusal(401, 50027, 'Invalid Webhook Token');

/** The response types that each type of interaction allows. */
const FITTING: Record<number, readonly number[]> = {
  [InteractionType.ApplicationCommand]: [
    Callback.ChannelMessageWithSource,
    Callback.DeferredChannelMessageWithSource,
    Callback.Modal,
  ],
  [InteractionType.MessageComponent]: [
    Callback.ChannelMessageWithSource,
    Callback.DeferredChannelMessageWithSource,
    Callback.DeferredMessageUpdate,
    Callback.UpdateMessage,
    Callback.Modal,
  ],
  [InteractionType.ApplicationCommandAutocomplete]: [Callback.ApplicationCommandAutocompleteResult],
  [InteractionType.ModalSubmit]: [
    Callback.ChannelMessageWithSource,
    Callback.DeferredChannelMessageWithSource,
    Callback.DeferredMessageUpdate,
    Callback.UpdateMessage,
  ],
};

/** Answers a request as Discord would, and updates the world. */
export const answer = (world: World, call: Call): Answer => {
  const part = call.path.split('/').filter((one) => one !== '');
  const verb = `${call.method} ${part[0] ?? ''}`;
  if (verb === 'POST interactions') return callback(world, call, part[1] ?? '', part[2] ?? '');
  if (part[0] === 'webhooks') return webhook(world, call, part[2] ?? '', part[4]);
  if (verb === 'PUT applications')
    return register(world, call, part[2] === 'guilds' ? (part[3] ?? '') : 'global');
  if (verb === 'POST users' && part[2] === 'channels') return openDirect(world, call);
  if (verb === 'GET guilds' && part[2] === 'members') return guildMember(world, part[1], part[3]);
  if (part[0] === 'channels' && part[2] === 'messages')
    return channelMessage(world, call, part[1] ?? '', part[3]);
  return refusal(404, 0, '404: Not Found');
};

/** Checks the body, records violations, and returns an error response if Discord would reject it. */
const wrong = (world: World, call: Call, kind: BodyKind): Answer | undefined => {
  if (!world.checks) return undefined;
  call.problems.push(...bodyProblems(kind, call.body, call.files));
  const refused = call.problems.filter((problem) => problem !== 'allowed_mentions is not explicit');
  if (refused.length === 0) return undefined;
  if (refused.includes('an empty message')) return refusal(400, 50006, 'Cannot send an empty message');
  return { status: 400, body: { code: 50035, message: 'Invalid Form Body', errors: { _errors: refused } } };
};

const callback = (world: World, call: Call, id: string, token: string): Answer => {
  const interaction = world.interactions.get(id);
  if (!interaction || interaction.token !== token) return UNKNOWN_INTERACTION;
  if (interaction.acknowledged) return ALREADY_ACKNOWLEDGED;
  if (nowIn(world) - interaction.createdAt > FIRST_REPLY) return UNKNOWN_INTERACTION;
  const refused = wrong(world, call, 'callback');
  if (refused) return refused;
  const body = fields(call.body);
  const type = Number(body['type']);
  const ofMessage = type === Callback.UpdateMessage || type === Callback.DeferredMessageUpdate;
  if (!FITTING[interaction.type]?.includes(type) || (ofMessage && interaction.message === undefined)) {
    call.problems.push(`an interaction of type ${interaction.type} can't be answered with ${type}`);
    return refusal(400, 50035, 'Invalid Form Body');
  }
  interaction.acknowledged = body;
  interaction.acknowledgedAt = nowIn(world);
  const message = shown(world, interaction, type, fields(body['data']), call.files);
  if (call.query.get('with_response') !== 'true') return { status: 204 };
  return OK({
    interaction: {
      id,
      type: interaction.type,
      ...(message ? { response_message_id: message.message.id } : {}),
    },
    ...(message ? { resource: { type, message: message.message } } : {}),
  });
};

const shown = (
  world: World,
  interaction: Interaction,
  type: number,
  data: Fields,
  files: SentFile[],
): StoredMessage | undefined => {
  const pressed = interaction.message === undefined ? undefined : world.messages.get(interaction.message);
  switch (type) {
    case Callback.ChannelMessageWithSource:
    case Callback.DeferredChannelMessageWithSource: {
      const message = createMessage(world, interaction.channel, data, files);
      interaction.original = message.message.id;
      interaction.waiting = type === Callback.DeferredChannelMessageWithSource;
      return message;
    }
    case Callback.UpdateMessage:
    case Callback.DeferredMessageUpdate: {
      interaction.original = interaction.message;
      return pressed && type === Callback.UpdateMessage ? editMessage(world, pressed, data, files) : pressed;
    }
    default:
      return undefined;
  }
};

const webhook = (world: World, call: Call, token: string, messageId: string | undefined): Answer => {
  const interaction = world.interactions.get(token.replace('token-', ''));
  if (!interaction?.acknowledged) return UNKNOWN_WEBHOOK;
  if (nowIn(world) - interaction.createdAt > TOKEN_LIFE) return EXPIRED_TOKEN;
  const id = messageId === '@original' ? interaction.original : messageId;
  const stored = id === undefined ? undefined : world.messages.get(id);
  if (call.method === 'POST') {
    const refused = wrong(world, call, 'followUp');
    if (refused) return refused;
    const thinking = interaction.waiting ? world.messages.get(interaction.original ?? '') : undefined;
    interaction.waiting = false;
    // The first follow-up to a deferred reply replaces "thinking…".
    if (thinking) return OK(editMessage(world, thinking, fields(call.body), call.files).message);
    const message = createMessage(world, interaction.channel, fields(call.body), call.files);
    interaction.followUps.push(message.message.id);
    return OK(message.message);
  }
  if (!stored) return UNKNOWN_MESSAGE;
  if (call.method === 'GET') return OK(stored.message);
  if (call.method === 'DELETE') {
    world.messages.delete(stored.message.id);
    return { status: 204 };
  }
  const refused = wrong(world, call, 'followUpEdit');
  if (refused) return refused;
  interaction.waiting = false;
  return OK(editMessage(world, stored, fields(call.body), call.files).message);
};

const register = (world: World, call: Call, scope: string): Answer => {
  const refused = wrong(world, call, 'commands');
  if (refused) return refused;
  const commands = list(call.body).map((command) => ({
    ...command,
    id: snowflake(nowIn(world)),
    application_id: world.applicationId,
    version: snowflake(nowIn(world)),
  }));
  world.commands.set(scope, commands);
  return OK(commands);
};

const guildMember = (world: World, guild: string | undefined, id: string | undefined): Answer => {
  if (guild !== world.guildId) return MISSING_ACCESS;
  const person = world.people.get(id ?? '');
  if (!person || person.left === true) return UNKNOWN_MEMBER;
  return OK({
    user: user(person.id, person.name),
    nick: person.nick ?? null,
    roles: person.roles ?? [],
    joined_at: '2024-01-01T00:00:00.000Z',
    deaf: false,
    mute: false,
    flags: 0,
  });
};

const openDirect = (world: World, call: Call): Answer => {
  const refused = wrong(world, call, 'dm');
  if (refused) return refused;
  const recipient = text(fields(call.body)['recipient_id']);
  const person = world.people.get(recipient);
  if (!person) return refusal(400, 50033, 'Invalid Recipient(s)');
  const open = [...world.channels.values()].find((one) => one.recipient === recipient);
  const channel: Channel = open ?? { id: snowflake(nowIn(world)), kind: 'dm', recipient };
  world.channels.set(channel.id, channel);
  return OK({
    id: channel.id,
    type: 1,
    flags: 0,
    last_message_id: null,
    recipients: [user(person.id, person.name)],
  });
};

const channelMessage = (
  world: World,
  call: Call,
  channelId: string,
  messageId: string | undefined,
): Answer => {
  const channel = world.channels.get(channelId);
  if (!channel || channel.deleted === true) return UNKNOWN_CHANNEL;
  if (channel.forbidden === true) return MISSING_PERMISSIONS;
  if (channel.recipient !== undefined && world.people.get(channel.recipient)?.dmClosed === true)
    return NO_DIRECT_MESSAGES;
  const body = fields(call.body);
  if (call.method === 'POST') {
    const refused = wrong(world, call, 'message');
    if (refused) return refused;
    const nonce = body['enforce_nonce'] === true ? `${channelId}/${text(body['nonce'])}` : undefined;
    const before = nonce === undefined ? undefined : world.nonces.get(nonce);
    const same = before && nowIn(world) - before.at <= NONCE_LIFE ? world.messages.get(before.id) : undefined;
    if (same) return OK(same.message);
    const message = createMessage(world, channelId, body, call.files);
    if (nonce !== undefined) world.nonces.set(nonce, { id: message.message.id, at: nowIn(world) });
    return OK(message.message);
  }
  const stored = messageId === undefined ? undefined : world.messages.get(messageId);
  if (stored?.message.channel_id !== channelId) return UNKNOWN_MESSAGE;
  if (call.method === 'GET') return OK(stored.message);
  const refused = wrong(world, call, 'messageEdit');
  return refused ?? OK(editMessage(world, stored, body, call.files).message);
};
