import { describe, expect, it } from 'vitest';
import { refuseOldServer } from '../../src/store/engine/postgres/migratePostgres.ts';
import { migrations } from '../../src/store/migrations/migrations.ts';
import type { Migration } from '../../src/store/migrations/migration.ts';
import { openStore } from '../../src/store/openStore.ts';
import { checkStates } from '../../src/store/states/checkStates.ts';
import { newDatabase, queryAt } from '../helpers/postgres/databases.ts';
import { settableClock } from '../helpers/store/storeFile.ts';

const clock = settableClock();
const opening = (address: string, steps?: readonly Migration[]) =>
  openStore(address, { clock, ...(steps && { migrations: steps }) });

const changed = (address: string, change: (url: URL) => void): string => {
  const url = new URL(address);
  change(url);
  return url.href;
};

const tablesOf = async (address: string) =>
  (
    await queryAt(address, "select tablename from pg_tables where schemaname = 'public' order by tablename")
  ).map(({ tablename }) => tablename);

const addShelves: Migration = async (db) => {
  await db.schema
    .createTable('shelves')
    .addColumn('id', 'integer', (column) => column.primaryKey())
    .execute();
};
const addShelvesAndFail: Migration = async (db) => {
  await addShelves(db);
  throw new Error('planted');
};

describe('a database that cannot be used', () => {
  it.each<[string, string, (url: URL) => void]>([
    ['nobody answers at its address', 'unreachable', (url) => (url.port = '1')],
    ['the password is wrong', 'denied', (url) => (url.password = 'xyzzy')],
    ['the user is unknown', 'denied', (url) => (url.username = 'nobody-here')],
    ['there is none of that name', 'no-database', (url) => (url.pathname = '/nowhere')],
  ])('is refused when %s, and the password is not told', async (_, kind, change) => {
    const address = changed(await newDatabase(), change);
    const refused = await opening(address).catch((error: unknown) => error);
    expect(refused).toMatchObject({ name: 'StoreProblem', kind });
    expect(String(refused)).not.toMatch(/xyzzy|glaze@/);
  });

  it('is refused when its address is none', async () => {
    await expect(opening('postgres://user:pass word@:port/x')).rejects.toMatchObject({ kind: 'bad-address' });
  });

  it('is refused when it is of another program, and left as it is', async () => {
    const address = await newDatabase();
    await queryAt(address, 'create table orders (id int)');
    await expect(opening(address)).rejects.toMatchObject({ kind: 'not-ours' });
    await expect(checkStates(address)).rejects.toMatchObject({ kind: 'not-ours' });
    expect(await tablesOf(address)).toEqual(['orders']);
  });

  it('is refused when a newer release has used it, and left as it is', async () => {
    const address = await newDatabase('empty_logbook');
    await (await opening(address, [...migrations, addShelves])).close();
    const before = await tablesOf(address);
    expect(before).toContain('shelves');
    await expect(opening(address)).rejects.toMatchObject({ kind: 'newer-schema' });
    expect(await tablesOf(address)).toEqual(before);
  });

  it('is refused when the user may not make tables in it, or not write to those that are there', async () => {
    const [empty, filled] = [await newDatabase(), await newDatabase('empty_logbook')];
    // Roles belong to the whole server, and another test may run beside this one.
    const role = `reader_${new URL(empty).pathname.slice(6)}`;
    await queryAt(empty, `create role ${role} login password 'reader'`);
    const asReader = (url: URL) => {
      url.username = role;
      url.password = 'reader';
    };
    await expect(opening(changed(empty, asReader))).rejects.toMatchObject({ kind: 'no-rights' });
    await queryAt(filled, `grant create on schema public to ${role}`);
    await queryAt(filled, `grant select on all tables in schema public to ${role}`);
    await expect(opening(changed(filled, asReader))).rejects.toMatchObject({ kind: 'no-rights' });
    expect(await tablesOf(empty)).toEqual([]);
    await queryAt(filled, `drop owned by ${role}`);
    await queryAt(filled, `drop role ${role}`);
  });

  it('is refused on a server older than 15', () => {
    // As server_version_num in the manual: 14.12 is 140012.
    expect(() => refuseOldServer(140_012, 'postgres://here')).toThrow('old-server');
    expect(() => refuseOldServer(150_000, 'postgres://here')).not.toThrow();
  });

  it('is not migrated by whoever only reads', async () => {
    const address = await newDatabase();
    await expect(checkStates(address)).rejects.toMatchObject({ kind: 'older-schema' });
    expect(await tablesOf(address)).toEqual([]);
  });
});

describe('a migration', () => {
  it('that fails leaves nothing of itself, and the database opens as before', async () => {
    const address = await newDatabase('empty_logbook');
    const before = await tablesOf(address);
    await expect(opening(address, [...migrations, addShelvesAndFail])).rejects.toMatchObject({
      kind: 'failed-migration',
    });
    expect(await tablesOf(address)).toEqual(before);
    await (await opening(address)).close();
  });
});

describe('text in a database', () => {
  it('is compared byte by byte in every column, whatever the database’s own order is', async () => {
    const address = await newDatabase('empty_logbook');
    const columns = await queryAt(
      address,
      `select table_name, column_name, collation_name from information_schema.columns
        where table_schema = 'public' and data_type = 'text' and table_name <> 'logbook_schema'`,
    );
    expect(columns.length).toBeGreaterThan(30);
    expect(new Set(columns.map(({ collation_name }) => collation_name))).toEqual(new Set(['C']));
  });
});
