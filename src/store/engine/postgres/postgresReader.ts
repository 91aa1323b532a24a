import { migrations } from '../../migrations/migrations.ts';
import { memorySnapshots } from '../snapshotCache.ts';
import { StoreProblem } from '../storeProblem.ts';
import type { Reader, Reading } from '../turns.ts';
import { nameOf } from '../nameOf.ts';
import { refuseNewer, schemaVersionOf } from './migratePostgres.ts';
import { openPool } from './pool.ts';
import { asPostgresProblem } from './postgresProblem.ts';

/** Opens a database to read from it only; its tables must be those of this release. */
export const openPostgresReader = async (address: string): Promise<Reader> => {
  const name = nameOf(address);
  const kysely = openPool(address, 1);
  const close = () => kysely.destroy().catch(() => undefined);
  try {
    const version = await schemaVersionOf(kysely, name);
    if (version < migrations.length) throw new StoreProblem('older-schema', name, 'not migrated yet');
    refuseNewer(version, migrations.length, name);
  } catch (error) {
    await close();
    throw asPostgresProblem(error, name);
  }
  return {
    read: async <T>(work: (reading: Reading) => Promise<T>) => {
      try {
        return await kysely
          .transaction()
          .setIsolationLevel('repeatable read')
          .setAccessMode('read only')
          .execute((db) => work({ db, snapshots: memorySnapshots(1) }));
      } catch (error) {
        throw asPostgresProblem(error, name);
      }
    },
    close,
  };
};
