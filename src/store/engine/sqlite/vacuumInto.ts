import { closeSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import Sqlite, { SqliteError } from 'better-sqlite3';
import { makeOwnerOnly } from './ownerOnly.ts';

const syncToDisk = (path: string) => {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
};

/** Checks the copy: one that cannot be read is worthless. */
const checkCopy = (path: string) => {
  const copy = new Sqlite(path, { readonly: true });
  try {
    const found = copy.pragma('quick_check(1)', { simple: true });
    if (found !== 'ok') throw new SqliteError(`the copy: ${String(found)}`, 'SQLITE_CORRUPT');
  } finally {
    copy.close();
  }
};

/** Writes a complete copy of a database as it is now. The target name appears only when the copy is complete and on disk. */
export const vacuumInto = (sqlite: Sqlite.Database, target: string): void => {
  const partial = `${target}.partial`;
  rmSync(partial, { force: true });
  try {
    // Created first for its permissions: VACUUM INTO accepts an existing file when it is empty.
    makeOwnerOnly(partial);
    sqlite.prepare('vacuum into ?').run(partial);
    checkCopy(partial);
    syncToDisk(partial);
    renameSync(partial, target);
  } catch (error) {
    rmSync(partial, { force: true });
    throw error;
  }
  // Windows cannot open a folder to sync it; there the rename has to do.
  if (process.platform !== 'win32') syncToDisk(dirname(target));
};
