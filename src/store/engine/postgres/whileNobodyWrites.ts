import { sql, type Kysely } from 'kysely';
import type { Tables } from '../../migrations/tables.ts';
import { memorySnapshots } from '../snapshotCache.ts';
import { StoreProblem } from '../storeProblem.ts';
import type { Reading } from '../turns.ts';

/**
 * Reads while every table is locked against writers: they wait, and are refused when it takes long. Refused itself while
 * a bot is connected: it would go on writing here afterwards.
 */
export const whileNobodyWrites = <T>(
  kysely: Kysely<Tables>,
  name: string,
  work: (reading: Reading) => Promise<T>,
): Promise<T> =>
  kysely
    .transaction()
    // What was committed while it waited for the lock has to be seen, too.
    .setIsolationLevel('read committed')
    .execute(async (db) => {
      const { rows } = await sql<{ tables: string; others: number }>`
        select string_agg(format('%I', tablename), ', ') as tables, (
          select count(*) from pg_stat_activity
          where datname = current_database() and application_name like 'glaze-room-bot%'
            and application_name <> current_setting('application_name')
        ) as others
        from pg_tables where schemaname = current_schema()`.execute(db);
      const [found] = rows;
      if (!found || found.others > 0) throw new StoreProblem('locked', name, 'a bot is connected to it');
      await sql`lock table ${sql.raw(found.tables)} in exclusive mode`.execute(db);
      return work({ db, snapshots: memorySnapshots(1) });
    });
