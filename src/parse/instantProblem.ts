import type { Instant } from '../studio/ids.ts';

/** Why a time could not be parsed, and what was typed. */
export type InstantProblem = { typed: string } & (
  | { kind: 'empty' }
  | { kind: 'not-a-time' }
  /** `at 9` or `3/4`: the two instants that it may mean. */
  | { kind: 'ambiguous'; either: Instant; or: Instant }
  /** It is in the future, but a past time was wanted. */
  | { kind: 'future'; at: Instant }
  /** It is in the past, but a future time was wanted. */
  | { kind: 'past'; at: Instant }
);
