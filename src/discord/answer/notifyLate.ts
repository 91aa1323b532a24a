import type { APIInteraction } from 'discord.js';
import { discordWords } from '../../words/platform/discordWords.ts';
import type { Bot } from '../bot.ts';
import { directChannel } from '../message/directChannel.ts';
import { failureOf } from '../failure.ts';
import { retry, PATIENTLY } from './retry.ts';
import { clipped } from '../render/markdown.ts';
import { postMessage } from '../message/postMessage.ts';
import type { Rendered } from '../render/renderReply.ts';

/**
 * What was logged stays logged, and whoever logged it is told, even when the interaction can no longer be
 * answered: in the channel if the reply was for everyone, else directly.
 */
export const notifyLate = async (
  { rest, ports }: Bot,
  interaction: APIInteraction,
  /** As it should look, and simpler. */
  messages: readonly Rendered[],
  hidden: boolean,
): Promise<void> => {
  const user = (interaction.member?.user ?? interaction.user)?.id;
  const channel = interaction.channel?.id;
  if (user === undefined || channel === undefined) return;
  const inChannel = (late: Rendered): Promise<unknown> =>
    postMessage(rest, channel, late, { ping: user, nonce: interaction.id });
  const directly = async (late: Rendered): Promise<unknown> =>
    postMessage(rest, await directChannel(rest, user), late, { nonce: interaction.id });
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
