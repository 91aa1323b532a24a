import { MessageFlags, Routes, type REST } from 'discord.js';
import type { Rendered } from '../render/renderReply.ts';

/** Posts a message that pings nobody, or the one member that it is for; a nonce makes a repeat the same message. */
export const postMessage = (
  rest: REST,
  channel: string,
  { files, ...message }: Rendered,
  { ping, nonce }: { ping?: string; nonce?: string } = {},
): Promise<unknown> =>
  rest.post(Routes.channelMessages(channel), {
    files,
    body: {
      ...message,
      content: ping === undefined ? message.content : `<@${ping}> ${message.content}`.slice(0, 2000),
      flags: MessageFlags.SuppressEmbeds,
      allowed_mentions: { parse: [], ...(ping === undefined ? {} : { users: [ping] }) },
      ...(nonce === undefined ? {} : { nonce, enforce_nonce: true }),
    },
  });
