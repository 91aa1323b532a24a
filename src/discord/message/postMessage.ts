import { MessageFlags, type REST, Routes } from 'discord.js';
import { discordWords } from '../../words/platform/discordWords.ts';
import type { Rendered } from '../render/renderReply.ts';

/** Posts a message that pings nobody, or the one member that it is for; a nonce makes a repeat the same message. */
export const postMessage = (
  rest: REST,
  channel: string,
  { files, rest: left, ...message }: Rendered,
  { ping, nonce }: { ping?: string; nonce?: string } = {},
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
      ...(nonce === undefined ? {} : { nonce, enforce_nonce: true }),
    },
  });
