import { describeCommands } from './describeCommands.ts';
import type { BucketNames, Post, Session, SetUp } from '../ports.ts';
import type { Room } from './room.ts';
import type { WireMe, WirePost, WireStart, WireStep, WireStudio } from '../wire.ts';
import { wirePost } from '../posts/wirePost.ts';

const mostAtFirst = 60;

export const meOf = async ({ ports, names }: Room, { member }: Session): Promise<WireMe> => ({
  member,
  name: await names.of(member),
  keeper: await ports.people.isKeeper(member),
});

const aboutOf = async ({ names, buckets }: Room, post: Post) => ({
  // A reminder has no author, and may be addressed to everybody.
  name: post.line === '' ? '' : await names.of(post.member),
  buckets: await buckets.all(),
});

export const postForPhone = async (room: Room, post: Post): Promise<WirePost> =>
  wirePost(post, await aboutOf(room, post), room.ports.words, room.ports.desk.commands);

/** Converts a stored post; one that fails is logged and left out, so that the rest still arrive. */
export const postForPhoneOrSkipped = async (room: Room, post: Post): Promise<WirePost | undefined> => {
  const { ports } = room;
  const about = await aboutOf(room, post);
  try {
    return wirePost(post, about, ports.words, ports.desk.commands);
  } catch (err) {
    ports.log.error({ err, post: post.no }, 'skipped a post of the room that cannot be sent');
    return undefined;
  }
};

/** How far the studio is set up. The first steps are a keeper's, in the order of the README. */
const progressOf = async (
  { ports }: Room,
  { zoneSet, cups }: SetUp,
  { keeper, buckets }: { keeper: boolean; buckets: BucketNames },
): Promise<Pick<WireStudio, 'bare' | 'steps'>> => {
  const bare = buckets.size === 0;
  if (!keeper) return { bare };
  const steps: Record<WireStep, boolean> = {
    zone: zoneSet,
    cup: cups > 0,
    bucket: !bare,
    invite: (await ports.people.all()).length > 1,
  };
  return { bare, ...(Object.values(steps).includes(false) && { steps }) };
};

export const studioOf = async (room: Room, { member }: Session): Promise<WireStudio> => {
  const { ports } = room;
  const setUp = await ports.setUp();
  const known = { keeper: await ports.people.isKeeper(member), buckets: await room.buckets.all() };
  return { studio: setUp.name, zone: setUp.zone, ...(await progressOf(room, setUp, known)) };
};

/** A phone's start data. Before sign-in it has nothing but the studio's name. */
export const startOf = async (room: Room, session: Session | undefined): Promise<WireStart> => {
  const { ports, posts } = room;
  const now = ports.clock.now();
  const setUp = await ports.setUp();
  const common = { studio: setUp.name, open: ports.open, now, zone: setUp.zone };
  if (!session) return { ...common, commands: [], posts: [] };
  const me = await meOf(room, session);
  await posts.caughtUp();
  const said = posts.recent.seenBy(session.member, 0, mostAtFirst);
  const buckets = await room.buckets.all();
  return {
    ...common,
    me,
    ...(await progressOf(room, setUp, { keeper: me.keeper, buckets })),
    commands: describeCommands(ports.desk.commands, me.keeper ? 'keeper' : 'member', ports.words),
    posts: (await Promise.all(said.map((post) => postForPhoneOrSkipped(room, post)))).filter(
      (post) => post !== undefined,
    ),
  };
};
