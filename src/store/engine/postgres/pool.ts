import { randomUUID } from 'node:crypto';
import { Kysely, PostgresDialect, type Driver } from 'kysely';
import pg from 'pg';
import type { Tables } from '../../migrations/tables.ts';
import { PipelinedDriver } from './pipelinedDriver.ts';

/** Enough for several studios at once, and few enough for several processes on a small server. */
const mostConnections = 10;

/** Times, counts and numbers fit in a JavaScript number; the driver would hand 64 bits out as text. */
const int8 = 20;
const types: pg.CustomTypesConfig = {
  getTypeParser: (oid, format) => (oid === int8 ? Number : pg.types.getTypeParser(oid, format)),
};

class PipelinedDialect extends PostgresDialect {
  readonly #pool: pg.Pool;

  constructor(pool: pg.Pool) {
    super({ pool });
    this.#pool = pool;
  }

  override createDriver(): Driver {
    return new PipelinedDriver(this.#pool);
  }
}

/** A connection of its own, outside the pool. */
export const newClient = (address: string): pg.Client =>
  new pg.Client({ connectionString: address, keepAlive: true, connectionTimeoutMillis: 5_000 });

/** Opens connections when they are needed. Nothing is asked of the server yet. */
export const openPool = (address: string, max = mostConnections): Kysely<Tables> => {
  const pool = new pg.Pool({
    connectionString: address,
    max,
    types,
    // By it a process knows its own connections from those of another.
    application_name: `glaze-room-bot ${randomUUID().slice(0, 8)}`,
    // One stays open, so that others can see that a bot is running.
    min: 1,
    keepAlive: true,
    pipeline: true,
    connectionTimeoutMillis: 5_000,
    // A process that hangs must not hold a studio's row for ever.
    idle_in_transaction_session_timeout: 60_000,
    lock_timeout: 30_000,
  });
  // A lost connection is dropped, in use or not: its query fails, and whoever asks next gets another.
  pool.on('error', () => undefined);
  pool.on('connect', (client) => client.on('error', () => undefined));
  return new Kysely<Tables>({ dialect: new PipelinedDialect(pool) });
};
