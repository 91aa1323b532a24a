import { existsSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';

/** Makes a folder and those above it, for their owner alone, one by one: below /proc Node's own recursive mkdir tries for ever. */
export const makeFolder = (folder: string): void => {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  try {
    mkdirSync(folder, { mode: 0o700 });
  } catch (error) {
    // Another process may have made it in the meantime.
    if (!existsSync(folder)) throw error;
  }
};
