import { ComponentType, MessageFlags, MessageType, type APIMessage } from 'discord.js';
import { type Fields, type SentFile, fields, list, text } from './discordBody.ts';
import { type StoredMessage, type World, nowIn, snowflake } from './discordWorld.ts';

/** Stores a sent message as users would see it. */
export const createMessage = (
  world: World,
  channel: string,
  body: Fields,
  files: SentFile[],
): StoredMessage => {
  const at = nowIn(world);
  const flags = Number(body['flags'] ?? 0);
  const id = snowflake(at);
  const stored: StoredMessage = {
    files,
    ephemeral: (flags & MessageFlags.Ephemeral) !== 0,
    allowedMentions: fields(body['allowed_mentions']),
    message: {
      id,
      channel_id: channel,
      type: MessageType.Default,
      author: world.bot,
      content: '',
      timestamp: iso(at),
      edited_timestamp: null,
      tts: false,
      mention_everyone: false,
      mentions: [],
      mention_roles: [],
      attachments: [],
      embeds: [],
      components: [],
      pinned: false,
      flags,
    },
  };
  apply(stored, body, files);
  world.messages.set(id, stored);
  return stored;
};

export const editMessage = (
  world: World,
  stored: StoredMessage,
  body: Fields,
  files: SentFile[],
): StoredMessage => {
  apply(stored, body, files);
  stored.message.edited_timestamp = iso(nowIn(world));
  return stored;
};

const apply = (stored: StoredMessage, body: Fields, files: SentFile[]): void => {
  const { message } = stored;
  if ('content' in body) message.content = text(body['content']);
  if ('allowed_mentions' in body) stored.allowedMentions = fields(body['allowed_mentions']);
  if ('nonce' in body) message.nonce = text(body['nonce']);
  // The body has passed the published schema, so it is cast to that type.
  if ('embeds' in body) message.embeds = list(body['embeds']);
  if ('components' in body)
    message.components = numbered(list(body['components'])) as unknown as APIMessage['components'] & {};
  if (files.length > 0 || 'attachments' in body) stored.files = files;
  if (files.length > 0 || 'attachments' in body) message.attachments = attachments(body, files);
};

const attachments = (body: Fields, files: SentFile[]): APIMessage['attachments'] =>
  files.map((file, i) => {
    const described = list(body['attachments']).find((one) => `files[${String(one['id'])}]` === file.field);
    const url = `https://cdn.example/${i}/${file.name}`;
    return {
      id: snowflake(Date.now()),
      filename: file.name,
      size: file.bytes.length,
      url,
      proxy_url: url,
      content_type: file.type || 'application/octet-stream',
      ...(described && text(described['description']) !== ''
        ? { description: text(described['description']) }
        : {}),
    };
  });

/** Discord returns components with ids and explicit defaults. */
const numbered = (components: Fields[]): Fields[] => {
  let next = 1;
  const number = (one: Fields): Fields => {
    const id = next++;
    const interactive = one['type'] === ComponentType.Button || one['type'] === ComponentType.StringSelect;
    const menu = one['type'] === ComponentType.StringSelect;
    return {
      ...(interactive ? { disabled: false } : {}),
      ...(menu ? { min_values: 1, max_values: 1 } : {}),
      id,
      ...one,
      ...(Array.isArray(one['components']) ? { components: list(one['components']).map(number) } : {}),
    };
  };
  return components.map(number);
};

const iso = (at: number): string => new Date(at).toISOString();
