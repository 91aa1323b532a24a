import type { Instant } from '../studio/ids.ts';

/** Why a time was not read, and the text that was typed for it. */
export type InstantProblem = { typed: string } & (
  | { kind: 'empty' }
  | { kind: 'not-a-time' }
  /** `at 9` or `3/4`: the two instants that it may mean. */
  | { kind: 'ambiguous'; either: Instant; or: Instant }
  /** Read as an instant still to come, where one gone by was wanted. */
  | { kind: 'future'; at: Instant }
  /** Read as an instant gone by, where one to come was wanted. */
  | { kind: 'past'; at: Instant }
);
