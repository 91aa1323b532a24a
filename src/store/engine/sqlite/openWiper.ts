import { fstatSync, readSync, statSync, writeSync } from 'node:fs';
import { open, type FileHandle } from 'node:fs/promises';
import type { Database } from './database.ts';
import { emptyLog } from './emptyLog.ts';
import { unusedPart } from './unusedPart.ts';

/** A slice is looked through at once: four megabytes of pages of the usual size. */
const pagesAtOnce = 1_024;
/**
 * A page that continues a long row begins with the number of the next such page. From this number on (at 128 GiB), its first
 * byte could be taken for that of a page of rows.
 */
const mostPages = 2 ** 25;

/** Runs what must not meet a write of this process. */
type Alone = (work: () => Promise<boolean>) => Promise<boolean>;

/**
 * SQLite overwrites what is deleted (`secure_delete`), but not the copies that it leaves where a page holds nothing. This
 * overwrites those, in the file itself and a slice at a time: nobody waits for more than a slice, and because only unused bytes
 * change, the file is sound whenever it is stopped.
 */
export const openWiper = (database: Database) => {
  const { sqlite, file: path } = database;
  const pageSize = Number(sqlite.pragma('page_size', { simple: true }));
  const zeros = Buffer.alloc(pageSize);
  let file: FileHandle | undefined;

  const leftIn = (page: Buffer, pageNo: number): { from: number; to: number } | undefined => {
    const unused = unusedPart(page, pageNo);
    return unused && page.compare(zeros, 0, unused.to - unused.from, unused.from, unused.to) !== 0
      ? unused
      : undefined;
  };

  /** In a file with auto_vacuum, which only another program sets, pages that point to others look like pages of rows. */
  const isAutoVacuumed = () => sqlite.pragma('auto_vacuum', { simple: true }) !== 0;
  const begin = (): boolean => {
    if (isAutoVacuumed()) {
      sqlite.pragma('auto_vacuum = NONE');
      sqlite.exec('vacuum');
    }
    return emptyLog(database);
  };

  const overwrite = (fd: number, pages: readonly number[]): boolean => {
    if (!emptyLog(database)) return false;
    if (fstatSync(fd).size >= mostPages * pageSize)
      throw new Error(`${path} is too large to overwrite what was deleted in it`);
    sqlite.exec('begin immediate');
    try {
      // From here on nobody writes. The log is still empty unless another program wrote in between: so nobody carries pages
      // over either, and each page of the file is as it is now.
      if (isAutoVacuumed() || statSync(`${path}-wal`).size > 0) return false;
      const page = Buffer.alloc(pageSize);
      for (const pageNo of pages) {
        const at = (pageNo - 1) * pageSize;
        const left = readSync(fd, page, 0, pageSize, at) === pageSize ? leftIn(page, pageNo) : undefined;
        if (left) writeSync(fd, zeros, 0, left.to - left.from, at + left.from);
      }
    } finally {
      sqlite.exec('rollback');
      // What it remembers of these pages would be written again with the next change to them.
      sqlite.pragma('shrink_memory');
    }
    return true;
  };

  return {
    /** False when somebody reads an older state, and it has to be tried again. */
    async wipe(alone: Alone): Promise<boolean> {
      if (!(await alone(async () => begin()))) return false;
      file ??= await open(path, 'r+');
      const slice = Buffer.alloc(pagesAtOnce * pageSize);
      for (let first = 0; ;) {
        // Read without the lock: a page that is written later gets no copy of what was deleted before.
        const { bytesRead } = await file.read(slice, 0, slice.length, first * pageSize);
        const read = Math.floor(bytesRead / pageSize);
        if (read === 0) return true;
        const pages: number[] = [];
        for (let n = 0; n < read; n += 1)
          if (leftIn(slice.subarray(n * pageSize, (n + 1) * pageSize), first + n + 1))
            pages.push(first + n + 1);
        first += read;
        if (pages.length === 0) continue;
        const { fd } = file;
        if (!(await alone(async () => overwrite(fd, pages)))) return false;
        await file.datasync();
      }
    },

    /** Once every connection is closed: on Linux, closing it earlier would end the locks that SQLite holds on the file. */
    async close(): Promise<void> {
      await file?.close();
    },
  };
};
