/** Why a recipe could not be parsed. */
export type RecipeProblem =
  | { kind: 'nothing' }
  /** A part without a name or an amount. */
  | { kind: 'unreadable'; part: string }
  | { kind: 'negative'; part: string }
  | { kind: 'too-much'; part: string }
  | { kind: 'sums-to-zero' }
  | { kind: 'too-long'; most: number };
