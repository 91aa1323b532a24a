import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ReplyFile } from '../contract/contract.ts';

const mostOfOneName = 1_000;

const isTaken = (error: unknown) => error instanceof Error && 'code' in error && error.code === 'EEXIST';

/** Saves a reply's file, readable by its owner only, without overwriting another. Returns its path. */
export const keepFile = (folder: string, { name, content }: ReplyFile): string => {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const [, stem = '', end = ''] = /^(.*?)(\.[^.]*)?$/s.exec(name.replace(/[^\w.-]+/g, '_')) ?? [];
  for (let n = 1; ; n += 1) {
    const path = join(folder, `${stem}${n === 1 ? '' : `-${n}`}${end}`);
    try {
      writeFileSync(path, content, { flag: 'wx', mode: 0o600 });
      return path;
    } catch (error) {
      if (!isTaken(error) || n >= mostOfOneName) throw error;
    }
  }
};
