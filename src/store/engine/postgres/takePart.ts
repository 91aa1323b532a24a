import { setTimeout as pause } from 'node:timers/promises';
import type pg from 'pg';
import { nameOf } from '../nameOf.ts';
import { StoreProblem } from '../storeProblem.ts';
import type { Part } from '../turns.ts';
import { newClient } from './pool.ts';
import { asPostgresProblem } from './postgresProblem.ts';

/** "part" and "room": keep these locks apart from any others in the database. */
const [parts, rooms] = [0x70617274, 0x726f6f6d];
/** Held by whoever takes all parts, and shared by those who take some. */
const whole = -1;

const isTaken = (error: unknown): boolean => error instanceof StoreProblem && error.kind === 'part-taken';

/** Takes the server's locks for a part; they last as long as this connection. */
const lock = async (address: string, part: Part): Promise<pg.Client> => {
  const name = nameOf(address);
  const client = newClient(address);
  client.on('error', () => undefined);
  const ask = async (lock: string, ...values: readonly (number | string)[]) => {
    const { rows } = await client.query<{ free: boolean }>(`select ${lock} as free`, [...values]);
    return rows[0]?.free === true;
  };
  const isFree = async (): Promise<boolean> => {
    if (part === 'all') return ask('pg_try_advisory_lock($1, $2)', parts, whole);
    if ('room' in part) {
      await client.query('select pg_advisory_lock($1, hashtext($2))', [rooms, part.room]);
      return true;
    }
    let free = await ask('pg_try_advisory_lock_shared($1, $2)', parts, whole);
    for (const which of part) free = free && (await ask('pg_try_advisory_lock($1, $2)', parts, which));
    return free;
  };
  try {
    await client.connect();
    if (await isFree()) return client;
    throw new StoreProblem('part-taken', name, 'another process has it');
  } catch (error) {
    await client.end().catch(() => undefined);
    throw asPostgresProblem(error, name);
  }
};

/** Takes a part for this process, and takes it again when the connection to the server was lost. */
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
        if (isTaken(error)) return lost(error);
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
