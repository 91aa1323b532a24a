import type { Reply, Request } from '../../contract/contract.ts';
import { printLine } from '../../contract/parseLine.ts';
import { speak } from '../../desk/speak.ts';
import type { Post, Session } from '../ports.ts';
import type { Room } from './room.ts';

/** What a phone sends: a line as it was typed, or the options of a form. */
export type Sent = { id: string; waited: number } & (
  { line: string } | { path: string[]; typed: Record<string, string> }
);

/** A phone that was out of reach says how long its line has waited: what was done then is logged as done then. */
const longestWait = 24 * 3_600_000;

/** Says a line in the room once, however often it is sent. */
export const sayLine = async (room: Room, session: Session, sent: Sent): Promise<Post> => {
  const { ports, posts } = room;
  const { member } = session;
  const key = `room:${member}:${sent.id}`;
  const said = posts.byKey(key);
  if (said) return said;
  const at = ports.clock.before(Math.min(sent.waited, longestWait));
  const role = (await ports.people.isKeeper(member)) ? 'keeper' : 'member';
  const guest = ports.open && ({ guest: true } as const);
  const speaker = { studio: ports.studio, member, role, at, ...guest } satisfies Partial<Request>;
  const line = 'line' in sent ? sent.line : printLine(sent.path, sent.typed);
  const reply: Reply =
    'line' in sent
      ? await speak(line, key, speaker, ports)
      : await ports.desk.dispatch({ ...speaker, key, path: sent.path, typed: sent.typed });
  return posts.say({
    // By now perhaps of another: the line may have been what linked the two. Sent again, it is found as theirs.
    key: `room:${session.member}:${sent.id}`,
    id: sent.id,
    at,
    member: session.member,
    line: line.slice(0, 500),
    private: reply.private ?? reply.kind !== 'answer',
    reply,
  });
};
