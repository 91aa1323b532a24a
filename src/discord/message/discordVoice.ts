import type { REST } from 'discord.js';
import type { Voice } from '../../contract/desk.ts';
import { directChannel } from './directChannel.ts';
import { failureOf } from '../failure.ts';
import type { DiscordPorts } from '../ports.ts';
import { postMessage } from './postMessage.ts';
import { renderReply } from '../render/renderReply.ts';

type Spoken = Awaited<ReturnType<Voice['speak']>>;

/**
 * Sends a reminder by direct message. If those are closed, or the member prefers it, the studio's channel is used, with
 * a ping to that member alone.
 */
export const discordVoice = (rest: REST, ports: DiscordPorts): Voice => ({
  async speak(studio, to, reply, nonce, whom) {
    if (whom === 'everyone') {
      const open = await ports.channelOf(studio);
      if (open === undefined) return 'not-mine';
      const message = await renderReply(reply, { studio, direct: false }, ports);
      return attempt(() => postMessage(rest, open, message, { nonce }));
    }
    const { user, channel, inChannel = false } = await ports.addressOf(studio, to);
    if (user === undefined) return 'not-mine';
    if (!inChannel || channel === undefined) {
      const message = await renderReply(reply, { studio, direct: true }, ports);
      const directly = await attempt(async () =>
        postMessage(rest, await directChannel(rest, user), message, { nonce }),
      );
      if (directly !== 'closed' || channel === undefined) return directly;
    }
    const inServer = await renderReply(reply, { studio, direct: false }, ports);
    return attempt(() => postMessage(rest, channel, inServer, { nonce, ping: user }));
  },
});

const attempt = async (send: () => Promise<unknown>): Promise<Spoken> => {
  try {
    await send();
    return 'said';
  } catch (error) {
    switch (failureOf(error)) {
      case 'closed':
        return 'closed';
      case 'no-channel':
      case 'no-permission':
        return 'gone';
      case 'cut':
        return 'unsure';
      case 'unreached':
        return 'later';
      default:
        throw error;
    }
  }
};
