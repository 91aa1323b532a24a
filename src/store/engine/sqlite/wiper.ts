import { fstatSync, readSync, writeSync } from 'node:fs';
import { open, type FileHandle } from 'node:fs/promises';
import type { Database } from './database.ts';
import { emptyLog } from './emptyLog.ts';
import { unusedPart } from './unusedPart.ts';

/** A slice is looked through at once: four megabytes of pages of the usual size. */
const pagesAtOnce = 1_024;
/** From here on the number of a page could look like the first byte of a page of rows. That is 128 GiB. */
const mostPages = 2 ** 25;

/**
 * SQLite overwrites what is deleted (`secure_delete`), but not the copies that it leaves where a page holds nothing. This
 * overwrites those, in the file itself and a slice at a time: nobody waits for more than a slice, and because only unused bytes
 * change, the file is sound whenever it is stopped.
 */
export class Wiper {
  readonly #database: Database;
  readonly #pageSize: number;
  readonly #zeros: Buffer;
  #opened: Promise<FileHandle> | undefined;

  constructor(database: Database) {
    this.#database = database;
    this.#pageSize = Number(database.sqlite.pragma('page_size', { simple: true }));
    this.#zeros = Buffer.alloc(this.#pageSize);
  }

  /** `alone` runs what must not meet a write. False when somebody reads an older state, and it has to be tried again. */
  async wipe(alone: (work: () => Promise<boolean>) => Promise<boolean>): Promise<boolean> {
    if (!(await alone(() => Promise.resolve(emptyLog(this.#database))))) return false;
    this.#opened ??= open(this.#database.file, 'r+');
    const file = await this.#opened;
    const slice = Buffer.alloc(pagesAtOnce * this.#pageSize);
    for (let first = 1; ;) {
      // Read without the lock: a page that is written later gets no copy of what was deleted before.
      const { bytesRead } = await file.read(slice, 0, slice.length, (first - 1) * this.#pageSize);
      const read = Math.floor(bytesRead / this.#pageSize);
      if (read === 0) return true;
      const pages = this.#unclean(slice, { first, read });
      first += read;
      if (pages.length === 0) continue;
      if (!(await alone(() => Promise.resolve(this.#overwrite(file.fd, pages))))) return false;
      await file.datasync();
    }
  }

  /** Once the database is closed: on Linux, closing it earlier would end the locks that SQLite holds on the file. */
  async close(): Promise<void> {
    await (await this.#opened?.catch(() => undefined))?.close();
  }

  #unclean(slice: Buffer, { first, read }: { first: number; read: number }): number[] {
    const pages: number[] = [];
    for (let n = 0; n < read; n += 1) {
      const page = slice.subarray(n * this.#pageSize, (n + 1) * this.#pageSize);
      if (this.#leftIn(page, first + n)) pages.push(first + n);
    }
    return pages;
  }

  #leftIn(page: Buffer, pageNo: number): { from: number; to: number } | undefined {
    const unused = unusedPart(page, pageNo);
    if (!unused) return undefined;
    const { from, to } = unused;
    return page.compare(this.#zeros, 0, to - from, from, to) === 0 ? undefined : unused;
  }

  /** The log is empty and stays so, so each page of the file is as it is now. */
  #overwrite(fd: number, pages: readonly number[]): boolean {
    if (!emptyLog(this.#database)) return false;
    if (fstatSync(fd).size >= mostPages * this.#pageSize)
      throw new Error(`${this.#database.file} is too large to overwrite what was deleted in it`);
    const { sqlite } = this.#database;
    sqlite.exec('begin immediate');
    try {
      const page = Buffer.alloc(this.#pageSize);
      for (const pageNo of pages) {
        const at = (pageNo - 1) * this.#pageSize;
        readSync(fd, page, 0, page.length, at);
        const left = this.#leftIn(page, pageNo);
        if (left) writeSync(fd, this.#zeros, 0, left.to - left.from, at + left.from);
      }
    } finally {
      sqlite.exec('rollback');
      // What it remembers of these pages would be written again with the next change to them.
      sqlite.pragma('shrink_memory');
    }
    return true;
  }
}
