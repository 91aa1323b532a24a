import { existsSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';

/** Makes a folder and its parents, for their owner only. One by one, because Node's recursive mkdir never returns below /proc. */
export const makeFolder = (folder: string): void => {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  try {
    mkdirSync(folder, { mode: 0o700 });
  } catch (error) {
    // Another process may have created it meanwhile.
    if (!existsSync(folder)) throw error;
  }
};
