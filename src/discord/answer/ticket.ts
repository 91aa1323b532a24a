import {
  InteractionResponseType as Callback,
  MessageFlags,
  Routes,
  type APIInteraction,
  type APIInteractionResponse,
  type RawFile,
} from 'discord.js';
import type { Bot } from '../bot.ts';
import { AT_ONCE, insist, PATIENTLY, type Told } from './insist.ts';
import type { Rendered } from '../render/renderReply.ts';

const QUIET = { parse: [] };
/** No card below a link, whoever wrote it. */
const FLAGS = MessageFlags.SuppressEmbeds;

/** One interaction, and the ways to answer it. */
export interface Ticket {
  answer(message: Rendered, hidden: boolean): Promise<Told>;
  /** Shows that an answer is coming. */
  defer(hidden: boolean): Promise<Told>;
  /** Puts the answer where it was shown to be coming. */
  fill(message: Rendered): Promise<Told>;
  withdraw(): Promise<Told>;
  followUp(message: Rendered, hidden: boolean): Promise<Told>;
  /** Takes the buttons off the message that was pressed. */
  closePressed(): Promise<Told>;
  raw(body: APIInteractionResponse): Promise<Told>;
}

export const ticket = ({ rest, application }: Bot, { id, token }: APIInteraction): Ticket => {
  const raw = (body: APIInteractionResponse, files: RawFile[] = []): Promise<Told> =>
    insist(() => rest.post(Routes.interactionCallback(id, token), { body, files, auth: false }), AT_ONCE);
  const original = Routes.webhookMessage(application, token, '@original');
  return {
    raw,
    answer: ({ files, ...message }, hidden) =>
      raw({ type: Callback.ChannelMessageWithSource, data: shown(message, hidden) }, files),
    defer: (hidden) =>
      raw({
        type: Callback.DeferredChannelMessageWithSource,
        data: hidden ? { flags: MessageFlags.Ephemeral } : {},
      }),
    fill: ({ files, ...message }) =>
      insist(
        () => rest.patch(original, { body: { ...message, allowed_mentions: QUIET }, files, auth: false }),
        PATIENTLY,
      ),
    withdraw: () => insist(() => rest.delete(original, { auth: false }), PATIENTLY),
    followUp: ({ files, ...message }, hidden) =>
      insist(
        () =>
          rest.post(Routes.webhook(application, token), { body: shown(message, hidden), files, auth: false }),
        PATIENTLY,
      ),
    closePressed: () =>
      raw({ type: Callback.UpdateMessage, data: { components: [], allowed_mentions: QUIET } }),
  };
};

const shown = (message: Omit<Rendered, 'files'>, hidden: boolean) => ({
  ...message,
  flags: hidden ? FLAGS | MessageFlags.Ephemeral : FLAGS,
  allowed_mentions: QUIET,
});
