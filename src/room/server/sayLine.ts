import { createHash } from 'node:crypto';
import type { Command, Reply } from '../../contract/contract.ts';
import type { Request } from '../../contract/desk.ts';
import { leafAt, parseLine, printLine } from '../../contract/parseLine.ts';
import { longAgo } from '../../contract/kinds/when.ts';
import { plainText } from '../../contract/plainText.ts';
import { speak } from '../../desk/speak.ts';
import { withoutSecrets } from '../../contract/withoutSecrets.ts';
import type { Post, Session } from '../ports.ts';
import type { Room } from './room.ts';

/** What a phone sends: a typed line, or a form's options. */
export type Sent = {
  id: string;
  /** Who wrote it, as the page knows. Somebody else may have signed in since, in another tab. */
  member?: string | undefined;
  /** How long it waited on the phone, in milliseconds. */
  waited: number;
  /** Its author has seen how old it is, and still wants it sent. */
  sure: boolean;
} & (
  | {
      line: string;
      /** The number of the post whose button this is. */
      pressed?: number | undefined;
    }
  | { path: string[]; typed: Record<string, string> }
);

/** The result: it was posted, it was refused for now, or a bug prevented it. */
export type Said =
  | { post: Post }
  | { refused: 'too-old' | 'over-a-year-old' | 'sign-in' | 'disk-full' | 'full' }
  | { broken: string };

/** A line sent this soon after it was written counts as happening on arrival: common practice. */
const atOnce = 5_000;
/** Beyond this age, the author may have typed it again or acted differently, so they are asked: common practice. */
const longestUnasked = 24 * 3_600_000;

/** Whether the author is the member who is signed in now, including by an id from before a link. */
const isSame = async ({ ports }: Room, { member }: Session, writer: string): Promise<boolean> =>
  writer === member || (await ports.people.standsFor(writer)) === member;

const keyOf = (member: string, act: string): string => `room:${member}:${act}`;

/**
 * What every press of the same button shares, from whatever phone, tab or reload: it is logged once. A question is
 * answered anew each time. Only a fingerprint of the line is kept: it may hold a member's words.
 */
const actOf = (sent: Sent, commands: Command[]): string | undefined => {
  if (!('line' in sent) || sent.pressed === undefined) return undefined;
  const { line, pressed } = sent;
  const parsed = parseLine(line, commands);
  if (!parsed.ok || leafAt(commands, parsed.value.path)?.effect !== 'logs') return undefined;
  return `press-${pressed}-${createHash('sha256').update(line).digest('base64url').slice(0, 22)}`;
};

/** Runs a line once, however often it is sent, with the time at which it was written. */
export const sayLine = async (room: Room, session: Session, sent: Sent): Promise<Said> => {
  const { ports, posts } = room;
  const { member } = session;
  const { id, waited, sure } = sent;
  if (sent.member !== undefined && !(await isSame(room, session, sent.member))) return { refused: 'sign-in' };
  const key = keyOf(member, id);
  const act = actOf(sent, ports.desk.commands) ?? id;
  const said = posts.recent.byKey(key) ?? posts.recent.byKey(keyOf(member, act));
  if (said) return { post: said };
  if (waited > longAgo) return { refused: 'over-a-year-old' };
  if (waited > longestUnasked && !sure) return { refused: 'too-old' };
  const now = ports.clock.now();
  const happenedAt = waited > atOnce ? ports.clock.before(waited) : now;
  const role = (await ports.people.isKeeper(member)) ? 'keeper' : 'member';
  const guest = ports.open ? ({ guest: true } as const) : {};
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
      ? await speak(line, keyOf(member, act), speaker, ports)
      : await ports.desk.dispatch({ ...speaker, key, path: sent.path, typed: sent.typed });
  // Not stored under its key, so that a retry runs it again.
  if (reply.kind === 'error' && reply.data['why'] === 'full') return { refused: 'disk-full' };
  if (reply.kind === 'error' && reply.data['why'] === 'crowded') return { refused: 'full' };
  if (reply.kind === 'error') return { broken: plainText(reply.title, { now, zone: 'UTC' }) };
  const shown = withoutSecrets(line, ports.desk.commands);
  const post = await posts.say({
    // The line itself may have linked the member to another. A retry finds the post under the joined member.
    key: keyOf(session.member, reply.kind === 'answer' ? act : id),
    id,
    at: now,
    member: session.member,
    line: shown.slice(0, 500),
    private: reply.private ?? reply.kind !== 'answer',
    // The answer may repeat the secret.
    reply: shown === line ? reply : { ...reply, fleeting: true },
  });
  return { post };
};
