import type { Migration } from '../../migrations/migration.ts';
import type { Engine } from '../turns.ts';
import { nameOf } from '../nameOf.ts';
import { Announcements } from './announcements.ts';
import { migratePostgres } from './migratePostgres.ts';
import { openPool } from './pool.ts';
import { whileNobodyWrites } from './whileNobodyWrites.ts';
import { takePart } from './takePart.ts';
import { asPostgresProblem } from './postgresProblem.ts';
import { PostgresTurns } from './postgresTurns.ts';

/** Opens the database at an address, beside other processes, after making or migrating its tables. Throws a StoreProblem. */
export const openPostgres = async (
  address: string,
  { migrations }: { migrations: readonly Migration[] },
): Promise<Engine> => {
  const name = nameOf(address);
  const kysely = openPool(address);
  try {
    await migratePostgres(kysely, migrations, name);
  } catch (error) {
    await kysely.destroy().catch(() => undefined);
    throw asPostgresProblem(error, name);
  }
  const turns = new PostgresTurns(name, kysely);
  const announcements = new Announcements(address);
  const close = async () => {
    await announcements.close();
    await turns.close();
    await kysely.destroy();
  };
  return {
    turns,
    takePart: (part, lost) => takePart(address, part, lost),
    hear: (studio, listener) => announcements.hear(studio, listener),
    whileNobodyWrites: async (work) => {
      try {
        return await whileNobodyWrites(kysely, name, work);
      } catch (error) {
        throw asPostgresProblem(error, name);
      }
    },
    close,
  };
};
