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
/** No card below a link, whoever wrote it. */
const FLAGS = MessageFlags.SuppressEmbeds;

/** One interaction, and the ways to answer it. */
export interface InteractionResponder {
  answer(message: Rendered, hidden: boolean): Promise<Delivery>;
  /** Shows that an answer is coming. */
  defer(hidden: boolean): Promise<Delivery>;
  /** Puts the answer where it was shown to be coming. */
  fill(message: Rendered): Promise<Delivery>;
  withdraw(): Promise<Delivery>;
  followUp(message: Rendered, hidden: boolean): Promise<Delivery>;
  /** Takes the buttons off the message that was pressed. */
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
      raw({ type: Callback.ChannelMessageWithSource, data: shown(message, hidden) }, files),
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
          rest.post(Routes.webhook(application, token), { body: shown(message, hidden), files, auth: false }),
        PATIENTLY,
      ),
    closePressed: () =>
      raw({ type: Callback.UpdateMessage, data: { components: [], allowed_mentions: QUIET } }),
  };
};

const shown = (message: Omit<Rendered, 'files' | 'rest'>, hidden: boolean) => ({
  ...message,
  flags: hidden ? FLAGS | MessageFlags.Ephemeral : FLAGS,
  allowed_mentions: QUIET,
});
