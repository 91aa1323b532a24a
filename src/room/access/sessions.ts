import type { Credentials, Instant, MemberId, RoomPorts, Session } from '../ports.ts';
import { freshToken, tokenHash } from './secrets.ts';

/** More phones than a member has. Beyond it, the oldest session ends. */
const mostOfMember = 10;
const sessionLifetime = 90 * 24 * 3_600_000;

/**
 * The sessions. They are stored on the server, so that the server can end them, and cached in memory, so that a forged
 * token costs no database read. Where several processes let people in, each request asks the database.
 */
export class Sessions {
  readonly #credentials: Credentials;
  readonly #clock: RoomPorts['clock'];
  readonly #live: Map<string, Session>;
  readonly #watched = new Map<string, Set<() => void>>();

  private constructor(credentials: Credentials, clock: RoomPorts['clock'], live: Session[]) {
    this.#credentials = credentials;
    this.#clock = clock;
    this.#live = new Map(live.map((session) => [session.hash, session]));
  }

  static async open({ credentials, clock }: Pick<RoomPorts, 'credentials' | 'clock'>): Promise<Sessions> {
    return new Sessions(credentials, clock, await credentials.sessions());
  }

  async of(token: string | undefined): Promise<Session | undefined> {
    if (token === undefined || token.length !== 43) return undefined;
    const hash = tokenHash(token);
    if (this.#credentials.isShared) this.#note(hash, await this.#credentials.session(hash));
    return this.#remembered(hash);
  }

  /** A session that was seen here before; it may have ended elsewhere. */
  seen(token: string | undefined): Session | undefined {
    return token === undefined || token.length !== 43 ? undefined : this.#remembered(tokenHash(token));
  }

  /** Takes in what other processes have changed. */
  async readAgain(): Promise<void> {
    const stored = new Map((await this.#credentials.sessions()).map((session) => [session.hash, session]));
    for (const hash of [...this.#live.keys(), ...stored.keys()]) this.#note(hash, stored.get(hash));
  }

  /** Whether a session is still valid: an event stream may outlive it. */
  holds({ hash }: Session): boolean {
    const session = this.#live.get(hash);
    return session !== undefined && session.until > this.#clock.now();
  }

  /** Calls `then` when the session ends early; returns a function that unsubscribes. */
  whenEnded({ hash }: Session, then: () => void): () => void {
    const watchers = this.#watched.get(hash) ?? new Set();
    this.#watched.set(hash, watchers.add(then));
    return () => {
      watchers.delete(then);
      if (watchers.size === 0) this.#watched.delete(hash);
    };
  }

  async begin(member: MemberId, name: string): Promise<{ token: string; seconds: number }> {
    if (this.#credentials.isShared) await this.readAgain();
    const token = freshToken();
    const until: Instant = this.#clock.before(-sessionLifetime);
    for (const oldest of this.#of(member).slice(0, 1 - mostOfMember)) await this.end(oldest);
    const session = { hash: tokenHash(token), member, name, until };
    await this.#credentials.begin(session);
    this.#live.set(session.hash, session);
    return { token, seconds: sessionLifetime / 1000 };
  }

  async end(session: Session): Promise<void> {
    this.#drop(session.hash);
    await this.#credentials.end({ hash: session.hash });
  }

  /** Drops the members' sessions from memory; the database rows are gone already. */
  forget(members: readonly MemberId[]): void {
    for (const [hash, { member }] of this.#live) if (members.includes(member)) this.#live.delete(hash);
  }

  /** After a link: moves sessions to the joined member, so that the phone stays signed in. */
  follow(from: MemberId, into: MemberId): void {
    for (const session of this.#live.values()) if (session.member === from) session.member = into;
  }

  async endAllOf(member: MemberId): Promise<void> {
    for (const [hash, session] of this.#live) if (session.member === member) this.#drop(hash);
    await this.#credentials.end({ member });
  }

  async endAllBut({ hash: own }: Session): Promise<void> {
    for (const hash of [...this.#live.keys()]) if (hash !== own) this.#drop(hash);
    await this.#credentials.end({ allBut: own });
  }

  #of(member: MemberId): Session[] {
    return [...this.#live.values()].filter((one) => one.member === member).sort((a, b) => a.until - b.until);
  }

  #remembered(hash: string): Session | undefined {
    const session = this.#live.get(hash);
    return session && session.until > this.#clock.now() ? session : undefined;
  }

  #note(hash: string, stored: Session | undefined): void {
    const live = this.#live.get(hash);
    if (!stored) this.#drop(hash);
    // The same object: event streams have it.
    else if (live) live.member = stored.member;
    else this.#live.set(hash, stored);
  }

  #drop(hash: string): void {
    this.#live.delete(hash);
    for (const then of this.#watched.get(hash) ?? []) then();
  }
}
