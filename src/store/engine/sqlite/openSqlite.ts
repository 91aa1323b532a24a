import { accessSync, constants, existsSync, realpathSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Migration } from '../../migrations/migration.ts';
import { asStoreProblem, StoreProblem } from '../storeProblem.ts';
import type { Engine } from '../turns.ts';
import { openDatabase, type Database } from './database.ts';
import { takeLease } from './lease.ts';
import { makeFolder } from './makeFolder.ts';
import { migrate } from './migrate.ts';
import { makeOwnerOnly, takeFromOthers } from './ownerOnly.ts';
import { TransactionQueue } from './transactionQueue.ts';
import { whileBusy } from './whileBusy.ts';

/** Opens the file as its only owner, after creating or migrating it if necessary. Throws a StoreProblem. */
export const openSqlite = async (
  file: string,
  { waitMs, migrations }: { waitMs: number; migrations: readonly Migration[] },
): Promise<Engine> => {
  try {
    const path = realPath(file);
    const before = existsSync(`${path}.lock`);
    const lease = await takeLease(path, waitMs);
    try {
      refuseOtherNames(path);
      const database = await openUpToDate(path, migrations);
      const turns = new TransactionQueue(database);
      const close = async () => {
        await turns.close();
        lease.release();
      };
      // A file has one owner, who takes whatever there is.
      const takePart = () => Promise.resolve({ release: () => Promise.resolve() });
      // Nobody else can: the lease is ours.
      const whileNobodyWrites: Engine['whileNobodyWrites'] = (work) => turns.readAside(work);
      const hear = () => () => undefined;
      return { turns, takePart, hear, whileNobodyWrites, close };
    } catch (error) {
      lease.release();
      // A file that is not ours needs no lock, so none is left beside it.
      const problem = asStoreProblem(error, file);
      const foreign =
        problem instanceof StoreProblem && ['not-ours', 'corrupt', 'several-names'].includes(problem.kind);
      if (foreign && !before) rmSync(`${path}.lock`, { force: true });
      throw error;
    }
  } catch (error) {
    throw asStoreProblem(error, file);
  }
};

const openUpToDate = async (path: string, steps: readonly Migration[]): Promise<Database> => {
  makeOwnerOnly(path);
  const database = await whileBusy(path, () => openDatabase(path, steps.length));
  try {
    takeFromOthers(path);
    await migrate(database, steps);
    return database;
  } catch (error) {
    database.sqlite.close();
    throw error;
  }
};

/** The lease stands beside one name. By a hard link another process would not meet it, and two logs would break the file. */
const refuseOtherNames = (path: string): void => {
  const names = existsSync(path) ? statSync(path).nlink : 1;
  if (names > 1) throw new StoreProblem('several-names', path, `the file has ${names} names`);
};

/** The real path of the file, existing or not: two names of one file must share one lease. */
const realPath = (file: string): string => {
  try {
    makeFolder(dirname(file));
    const folder = realpathSync(dirname(file));
    const path = existsSync(file) ? realpathSync(file) : join(folder, basename(file));
    accessSync(dirname(path), constants.W_OK);
    if (existsSync(path)) accessSync(path, constants.R_OK | constants.W_OK);
    return path;
  } catch (error) {
    const problem = asStoreProblem(error, file);
    throw problem instanceof StoreProblem
      ? problem
      : new StoreProblem('cannot-open', file, String(error), error);
  }
};
