import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { nameOf } from '../nameOf.ts';
import { StoreProblem } from '../storeProblem.ts';
import type { Part } from '../turns.ts';
import { asPostgresProblem } from './postgresProblem.ts';

/** "part": keeps these locks apart from any others in the database. */
const space = 0x70617274;
/** Held by whoever takes all parts, and shared by those who take some. */
const whole = -1;

/** Takes the server's locks for a part; they last as long as this connection. */
const lock = async (address: string, part: Part): Promise<pg.Client> => {
  const name = nameOf(address);
  const client = new pg.Client({
    connectionString: address,
    keepAlive: true,
    connectionTimeoutMillis: 5_000,
  });
  client.on('error', () => undefined);
  const isFree = async (how: 'pg_try_advisory_lock' | 'pg_try_advisory_lock_shared', which: number) => {
    const { rows } = await client.query<{ free: boolean }>(`select ${how}($1, $2) as free`, [space, which]);
    return rows[0]?.free === true;
  };
  try {
    await client.connect();
    let free = await isFree(part === 'all' ? 'pg_try_advisory_lock' : 'pg_try_advisory_lock_shared', whole);
    for (const which of part === 'all' ? [] : part)
      free = free && (await isFree('pg_try_advisory_lock', which));
    if (free) return client;
    throw new StoreProblem('part-taken', name, 'another process has it');
  } catch (error) {
    await client.end().catch(() => undefined);
    throw asPostgresProblem(error, name);
  }
};

/** Takes a part of a platform's connections, and takes it again when the connection to the server was lost. */
export const takePart = async (
  address: string,
  part: Part,
  lost: (why: unknown) => void,
): Promise<{ release(): Promise<void> }> => {
  let released = false;
  let client = await lock(address, part);
  const again = async (): Promise<void> => {
    while (!released) {
      await pause(1_000, undefined, { ref: false });
      try {
        client = await lock(address, part);
        watch();
        if (released) await client.end();
        return;
      } catch (error) {
        if (!(error instanceof StoreProblem) || error.kind !== 'part-taken') continue;
        return lost(error);
      }
    }
  };
  const watch = () => void client.once('end', () => void (released || again()));
  watch();
  return {
    release: async () => {
      released = true;
      await client.end().catch(() => undefined);
    },
  };
};
