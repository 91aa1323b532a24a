import type { Instant, MemberId, Role, Seq, StudioId } from '../studio/ids.ts';
import type { Choice, Command, Reply } from './contract.ts';

/** One command by one member on some platform. */
export interface Request {
  /** An idempotency key from the platform: a repeat gets the same reply and logs nothing. */
  key: string;
  studio: StudioId;
  member: MemberId;
  role: Role;
  /** The server's time, not the phone's. */
  now: Instant;
  /** When the thing was done, if not now. Only entries use it. */
  happenedAt?: Instant;
  /** The command's name; for a group, followed by its leaf's name. */
  path: string[];
  typed: Record<string, string>;
  /** In the demo, anybody may act as this member. */
  guest?: true;
  /** The bucket's last entry at the time when the action was offered. */
  after?: Seq;
  /** Nobody asked this: the program looks whether the answer matters. Nothing is written down. */
  probe?: true;
}

export interface Desk {
  commands: Command[];
  dispatch(request: Request): Promise<Reply>;
  suggest(request: Request, option: string): Promise<Choice[]>;
}

/** How a platform sends a reminder. */
export interface Voice {
  speak(
    studio: StudioId,
    to: MemberId,
    reply: Reply,
    nonce: string,
    /** Told to everybody, it goes to the studio's channel. */
    whom?: 'member' | 'everyone',
  ): Promise<'said' | 'not-mine' | 'closed' | 'gone' | 'later' | 'unsure'>;
}
