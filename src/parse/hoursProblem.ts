/** Why opening hours or closed days were not read, and the text that was typed for them. */
export type HoursProblem = { typed: string } & (
  | { kind: 'empty' }
  | { kind: 'not-hours' }
  /** `8-10pm`: morning or evening is not said. */
  | { kind: 'which-half' }
  /** Opening and closing at the same time. */
  | { kind: 'no-time-between' }
  | { kind: 'not-a-day'; day: string }
  /** A stretch of days that ends before it starts, or is longer than a year. */
  | { kind: 'not-a-stretch'; stretch: string }
);
