/** Why opening hours or closed days could not be parsed, and what was typed. */
export type HoursProblem = { typed: string } & (
  | { kind: 'empty' }
  | { kind: 'not-hours' }
  /** `8-10pm`: it is unclear whether 8 is in the morning or in the evening. */
  | { kind: 'which-half' }
  /** Opening and closing at the same time. */
  | { kind: 'no-time-between' }
  | { kind: 'not-a-day'; day: string }
  /** A date range that ends before it starts, or is longer than a year. */
  | { kind: 'not-a-stretch'; stretch: string }
);
