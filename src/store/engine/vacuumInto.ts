import { closeSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import Sqlite, { SqliteError } from 'better-sqlite3';
import { makeOwnerOnly } from './ownerOnly.ts';

const sync = (path: string) => {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
};

/** A copy that cannot be read is none. */
const prove = (path: string) => {
  const copy = new Sqlite(path, { readonly: true });
  try {
    const found = copy.pragma('quick_check(1)', { simple: true });
    if (found !== 'ok') throw new SqliteError(`the copy: ${String(found)}`, 'SQLITE_CORRUPT');
  } finally {
    copy.close();
  }
};

/** Writes a whole copy of a database as it stands now. The name appears only when the copy is complete and on disk. */
export const vacuumInto = (sqlite: Sqlite.Database, target: string): void => {
  const partial = `${target}.partial`;
  rmSync(partial, { force: true });
  try {
    // It writes into a file that is there when that is empty.
    makeOwnerOnly(partial);
    sqlite.prepare('vacuum into ?').run(partial);
    prove(partial);
    sync(partial);
    renameSync(partial, target);
  } catch (error) {
    rmSync(partial, { force: true });
    throw error;
  }
  // A folder cannot be opened for this everywhere; there the rename is as good as it gets.
  if (process.platform !== 'win32') sync(dirname(target));
};
