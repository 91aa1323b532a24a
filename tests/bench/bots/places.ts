import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';

export interface Places {
  /** Where a bot of this name keeps what is logged: a file, or a database's address. */
  of(name: string): string;
  clear(): Promise<void>;
}

const files = (): Places => {
  const folder = mkdtempSync(join(tmpdir(), 'bench-'));
  return {
    of: (name) => join(folder, `${name}.db`),
    clear: () => Promise.resolve(rmSync(folder, { recursive: true })),
  };
};

/** New databases on a server. */
const databases = async (server: string, names: readonly string[]): Promise<Places> => {
  const admin = new pg.Client(server);
  await admin.connect();
  const drop = async () => {
    for (const name of names) await admin.query(`drop database if exists "bench-${name}" with (force)`);
  };
  await drop();
  for (const name of names) await admin.query(`create database "bench-${name}"`);
  return {
    of: (name) => Object.assign(new URL(server), { pathname: `/bench-${name}` }).href,
    clear: async () => {
      await drop();
      await admin.end();
    },
  };
};

/** Places for bots of these names, in a folder or on a server with `fsync` on, where databases may be made. */
export const makePlaces = (server: string | undefined, names: readonly string[]): Promise<Places> =>
  server === undefined ? Promise.resolve(files()) : databases(server, names);
