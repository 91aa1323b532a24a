import { sql, type Kysely } from 'kysely';
import type { Migration } from '../../migrations/migration.ts';
import type { Tables } from '../../migrations/tables.ts';
import { StoreProblem } from '../storeProblem.ts';
import { asPostgresProblem } from './postgresProblem.ts';
import { SchemaForPostgres } from './schemaPlugin.ts';

/** Marks a database as ours, as the application id does a file. */
const application = 'glaze-room-bot';
const oldestServer = 15;
/** "glzr": the lock that only one process holds while it brings the tables up to date. */
const migrating = 0x676c7a72;

type Db = Kysely<Tables>;

export const refuseOldServer = (versionNumber: number, name: string): void => {
  const major = Math.floor(versionNumber / 10_000);
  if (major < oldestServer) throw new StoreProblem('old-server', name, `PostgreSQL ${major}`);
};

const one = async <Row>(db: Db, query: ReturnType<typeof sql<Row>>): Promise<Row> => {
  const [row] = (await query.execute(db)).rows;
  if (!row) throw new Error('The database answered with no row.');
  return row;
};

/** The version of the tables that are there: 0 when there is nothing yet. Only reads. */
export const schemaVersionOf = async (db: Db, name: string): Promise<number> => {
  const found = await one(
    db,
    sql<{ tables: number; ours: boolean; server: number }>`
      select count(*) as tables, coalesce(bool_or(tablename = 'logbook_schema'), false) as ours,
        current_setting('server_version_num')::int as server
      from pg_tables where schemaname = current_schema()`,
  );
  refuseOldServer(found.server, name);
  if (found.tables === 0) return 0;
  const [row] = found.ours
    ? (
        await sql<{ version: number }>`
          select version from logbook_schema where application = ${application}`.execute(db)
      ).rows
    : [];
  if (!row) throw new StoreProblem('not-ours', name, 'a database of another program');
  return row.version;
};

/** Before anything is written: may this user make tables, or write to those that are there? */
const refuseWithoutRights = async (db: Db, name: string): Promise<void> => {
  const { enough } = await one(
    db,
    sql<{ enough: boolean | null }>`
      select has_schema_privilege(current_schema(), 'create') and not pg_is_in_recovery() and coalesce((
        select bool_and(has_table_privilege(format('%I.%I', schemaname, tablename), privilege))
        from pg_tables, unnest(array['select', 'insert', 'update', 'delete']) as privilege
        where schemaname = current_schema()
      ), true) as enough`,
  );
  if (enough !== true) throw new StoreProblem('no-rights', name, 'no right to make tables or to write');
};

export const refuseNewer = (version: number, known: number, name: string): void => {
  if (version > known)
    throw new StoreProblem('newer-schema', name, `schema ${version}, this release knows ${known}`);
};

const takeSteps = (db: Db, steps: readonly Migration[], name: string): Promise<void> =>
  db.transaction().execute(async (tx) => {
    await sql`select pg_advisory_xact_lock(${sql.lit(migrating)})`.execute(tx);
    // Another process may have taken the steps while this one waited.
    const from = await schemaVersionOf(tx, name);
    refuseNewer(from, steps.length, name);
    if (from === steps.length) return;
    const schema = tx.withPlugin(new SchemaForPostgres());
    for (const step of steps.slice(from)) await step(schema);
    if (from === 0)
      await sql`create table logbook_schema (application text primary key, version integer not null)`.execute(
        tx,
      );
    await sql`
      insert into logbook_schema (application, version) values (${application}, ${steps.length})
      on conflict (application) do update set version = excluded.version`.execute(tx);
  });

/** Refuses what cannot be used, then takes all steps that are missing, or none. */
export const migratePostgres = async (db: Db, steps: readonly Migration[], name: string): Promise<void> => {
  const from = await schemaVersionOf(db, name);
  refuseNewer(from, steps.length, name);
  await refuseWithoutRights(db, name);
  if (from === steps.length) return;
  try {
    await takeSteps(db, steps, name);
  } catch (error) {
    const problem = asPostgresProblem(error, name);
    if (problem instanceof StoreProblem) throw problem;
    throw new StoreProblem('failed-migration', name, String(error), error);
  }
};
