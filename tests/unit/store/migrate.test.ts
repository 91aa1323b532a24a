import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Sqlite from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { openDatabase } from '../../../src/store/engine/sqlite/database.ts';
import { migrate } from '../../../src/store/engine/sqlite/migrate.ts';
import type { Migration } from '../../../src/store/migrations/migration.ts';
import { migrations } from '../../../src/store/migrations/migrations.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { standsIn } from '../../helpers/store/fileBytes.ts';
import { openTestStore, settableClock, storeFile } from '../../helpers/store/storeFile.ts';

const clock = settableClock();

const addShelves: Migration = async (db) => {
  await db.schema.createTable('shelves').addColumn('name', 'text').execute();
};
const addShelvesAndFail: Migration = async (db) => {
  await addShelves(db);
  await db.updateTable('studios').set({ name: 'renamed' }).execute();
  throw new Error('this step is wrong');
};

const storeWithStudio = async () => {
  const store = await openTestStore();
  const studio = await store.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
  await store.close();
  return { file: store.file, studio };
};

const look = (file: string) => {
  const sqlite = new Sqlite(file, { readonly: true });
  const tables = sqlite
    .prepare("select name from sqlite_schema where type = 'table' order by name")
    .pluck()
    .all();
  const version = sqlite.pragma('user_version', { simple: true });
  const studios = tables.includes('studios') ? sqlite.prepare('select name from studios').pluck().all() : [];
  sqlite.close();
  return { tables, version, studios };
};

describe('migrating', () => {
  it('copies a file that holds something before it changes it', async () => {
    const { file } = await storeWithStudio();
    const before = look(file);
    await (await openStore(file, { clock, migrations: [...migrations, addShelves] })).close();
    expect(look(`${file}.before-${migrations.length + 1}`)).toEqual(before);
    expect(look(file)).toEqual({
      ...before,
      tables: [...before.tables, 'shelves'].sort(),
      version: migrations.length + 1,
    });
  });

  it('overwrites what an older release has deleted', async () => {
    const { file } = await storeWithStudio();
    const older = new Sqlite(file);
    expect(older.pragma('secure_delete', { simple: true })).toBe(0);
    const long = `xylophone ${'.'.repeat(9_000)}`;
    older.prepare("insert into kept (name, value) values ('a', 'vuvuzela'), ('b', ?)").run(long);
    older.exec("delete from kept where name in ('a', 'b')");
    older.close();
    for (const word of ['vuvuzela', 'xylophone']) expect(standsIn(file, word), word).toBe(true);
    await (await openStore(file, { clock, migrations: [...migrations, addShelves] })).close();
    for (const word of ['vuvuzela', 'xylophone']) expect(standsIn(file, word), word).toBe(false);
  });

  it('copies nothing when there is nothing to do, nor for a new file', async () => {
    const { file } = await storeWithStudio();
    await (await openStore(file, { clock })).close();
    expect(readdirSync(dirname(file)).filter((name) => name.includes('before'))).toEqual([]);
  });

  it('leaves nothing behind of steps that fail, even of those before the failing one', async () => {
    const { file, studio } = await storeWithStudio();
    const before = look(file);
    await expect(
      openStore(file, { clock, migrations: [...migrations, addShelves, addShelvesAndFail] }),
    ).rejects.toMatchObject({ name: 'StoreProblem', kind: 'failed-migration' });
    expect(look(file)).toEqual(before);

    const store = await openTestStore({ file });
    expect(await store.people.studioOf('terminal', 'here', '')).toBe(studio);
  });

  it('makes no table when the steps fail on a new file', async () => {
    const file = storeFile();
    const fails = openStore(file, { clock, migrations: [...migrations, addShelvesAndFail] });
    await expect(fails).rejects.toMatchObject({ kind: 'failed-migration' });
    expect(look(file)).toEqual({ tables: [], version: 0, studios: [] });
  });

  it('can go back: the copy in the file’s place opens with the release before', async () => {
    const { file, studio } = await storeWithStudio();
    await (await openStore(file, { clock, migrations: [...migrations, addShelves] })).close();
    await expect(openStore(file, { clock })).rejects.toMatchObject({ kind: 'newer-schema' });
    const store = await openTestStore({ file: `${file}.before-${migrations.length + 1}` });
    expect(await store.people.studioOf('terminal', 'here', '')).toBe(studio);
  });
});

describe('an open database', () => {
  it('has the settings that keep acknowledged entries through a power cut, after a write as well', async () => {
    const database = openDatabase(storeFile(), migrations.length);
    await migrate(database, migrations);
    await database.kysely.insertInto('kept').values({ name: 'a', value: 'b' }).execute();
    const read = (name: string) => database.sqlite.pragma(name, { simple: true });
    // SQLite's documentation of synchronous: 2 is FULL.
    expect(read('synchronous')).toBe(2);
    expect(read('journal_mode')).toBe('wal');
    expect(read('foreign_keys')).toBe(1);
    expect(read('busy_timeout')).toBe(100);
    expect(read('cache_size')).toBe(-16384);
    database.sqlite.close();
  });

  it('is made with its folder when both are missing', async () => {
    const file = `${storeFile()}-folder/data/studio.db`;
    await (await openStore(file, { clock })).close();
    // The first 16 bytes of every SQLite database, by its file format.
    expect(readFileSync(file).subarray(0, 16).toString('latin1')).toBe('SQLite format 3\0');
    expect(existsSync(`${file}-wal`)).toBe(false);
  });
});
