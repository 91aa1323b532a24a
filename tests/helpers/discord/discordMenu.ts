import {
  ApplicationCommandType,
  InteractionType,
  MessageType,
  type APIMessage,
  type GatewayInteractionCreateDispatchData,
} from 'discord.js';
import { common, type Draft, type Place } from './discordInteraction.ts';
import { nowIn, snowflake, user, type Person, type World } from './discordWorld.ts';

/** A message that a person wrote in a channel, some time ago. */
export const written = (
  world: World,
  { by, channel }: { by: Person; channel: { id: string } },
  content: string,
  { ago = 0, bot = false, picture = false }: { ago?: number; bot?: boolean; picture?: boolean } = {},
): APIMessage => {
  const at = nowIn(world) - ago;
  const url = 'https://cdn.example/0/pail.jpg';
  return {
    id: snowflake(at),
    channel_id: channel.id,
    type: MessageType.Default,
    author: user(by.id, by.name, bot),
    content,
    // As Discord writes it, with microseconds and an offset.
    timestamp: new Date(at).toISOString().replace('Z', '000+00:00'),
    edited_timestamp: null,
    tts: false,
    mention_everyone: false,
    mentions: [],
    mention_roles: [],
    attachments: picture
      ? [
          {
            id: snowflake(at),
            filename: 'pail.jpg',
            size: 1000,
            url,
            proxy_url: url,
            content_type: 'image/jpeg',
          },
        ]
      : [],
    embeds: [],
    components: [],
    pinned: false,
  };
};

/** Chooses a command from a message's own menu. */
export const fromMenu = (place: Place, message: APIMessage, name = 'Log as a reading'): Draft => ({
  what: `“${name}” on a message`,
  type: InteractionType.ApplicationCommand,
  by: place.by,
  channel: place.channel.id,
  message: undefined,
  data: (world, interaction) =>
    ({
      ...common(world, interaction, place),
      type: InteractionType.ApplicationCommand,
      data: {
        id: world.applicationId,
        name,
        type: ApplicationCommandType.Message,
        target_id: message.id,
        resolved: { messages: { [message.id]: message } },
      },
    }) satisfies GatewayInteractionCreateDispatchData,
});
