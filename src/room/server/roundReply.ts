import type { Session } from '../ports.ts';
import { wirePost } from '../posts/wirePost.ts';
import type { WireReply } from '../wire.ts';
import type { Room } from './room.ts';

/** What waits for a member's hands, as /round answers it. It is not posted: it is asked anew each time. */
export const roundReply = async ({ ports, buckets }: Room, { member }: Session): Promise<WireReply> => {
  const now = ports.clock.now();
  const reply = await ports.desk.dispatch({
    key: '',
    studio: ports.studio,
    member,
    role: (await ports.people.isKeeper(member)) ? 'keeper' : 'member',
    now,
    path: ['round'],
    typed: {},
  });
  const post = { no: 0, key: '', id: '', at: now, member, line: '/round', private: true, reply };
  return wirePost(post, { name: '', buckets: await buckets.all() }, ports.words, ports.desk.commands).reply;
};
