import type { CompiledQuery, Kysely } from 'kysely';
import type { Tables } from '../migrations/tables.ts';

/** What a database that answers in the same thread adds to its dialect's adapter: a shorter way to a statement. */
export interface AnswersAtOnce {
  /** Runs a statement with its values and returns its rows. It is prepared once. */
  atOnce(sql: string, values: readonly unknown[]): unknown[];
}

const answersAtOnce = (adapter: object): adapter is AnswersAtOnce => 'atOnce' in adapter;

/** A query that is the same each time but for its values. */
interface PreparedQuery<Row = unknown> extends CompiledQuery<Row> {
  /** The name by which a server can keep it. */
  readonly statement: string;
  /** False when nobody needs its answer: on a server, the transaction may go on meanwhile. It fails with the commit then. */
  readonly isAwaited: boolean;
}

export const isPrepared = (query: CompiledQuery): query is PreparedQuery => 'statement' in query;

/** Stands for a value while a query is compiled. */
class Placeholder {
  readonly name: string;

  constructor(name: string) {
    this.name = name;
  }
}

let queries = 0;

/**
 * A query that is compiled on first use and only run afterwards: for every logged entry, compiling it takes longer
 * than SQLite takes to run it. One that is not awaited answers no rows, and fails with the commit.
 */
export const compiledOnce = <Values extends Record<string, unknown>, Row = unknown>(
  build: (
    db: Kysely<Tables>,
    value: <Name extends keyof Values & string>(name: Name) => Values[Name],
  ) => { compile(): CompiledQuery<Row> },
  { isAwaited = true } = {},
) => {
  queries += 1;
  const statement = `q${queries}`;
  // One for each database, because the compiled text depends on its dialect.
  const known = new WeakMap<object, { query: CompiledQuery<Row>; names: readonly string[] }>();
  return async (db: Kysely<Tables>, values: Values): Promise<Row[]> => {
    const { adapter } = db.getExecutor();
    let compiled = known.get(adapter);
    if (!compiled) {
      // The query builder passes values on without looking at them.
      const query = build(db, (name) => new Placeholder(name) as Values[typeof name]).compile();
      const names = query.parameters.map((parameter) => {
        if (parameter instanceof Placeholder) return parameter.name;
        throw new Error('a query that is compiled once has a value of its own');
      });
      compiled = { query, names };
      known.set(adapter, compiled);
    }
    const { query, names } = compiled;
    const parameters = names.map((name) => values[name]);
    // The query builder's own way to the database takes longer than the database.
    if (answersAtOnce(adapter)) return adapter.atOnce(query.sql, parameters) as Row[];
    const prepared: PreparedQuery<Row> = { ...query, parameters, statement, isAwaited };
    const { rows } = await db.executeQuery<Row>(prepared);
    return rows;
  };
};
