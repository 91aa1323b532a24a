import type { Listening } from './eventStream.ts';
import type { PeopleChange } from '../../studio/logbook/ports.ts';
import type { Room } from './room.ts';

/** Lets what the room remembers go with its people: two who are one now, or somebody who is to be forgotten. */
export const followPeople = (
  { ports, sessions, posts, names }: Room,
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
    for (const [hearing, { session }] of listening) if (!sessions.holds(session)) hearing.close();
  }
  names.forget();
};
