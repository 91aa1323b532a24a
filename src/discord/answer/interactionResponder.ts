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

/** One interaction, and the ways to respond to it. */
export interface InteractionResponder {
  answer(message: Rendered, hidden: boolean): Promise<Delivery>;
  /** Shows Discord's "thinking" state. */
  defer(hidden: boolean): Promise<Delivery>;
  /** Replaces the deferred reply with the answer. */
  fill(message: Rendered): Promise<Delivery>;
  withdraw(): Promise<Delivery>;
  followUp(message: Rendered, hidden: boolean): Promise<Delivery>;
  /** Removes the buttons of the pressed message. */
  closePressed(): Promise<Delivery>;
  raw(body: APIInteractionResponse): Promise<Delivery>;
}

export const interactionResponder = (
  { rest, application }: Bot,
  { id, token }: APIInteraction,
): InteractionResponder => {
  const raw = (body: APIInteractionResponse, files: RawFile[] = []): Promise<Delivery> =>
    retry(() => rest.post(Routes.interactionCallback(id, token), { body, files, auth: false }), QUICKLY);
  const original = Routes.webhookMessage(application, token, '@original');
  return {
    raw,
    answer: ({ files, rest: _, ...message }, hidden) =>
      raw({ type: Callback.ChannelMessageWithSource, data: deliveredMessage(message, hidden) }, files),
    defer: (hidden) =>
      raw({
        type: Callback.DeferredChannelMessageWithSource,
        data: hidden ? { flags: MessageFlags.Ephemeral } : {},
      }),
    fill: ({ files, rest: _, ...message }) =>
      retry(
        () => rest.patch(original, { body: { ...message, allowed_mentions: QUIET }, files, auth: false }),
        PATIENTLY,
      ),
    withdraw: () => retry(() => rest.delete(original, { auth: false }), PATIENTLY),
    followUp: ({ files, rest: _, ...message }, hidden) =>
      retry(
        () =>
          rest.post(Routes.webhook(application, token), {
            body: deliveredMessage(message, hidden),
            files,
            auth: false,
          }),
        PATIENTLY,
      ),
    closePressed: () =>
      raw({ type: Callback.UpdateMessage, data: { components: [], allowed_mentions: QUIET } }),
  };
};

const deliveredMessage = (message: Omit<Rendered, 'files' | 'rest'>, hidden: boolean) => ({
  ...message,
  flags: hidden ? FLAGS | MessageFlags.Ephemeral : FLAGS,
  allowed_mentions: QUIET,
});
