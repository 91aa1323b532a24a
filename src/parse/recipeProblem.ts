/** Why a recipe was not read. */
export type RecipeProblem =
  | { kind: 'nothing' }
  /** A part of it without a name, or without an amount. */
  | { kind: 'unreadable'; part: string }
  | { kind: 'negative'; part: string }
  | { kind: 'too-much'; part: string }
  | { kind: 'sums-to-zero' }
  | { kind: 'too-long'; most: number };
