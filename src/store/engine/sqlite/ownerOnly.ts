import { chmodSync, closeSync, existsSync, openSync } from 'node:fs';

/** Makes a file that only its owner can read; an existing file stays as it is. */
export const makeOwnerOnly = (path: string): void => {
  try {
    closeSync(openSync(path, 'wx', 0o600));
  } catch (error) {
    if (!existsSync(path)) throw error;
  }
};

/** Makes a database and the files beside it readable by their owner only. */
export const takeFromOthers = (path: string): void => {
  for (const file of [path, `${path}-wal`, `${path}-shm`, `${path}.lock`])
    try {
      if (existsSync(file)) chmodSync(file, 0o600);
    } catch {
      // A file of another user, which we may use; its permissions are not ours to change.
    }
};
