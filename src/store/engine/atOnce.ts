/** What a database that answers in the same thread adds to its dialect's adapter: a shorter way to a statement. */
export interface AnswersAtOnce {
  /** Runs a statement with its values and returns its rows. It is prepared once. */
  atOnce(sql: string, values: readonly unknown[]): unknown[];
}

export const answersAtOnce = (adapter: object): adapter is AnswersAtOnce => 'atOnce' in adapter;
