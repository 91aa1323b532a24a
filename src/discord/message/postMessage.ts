import { type APIDMChannel, MessageFlags, type REST, Routes } from 'discord.js';
import { discordWords } from '../../words/platform/discordWords.ts';
import type { Rendered } from '../render/renderReply.ts';

/** Posts a message that pings nobody, or only the given member. The nonce makes Discord drop a repeat. */
export const postMessage = (
  rest: REST,
  channel: string,
  { files, rest: left, ...message }: Rendered,
  { ping, nonce }: { ping?: string; nonce: string },
): Promise<unknown> =>
  rest.post(Routes.channelMessages(channel), {
    files,
    body: {
      ...message,
      content: [
        ping === undefined ? message.content : `<@${ping}> ${message.content}`,
        ...(left.length > 0 ? [`-# ${discordWords.shortened}`] : []),
      ].join('\n'),
      flags: MessageFlags.SuppressEmbeds,
      allowed_mentions: { parse: [], ...(ping === undefined ? {} : { users: [ping] }) },
      nonce,
      enforce_nonce: true,
    },
  });

/** Posts in the direct-message channel with a user. Opening the channel again returns the same one. */
export const postDirectly = async (
  rest: REST,
  user: string,
  message: Rendered,
  nonce: string,
): Promise<unknown> => {
  // The response type that Discord documents for this route.
  const channel = (await rest.post(Routes.userChannels(), { body: { recipient_id: user } })) as APIDMChannel;
  return postMessage(rest, channel.id, message, { nonce });
};
