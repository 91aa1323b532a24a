import type { CompiledQuery } from 'kysely';

/** A query that is the same each time but for its values. */
export interface PreparedQuery<Row = unknown> extends CompiledQuery<Row> {
  /** The name by which a server can keep it. */
  readonly statement: string;
  /** False when nobody needs its answer: on a server, the transaction may go on meanwhile. It fails with the commit then. */
  readonly isAwaited: boolean;
}

export const isPrepared = (query: CompiledQuery): query is PreparedQuery => 'statement' in query;
