import type { Voice } from '../../contract/desk.ts';
import type { Room } from './room.ts';

/** Posts a reminder in the room, for its member alone or for everybody, who see it at the next visit. */
export const roomVoice = ({ ports, posts }: Room): Voice => ({
  async speak(studio, to, reply, nonce, whom) {
    if (studio !== ports.studio) return 'not-mine';
    const isForAll = whom === 'everyone';
    const known = isForAll || (await ports.credentials.claims()).some(({ member }) => member === to);
    if (!known && !ports.open) return 'not-mine';
    await posts.say({
      key: `room:reminder:${nonce}`,
      id: `reminder-${nonce}`,
      at: ports.clock.now(),
      member: to,
      line: '',
      private: !isForAll,
      reply: { ...reply, private: !isForAll },
    });
    await posts.kept();
    return 'said';
  },
});
