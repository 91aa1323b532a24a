import {
  InteractionResponseType as Callback,
  MessageFlags,
  Routes,
  type APIInteraction,
  type APIInteractionResponse,
  type RawFile,
} from 'discord.js';
import type { Bot } from '../bot.ts';
import { QUICKLY, retry, PATIENTLY, type Delivery } from './retry.ts';
import type { Rendered } from '../render/renderReply.ts';

const QUIET = { parse: [] };
/** No link previews, whoever wrote the link. */
const FLAGS = MessageFlags.SuppressEmbeds;

export type InteractionResponder = ReturnType<typeof interactionResponder>;

/** One interaction, and the ways to respond to it. */
export const interactionResponder = ({ rest, application }: Bot, { id, token }: APIInteraction) => {
  const raw = (body: APIInteractionResponse, files: RawFile[] = []): Promise<Delivery> =>
    retry(() => rest.post(Routes.interactionCallback(id, token), { body, files, auth: false }), QUICKLY);
  const original = Routes.webhookMessage(application, token, '@original');
  return {
    raw,
    answer: ({ files, rest: _, ...message }: Rendered, hidden: boolean) =>
      raw({ type: Callback.ChannelMessageWithSource, data: deliveredMessage(message, hidden) }, files),
    /** Shows Discord's "thinking" state. */
    defer: (hidden: boolean) =>
      raw({
        type: Callback.DeferredChannelMessageWithSource,
        data: hidden ? { flags: MessageFlags.Ephemeral } : {},
      }),
    /** Replaces the deferred reply with the answer. */
    fill: ({ files, rest: _, ...message }: Rendered) =>
      retry(
        () => rest.patch(original, { body: { ...message, allowed_mentions: QUIET }, files, auth: false }),
        PATIENTLY,
      ),
    withdraw: () => retry(() => rest.delete(original, { auth: false }), PATIENTLY),
    followUp: ({ files, rest: _, ...message }: Rendered, hidden: boolean) =>
      retry(
        () =>
          rest.post(Routes.webhook(application, token), {
            body: deliveredMessage(message, hidden),
            files,
            auth: false,
          }),
        PATIENTLY,
      ),
    /** Removes the buttons of the pressed message. */
    closePressed: () =>
      raw({ type: Callback.UpdateMessage, data: { components: [], allowed_mentions: QUIET } }),
  };
};

const deliveredMessage = (message: Omit<Rendered, 'files' | 'rest'>, hidden: boolean) => ({
  ...message,
  flags: hidden ? FLAGS | MessageFlags.Ephemeral : FLAGS,
  allowed_mentions: QUIET,
});
