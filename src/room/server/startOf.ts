import { describeCommands } from './describeCommands.ts';
import type { Post, Session } from '../ports.ts';
import type { Room } from './room.ts';
import type { WireMe, WirePost, WireStart } from '../wire.ts';
import { wirePost } from '../posts/wirePost.ts';

const mostAtFirst = 60;

export const meOf = async ({ ports, names }: Room, { member }: Session): Promise<WireMe> => ({
  member,
  name: await names.of(member),
  keeper: await ports.people.isKeeper(member),
});

export const wired = async ({ ports, names }: Room, post: Post): Promise<WirePost> =>
  wirePost(post, await names.of(post.member), ports.words, ports.desk.commands);

/** The same of what was said before; one post that cannot be sent is written down and left out, and the others are sent. */
export const wiredOrSkipped = async (room: Room, post: Post): Promise<WirePost | undefined> => {
  const { ports, names } = room;
  const name = await names.of(post.member);
  try {
    return wirePost(post, name, ports.words, ports.desk.commands);
  } catch (err) {
    ports.log.error({ err, post: post.no }, 'skipped a post of the room that cannot be sent');
    return undefined;
  }
};

/** What a phone starts from: nothing of the studio but its name until somebody has signed in. */
export const startOf = async (room: Room, session: Session | undefined): Promise<WireStart> => {
  const { ports, posts } = room;
  const now = ports.clock.now();
  const common = { studio: ports.studioName, open: ports.open, now, zone: await ports.zone() };
  if (!session) return { ...common, commands: [], posts: [] };
  const me = await meOf(room, session);
  const said = posts.seenBy(session.member, 0, mostAtFirst);
  return {
    ...common,
    me,
    bare: said.length === 0 && (await ports.board()).length === 0,
    commands: describeCommands(ports.desk.commands, me.keeper ? 'keeper' : 'member', ports.words),
    posts: (await Promise.all(said.map((post) => wiredOrSkipped(room, post)))).filter(
      (post) => post !== undefined,
    ),
  };
};
