import type { Reply, Request } from '../../contract/contract.ts';
import { printLine } from '../../contract/parseLine.ts';
import { plainText } from '../../contract/plainText.ts';
import { speak } from '../../desk/speak.ts';
import type { Post, Session } from '../ports.ts';
import type { Room } from './room.ts';

/** What a phone sends: a line as it was typed, or the options of a form. */
export type Sent = {
  id: string;
  /** Who wrote it, as the page knows them; another may have signed in since, in another tab. */
  member: string | undefined;
  /** How long it has waited on the phone, in milliseconds. */
  waited: number;
  /** Somebody has seen how old it is, and wants it sent. */
  sure: boolean;
} & ({ line: string } | { path: string[]; typed: Record<string, string> });

/** What came of a line: it was said, it is not to be said yet, or a bug kept it from being logged. */
export type Said = { post: Post } | { refused: 'too-old' | 'sign-in' } | { broken: string };

/** Sent so soon, it happened when it came: common practice. */
const atOnce = 5_000;
/** Older than that, whoever typed it may have typed it again, or done it otherwise: common practice. */
const longestUnasked = 24 * 3_600_000;

/** Whether somebody is who is signed in now, by the same name or, since they were linked, by another. */
const isSame = async ({ ports }: Room, { member }: Session, writer: string): Promise<boolean> =>
  writer === member || (await ports.people.standsFor(writer)) === member;

/** Says a line in the room once, however often it is sent. What was done while the phone was out of reach is of then. */
export const sayLine = async (room: Room, session: Session, sent: Sent): Promise<Said> => {
  const { ports, posts } = room;
  const { member } = session;
  const { id, waited, sure } = sent;
  if (sent.member !== undefined && !(await isSame(room, session, sent.member))) return { refused: 'sign-in' };
  const key = `room:${member}:${id}`;
  const said = posts.byKey(key);
  if (said) return { post: said };
  if (waited > longestUnasked && !sure) return { refused: 'too-old' };
  const now = ports.clock.now();
  const happenedAt = waited > atOnce ? ports.clock.before(waited) : now;
  const role = (await ports.people.isKeeper(member)) ? 'keeper' : 'member';
  const guest = ports.open && ({ guest: true } as const);
  const speaker = {
    studio: ports.studio,
    member,
    role,
    now,
    happenedAt,
    ...guest,
  } satisfies Partial<Request>;
  const line = 'line' in sent ? sent.line : printLine(sent.path, sent.typed);
  const reply: Reply =
    'line' in sent
      ? await speak(line, key, speaker, ports)
      : await ports.desk.dispatch({ ...speaker, key, path: sent.path, typed: sent.typed });
  // Not remembered under its key: sent again, it is tried again.
  if (reply.kind === 'error') return { broken: plainText(reply.title, { now, zone: 'UTC' }) };
  const post = posts.say({
    // By now perhaps of another: the line may have been what linked the two. Sent again, it is found as theirs.
    key: `room:${session.member}:${id}`,
    id,
    at: now,
    member: session.member,
    line: line.slice(0, 500),
    private: reply.private ?? reply.kind !== 'answer',
    reply,
  });
  return { post };
};
