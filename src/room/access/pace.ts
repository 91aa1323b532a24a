import { createHmac } from 'node:crypto';
import type { RoomPorts } from '../ports.ts';
import { TokenBucket } from './tokenBucket.ts';

type Taken = ReturnType<TokenBucket['take']>;

/** How often something may be tried, by a key such as an address. */
export interface Pace {
  take(key: string, now: number): Taken | Promise<Taken>;
}

export type MakePace = (name: string, perSecond: number, atOnce: number) => Pace;

/**
 * Counts tries in memory, or in the database when several processes let people in: so nobody gets more of them by asking
 * each. There a key is kept as a hash, because it may be an address or a name.
 */
export const paces =
  (credentials: Pick<RoomPorts['credentials'], 'isShared' | 'mayTry'>, pepper: string): MakePace =>
  (name, perSecond, atOnce) => {
    if (!credentials.isShared) return new TokenBucket(perSecond, atOnce);
    const every = Math.ceil(1_000 / perSecond);
    const hashOf = (key: string) => createHmac('sha256', pepper).update(`${name}:${key}`).digest('base64url');
    return { take: (key) => credentials.mayTry(hashOf(key), { atOnce, every }) };
  };
