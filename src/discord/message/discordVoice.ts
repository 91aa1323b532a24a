import type { REST } from 'discord.js';
import type { Voice } from '../../contract/desk.ts';
import { type Failure, failureOf } from '../failure.ts';
import type { DiscordPorts } from '../ports.ts';
import { postDirectly, postMessage } from './postMessage.ts';
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
      const directly = await attempt(() => postDirectly(rest, user, message, nonce));
      if (directly !== 'closed' || channel === undefined) return directly;
    }
    const inServer = await renderReply(reply, { studio, direct: false }, ports);
    return attempt(() => postMessage(rest, channel, inServer, { nonce, ping: user }));
  },
});

const outcomes: Partial<Record<Failure, Spoken>> = {
  closed: 'closed',
  'no-channel': 'gone',
  'no-permission': 'gone',
  cut: 'unsure',
  unreached: 'later',
};

const attempt = async (send: () => Promise<unknown>): Promise<Spoken> => {
  try {
    await send();
    return 'said';
  } catch (error) {
    const outcome = outcomes[failureOf(error)];
    if (outcome === undefined) throw error;
    return outcome;
  }
};
