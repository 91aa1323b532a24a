import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { streamNo } from '../../../src/studio/ids.ts';
import { openDatabase } from '../../../src/store/engine/sqlite/database.ts';
import { identities } from '../../../src/store/people/identities.ts';
import { migrate } from '../../../src/store/engine/sqlite/migrate.ts';
import { migrations } from '../../../src/store/migrations/migrations.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { logbookStore } from '../../../src/store/logbook/logbookStore.ts';
import { TransactionQueue } from '../../../src/store/engine/sqlite/transactionQueue.ts';
import { gullGrey, loggedAt, water } from '../../helpers/store/storeEvents.ts';
import { openTestStore, settableClock, storeFile } from '../../helpers/store/storeFile.ts';
import { startWriter } from '../../helpers/store/storeProcess.ts';

const clock = settableClock();
const problem = (kind: string) => expect.objectContaining({ name: 'StoreProblem', kind });

const storeWithEntries = async (entries: number) => {
  const store = await openTestStore();
  const studio = await store.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
  const ana = await store.people.memberOf(studio, 'terminal', 'me', 'Ana');
  await store.books.writeOnce(studio, 'fill', async (book) => {
    await book.open(gullGrey, loggedAt(ana, 0));
    for (let i = 1; i < entries; i += 1) await book.log(streamNo(1), water(i), loggedAt(ana, i, `note ${i}`));
    return { keep: true, value: entries };
  });
  await store.close();
  return { file: store.file, studio };
};

describe('a file that cannot be used', () => {
  it.each([
    ['text', Buffer.from('readings of the spring term\n'.repeat(200))],
    ['noise', Buffer.from(Array.from({ length: 8192 }, (_, i) => (i * 7919 + 13) % 256))],
  ])('is refused as corrupt when it is %s, and left as it is', async (_, content) => {
    const file = storeFile();
    writeFileSync(file, content);
    await expect(openStore(file, { clock })).rejects.toEqual(problem('corrupt'));
    expect(readFileSync(file)).toEqual(content);
  });

  it.skipIf(!existsSync('/proc/self'))('is refused at once where no folder can be made', async () => {
    await expect(openStore('/proc/nope/deeper/x.db', { clock })).rejects.toEqual(problem('cannot-open'));
  });

  it('is refused when it is another program’s database, and left as it is', async () => {
    const file = storeFile();
    const other = new Sqlite(file);
    other.exec('create table songs (title text)');
    other.close();
    const before = readFileSync(file);
    await expect(openStore(file, { clock })).rejects.toEqual(problem('not-ours'));
    expect(readFileSync(file)).toEqual(before);
    expect(existsSync(`${file}-wal`)).toBe(false);
  });

  it('is refused when a newer release has migrated it, and left as it is', async () => {
    const { file } = await storeWithEntries(3);
    const newer = new Sqlite(file);
    newer.pragma(`user_version = ${migrations.length + 1}`);
    newer.close();
    const before = readFileSync(file);
    await expect(openStore(file, { clock })).rejects.toEqual(problem('newer-schema'));
    expect(readFileSync(file)).toEqual(before);
  });

  it('is refused when its folder is a file', async () => {
    const file = storeFile();
    writeFileSync(file, '');
    await expect(openStore(join(file, 'studio.db'), { clock })).rejects.toEqual(problem('cannot-open'));
  });

  it('lets go of the lease when it has been refused', async () => {
    const file = storeFile();
    writeFileSync(file, 'not a database, and longer than nothing at all'.repeat(10));
    await expect(openStore(file, { clock, waitMs: 0 })).rejects.toEqual(problem('corrupt'));
    await expect(openStore(file, { clock, waitMs: 0 })).rejects.toEqual(problem('corrupt'));
  });

  it('says that it is corrupt when a page within it is overwritten', async () => {
    const { file, studio } = await storeWithEntries(400);
    const bytes = readFileSync(file);
    const pageSize = bytes.readUInt16BE(16);
    for (let page = 2; (page + 1) * pageSize <= bytes.length; page += 1) {
      bytes.fill(0x5a, page * pageSize, (page + 1) * pageSize);
    }
    writeFileSync(file, bytes);
    const read = async () => {
      const store = await openTestStore({ file });
      return store.books.read(studio, (book) => book.entries(streamNo(1), { most: 1000 }));
    };
    await expect(read()).rejects.toEqual(problem('corrupt'));
  });
});

describe('a file that may not be written to', () => {
  it.each([
    ['the file is', 0o777, 0o444],
    ['its folder is', 0o555, 0o666],
  ])('is refused as read-only when %s, and left as it is', async (_, folderMode, fileMode) => {
    const { file: source } = await storeWithEntries(3);
    const folder = join(mkdtempSync(join(tmpdir(), 'glaze-read-only-')), 'data');
    onTestFinished(() => {
      chmodSync(folder, 0o777);
      rmSync(dirname(folder), { recursive: true });
    });
    chmodSync(dirname(folder), 0o755);
    mkdirSync(folder);
    const file = join(folder, 'studio.db');
    const before = readFileSync(source);
    writeFileSync(file, before);
    chmodSync(file, fileMode);
    chmodSync(folder, folderMode);
    const writer = startWriter(file, 'try');
    expect(await writer.ended).toBe(1);
    expect(writer.lines).toEqual(['problem read-only']);
    expect(readFileSync(file)).toEqual(before);
  });
});

describe('a disk that fills up', () => {
  it('refuses what does not fit and keeps what was acknowledged; with room again, work goes on', async () => {
    const database = openDatabase(storeFile(), migrations.length);
    await migrate(database, migrations);
    const turns = new TransactionQueue(database);
    onTestFinished(async () => {
      await turns.close();
      database.sqlite.close();
    });
    const books = logbookStore(turns, clock);
    const people = identities(turns, clock);
    const studio = await people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
    const ana = await people.memberOf(studio, 'terminal', 'me', 'Ana');
    const bucket = streamNo(1);
    await books.writeOnce(studio, 'open', async (book) => {
      await book.open(gullGrey, loggedAt(ana, 0));
      return { keep: true, value: 1 };
    });
    const log = (key: string, length: number) =>
      books.writeOnce(studio, key, async (book) => {
        const { entry } = await book.log(bucket, water(1), loggedAt(ana, 1, 'x'.repeat(length)));
        return { keep: true, value: entry.seq };
      });

    const pages = Number(database.sqlite.pragma('page_count', { simple: true }));
    database.sqlite.pragma(`max_page_count = ${pages + 10}`);
    const first = await Promise.allSettled([log('a', 10), log('b', 1_000_000), log('c', 10)]);
    expect(first[1]).toEqual({ status: 'rejected', reason: problem('full') });
    const acknowledged = first.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
    const kept = await books.read(studio, (book) => book.entries(bucket, { most: 9 }));
    expect(kept.map((entry) => entry.seq).reverse()).toEqual([1, ...acknowledged]);
    expect((await books.read(studio, (book) => book.bucket(bucket)))?.seq).toBe(1 + acknowledged.length);

    database.sqlite.pragma('max_page_count = 100000');
    expect(await log('b', 1_000_000)).toBe(2 + acknowledged.length);
  });
});
