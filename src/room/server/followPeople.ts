import type { Listening } from './eventStream.ts';
import type { PeopleChange } from '../../studio/logbook/ports.ts';
import type { Room } from './room.ts';

/** Updates what the room has in memory when two members are linked or one is forgotten. */
export const followPeople = (
  { ports, sessions, posts, names, buckets }: Room,
  listening: Listening,
  change: PeopleChange,
): void => {
  if (change.studio !== ports.studio) return;
  if (change.kind === 'joined') {
    sessions.follow(change.from, change.into);
    posts.follow(change.from, change.into);
  } else {
    sessions.forget(change.members);
    posts.erase(change.members, change.clean);
    for (const [stream, { session }] of listening) if (!sessions.holds(session)) stream.close();
  }
  names.forget();
  buckets.forget();
};
