import type { APIInteraction } from 'discord.js';
import { discordWords } from '../../words/platform/discordWords.ts';
import type { Bot } from '../bot.ts';
import { failureOf } from '../failure.ts';
import { retry, PATIENTLY } from './retry.ts';
import { clipped } from '../render/markdown.ts';
import { postDirectly, postMessage } from '../message/postMessage.ts';
import type { Rendered } from '../render/renderReply.ts';

/**
 * Reports what was logged when the interaction has expired: in the channel if the reply was public, otherwise by direct
 * message.
 */
export const notifyLate = async (
  { rest, ports }: Bot,
  interaction: APIInteraction,
  /** The message as rendered, then simpler versions of it. */
  messages: readonly Rendered[],
  hidden: boolean,
): Promise<void> => {
  const user = (interaction.member?.user ?? interaction.user)?.id;
  const channel = interaction.channel?.id;
  if (user === undefined || channel === undefined) return;
  const inChannel = (late: Rendered): Promise<unknown> =>
    postMessage(rest, channel, late, { ping: user, nonce: interaction.id });
  const directly = (late: Rendered): Promise<unknown> => postDirectly(rest, user, late, interaction.id);
  const ways = (hidden ? [directly] : [inChannel, directly]).flatMap((way) =>
    messages.map((message) => {
      const content = clipped(`${discordWords.lateReply}\n${message.content}`, 1_900);
      return () => way({ ...message, content });
    }),
  );
  for (const way of ways) {
    try {
      if ((await retry(way, PATIENTLY)) === 'told') return;
    } catch (error) {
      ports.log.warn(
        { interaction: interaction.id, failure: failureOf(error) },
        'could not tell what was logged this way',
      );
    }
  }
  ports.log.error({ interaction: interaction.id }, 'logged something and could not tell its author');
};
