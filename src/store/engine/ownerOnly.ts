import { chmodSync, closeSync, existsSync, openSync } from 'node:fs';

/** Makes a file that nobody but its owner may read; one that is there already is left as it is. */
export const makeOwnerOnly = (path: string): void => {
  try {
    closeSync(openSync(path, 'wx', 0o600));
  } catch (error) {
    if (!existsSync(path)) throw error;
  }
};

/** Takes a database of ours, and what stands beside it, from everybody but its owner. */
export const takeFromOthers = (path: string): void => {
  for (const file of [path, `${path}-wal`, `${path}-shm`, `${path}.lock`])
    try {
      if (existsSync(file)) chmodSync(file, 0o600);
    } catch {
      // Somebody else's file that we may use; its rights are for them to set.
    }
};
