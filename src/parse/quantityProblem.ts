export type Dimension = 'mass' | 'volume' | 'length' | 'duration' | 'temperature';

/** Why a quantity could not be parsed, and what was typed. */
export type QuantityProblem = { typed: string } & (
  | { kind: 'empty' }
  | { kind: 'not-a-number' }
  | { kind: 'negative' }
  | { kind: 'no-unit'; wanted: Dimension }
  /** `near`: the unit that it is a letter from. */
  | { kind: 'unknown-unit'; unit: string; wanted: Dimension; near?: string }
  | { kind: 'wrong-dimension'; unit: string; is: Dimension; wanted: Dimension }
  /** `1,500 l` or `1:30`: the two values that it may mean, in the base unit. */
  | { kind: 'ambiguous'; either: number; or: number }
  | { kind: 'not-a-range' }
  | { kind: 'upside-down'; low: number; high: number }
);
