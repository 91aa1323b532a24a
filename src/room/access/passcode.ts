import type { SignInRefusal } from '../../words/platform/roomWords.ts';
import type { RoomPorts } from '../ports.ts';
import { hashSecret, matchesHash, readPasscode } from './secrets.ts';
import type { MakePace, Pace } from './pace.ts';
import type { Turns } from './turns.ts';
import { isLike, isWeak } from './weakSecret.ts';

export const shortestSecret = 8;
export const longestSecret = 200;

export type PasscodeSet = { ok: true } | { ok: false; why: SignInRefusal } | { ok: false; seconds: number };

/** The studio's passcode, for a member's first sign-in. It may not be a member's own password: everybody knows it. */
export class Passcode {
  readonly #ports: Pick<RoomPorts, 'credentials' | 'clock' | 'setUp'>;
  readonly #turns: Turns;
  /** Each change tries every member's password, and tells whether it is one. */
  readonly #pace: Pace;

  constructor(
    ports: Pick<RoomPorts, 'credentials' | 'clock' | 'setUp'>,
    { turns, pace }: { turns: Turns; pace: MakePace },
  ) {
    this.#ports = ports;
    this.#turns = turns;
    this.#pace = pace('passcode', 1 / 60, 10);
  }

  /** Whether this is the passcode, also in capitals or without its hyphen. */
  async fits(typed: string): Promise<boolean> {
    const seal = await this.#ports.credentials.passcode();
    let fits = false;
    for (const one of new Set([typed.trim(), readPasscode(typed)]))
      fits = (await matchesHash(one, seal)) || fits;
    return fits;
  }

  /** Why a chosen password is too weak. `passcode` is the passcode as it was typed; empty if it was not. */
  async poorSecret(secret: string, name: string, passcode: string): Promise<SignInRefusal | undefined> {
    if (isLike(secret, passcode) || (await this.fits(secret))) return 'passcode-secret';
    const { name: studio } = await this.#ports.setUp();
    return isWeak(secret, name, studio) ? 'weak-secret' : undefined;
  }

  async set(passcode: string): Promise<PasscodeSet> {
    const { credentials, clock, setUp } = this.#ports;
    if (passcode.trim().length < shortestSecret) return { ok: false, why: 'short-passcode' };
    if (passcode.length > longestSecret) return { ok: false, why: 'long-passcode' };
    if (isWeak(passcode, (await setUp()).name)) return { ok: false, why: 'weak-passcode' };
    const pace = await this.#pace.take('', clock.now());
    if (!pace.ok) return pace;
    if (await this.#isSomebodys(passcode)) return { ok: false, why: 'members-secret' };
    await credentials.setPasscode(await hashSecret(readPasscode(passcode)));
    return { ok: true };
  }

  /** One turn for each password, so that somebody who signs in meanwhile waits for one of them only. */
  async #isSomebodys(passcode: string): Promise<boolean> {
    const tried = new Set([passcode, passcode.trim(), readPasscode(passcode)]);
    for (const { secret } of await this.#ports.credentials.claims())
      for (const one of secret === undefined ? [] : tried)
        if (await this.#turns.run(() => matchesHash(one, secret))) return true;
    return false;
  }
}
