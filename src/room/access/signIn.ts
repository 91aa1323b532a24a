import { createHmac, timingSafeEqual } from 'node:crypto';
import { readLinkCode } from '../../studio/people/linkCode.ts';
import type { RoomRefusal, SignInRefusal } from '../../words/platform/roomWords.ts';
import { nameLook } from '../../studio/nameLook.ts';
import { cleanName } from './cleanName.ts';
import { nameKey } from '../../text/normalizedName.ts';
import type { MakePace, Pace } from './pace.ts';
import type { MemberId, RoomPorts } from '../ports.ts';
import { matchesHash, hashSecret, tokenHash } from './secrets.ts';
import { longestSecret, shortestSecret, type Passcode } from './passcode.ts';
import type { Sessions } from './sessions.ts';
import type { Turns } from './turns.ts';

export interface Asked {
  name: string;
  secret: string;
  passcode: string;
  code: string;
  /** In the demo: signs in as a keeper. */
  keeper: boolean;
  /** The device token from this phone's last sign-in. */
  known: string | undefined;
  from: string;
}

export type SignedIn =
  | { ok: true; token: string; seconds: number; known: string; member: MemberId; name: string }
  | { ok: false; why: SignInRefusal }
  | { ok: false; slow: RoomRefusal; seconds: number };

/** How many sign-ins may wait at once: of all phones that are new here, and of each known name. */
const mostStrangers = 24;
const mostOfName = 3;
/** The key under which all new phones wait: no name. */
const strangers = '';

interface SignInParts {
  sessions: Sessions;
  passcode: Passcode;
  turns: Turns;
  pepper: string;
  pace: MakePace;
}

/**
 * Signing in. Guessing is rate-limited by address and in total, without locking anybody out: a phone that has signed in
 * before has its own limit, which others cannot use up.
 */
export class SignIn {
  readonly #ports: RoomPorts;
  readonly #sessions: Sessions;
  readonly #passcode: Passcode;
  readonly #turns: Turns;
  readonly #pepper: string;
  readonly #byAddress: Pace;
  /** A slower limit for each name, since a name can be attacked from many addresses. */
  readonly #byName: Pace;
  readonly #byPhone: Pace;
  readonly #all: Pace;
  readonly #waiting = new Map<string, number>();

  constructor(ports: RoomPorts, { sessions, passcode, turns, pepper, pace }: SignInParts) {
    this.#ports = ports;
    this.#sessions = sessions;
    this.#passcode = passcode;
    this.#turns = turns;
    this.#pepper = pepper;
    this.#byAddress = pace('address', 1 / 6, 10);
    this.#byName = pace('name', 1 / 20, 10);
    this.#byPhone = pace('phone', 1 / 6, 10);
    this.#all = pace('all', 2, 60);
  }

  async enter(asked: Asked): Promise<SignedIn> {
    const name = cleanName(asked.name);
    if (name === undefined) return { ok: false, why: 'bad-name' };
    const key = nameKey(name);
    if (this.#ports.open) return this.#asGuest(key, name, asked.keeper);
    const place = this.#isKnown(key, asked) ? key : strangers;
    const slow = await this.#tooFast(key, asked.from, place);
    if (slow !== undefined) return { ok: false, slow: 'too-fast', seconds: slow };
    if (asked.secret.length < shortestSecret) return { ok: false, why: 'short-secret' };
    if (asked.secret.length > longestSecret) return { ok: false, why: 'long-secret' };
    const most = place === strangers ? mostStrangers : mostOfName;
    if ((this.#waiting.get(place) ?? 0) >= most) return { ok: false, slow: 'full', seconds: 5 };
    return this.#inTurn(place, () => this.#check(key, name, asked));
  }

  /** A phone that has been here before goes first, ahead of what strangers guess. */
  async #inTurn<T>(place: string, work: () => Promise<T>): Promise<T> {
    this.#waiting.set(place, (this.#waiting.get(place) ?? 0) + 1);
    try {
      return await this.#turns.run(work, place !== strangers);
    } finally {
      const left = (this.#waiting.get(place) ?? 1) - 1;
      if (left > 0) this.#waiting.set(place, left);
      else this.#waiting.delete(place);
    }
  }

  async #asGuest(key: string, name: string, keeper: boolean): Promise<SignedIn> {
    const { people } = this.#ports;
    const namesake = (await people.all()).find((one) => nameKey(one.name) === key);
    const member = namesake?.id ?? (await people.memberOf(key, name));
    if ((await people.isKeeper(member)) !== keeper) await people.setKeeper(member, keeper, member);
    return this.#begin(member, namesake?.name ?? name, key);
  }

  async #check(key: string, name: string, asked: Asked): Promise<SignedIn> {
    const { credentials, people, log } = this.#ports;
    // A link code may be typed instead of the passcode; a keeper's passcode may look like one.
    const typed = readLinkCode(asked.code) ?? readLinkCode(asked.passcode);
    const linked = typed === undefined ? undefined : await credentials.linked(typed);
    if (typed !== undefined && linked !== undefined)
      return this.#asLinked(key, name, { member: linked, code: typed, secret: asked.secret });
    const code = tokenHash(asked.code);
    const keeper = asked.code !== '' && (await credentials.code(code, 'keeper', 'look'));
    const invited = keeper || (asked.code !== '' && (await credentials.code(code, 'join', 'look')));
    if (asked.code !== '' && !invited && asked.passcode === '') {
      log.warn({ from: asked.from }, 'somebody tried a code that opens nothing');
      return { ok: false, why: 'code-used' };
    }
    const told = await this.#passcode.fits(asked.passcode);
    const admitted = invited || told;
    const claim = await credentials.claim(key);
    const known = await matchesHash(asked.secret, claim?.secret);
    // A name and its own secret are enough to come back: a phone that was invited never knew the passcode.
    if (!(admitted || known) || (claim?.secret !== undefined && !known)) {
      // By the id: a log outlives a forgotten name, and an unclaimed one may be a password in the wrong field.
      log.warn({ from: asked.from, member: claim?.member }, 'somebody could not sign in');
      return { ok: false, why: 'no-fit' };
    }
    const poor = known
      ? undefined
      : await this.#passcode.poorSecret(asked.secret, name, told ? asked.passcode : '');
    if (poor !== undefined) return { ok: false, why: poor };
    if (claim === undefined && (await people.all()).some((one) => nameLook(one.name) === nameLook(name)))
      return { ok: false, why: 'name-taken' };
    if (invited && !(await credentials.code(code, keeper ? 'keeper' : 'join', 'spend')))
      return { ok: false, why: 'code-used' };
    const member = claim?.member ?? (await people.memberOf(key, name));
    if (!known && !(await credentials.take(key, { member, name, secret: await hashSecret(asked.secret) })))
      return { ok: false, why: 'name-taken' };
    if (keeper && !(await people.isKeeper(member))) await people.setKeeper(member, true, member);
    return this.#begin(member, claim?.name ?? name, key);
  }

  /** Signs in a member from another platform with a link code, and gives them their name and a secret here. */
  async #asLinked(
    key: string,
    name: string,
    { member, code, secret }: { member: MemberId; code: string; secret: string },
  ): Promise<SignedIn> {
    const { credentials, people } = this.#ports;
    const isOthers = (await people.all()).some(
      (one) => one.id !== member && nameLook(one.name) === nameLook(name),
    );
    if (isOthers) return { ok: false, why: 'name-taken' };
    const poor = await this.#passcode.poorSecret(secret, name, '');
    if (poor !== undefined) return { ok: false, why: poor };
    const taken = await credentials.takeLinked(code, key, { member, name, secret: await hashSecret(secret) });
    if (taken === 'no-code') return { ok: false, why: 'code-used' };
    if (taken === 'not-free') return { ok: false, why: 'name-taken' };
    return this.#begin(member, name, key);
  }

  async #begin(member: MemberId, name: string, key: string): Promise<SignedIn> {
    const session = await this.#sessions.begin(member, name);
    return { ok: true, ...session, known: this.#mark(key), member, name };
  }

  #mark(key: string): string {
    return createHmac('sha256', this.#pepper).update(key).digest('base64url');
  }

  /** Whether this phone has come in by that name before. */
  #isKnown(key: string, { known }: Asked): boolean {
    const mark = Buffer.from(this.#mark(key));
    const shown = Buffer.from(known ?? '');
    return shown.length === mark.length && timingSafeEqual(shown, mark);
  }

  async #tooFast(key: string, from: string, place: string): Promise<number | undefined> {
    const now = this.#ports.clock.now();
    const limit =
      place !== strangers
        ? await this.#byPhone.take(key, now)
        : await takeInTurn(
            () => this.#byAddress.take(from, now),
            () => this.#byName.take(key, now),
            () => this.#all.take('', now),
          );
    return limit.ok ? undefined : limit.seconds;
  }
}

/** Takes from each limit in turn and stops at the first that is used up, so that the later ones lose nothing. */
const takeInTurn = async (...limits: (() => ReturnType<Pace['take']>)[]) => {
  for (const take of limits) {
    const taken = await take();
    if (!taken.ok) return taken;
  }
  return { ok: true } as const;
};
