import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Clock } from '../../../src/clock.ts';
import { instant } from '../../../src/studio/ids.ts';
import { newDatabase, onPostgres } from '../postgres/databases.ts';
import { openStore, type Store, type StoreOptions } from '../../../src/store/openStore.ts';

/** A path for a database file, deleted after the test. */
export const storeFile = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'glaze-store-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return join(folder, 'studio.db');
};

/** Where a new logbook goes: a file, or a database when this run is on PostgreSQL. Gone after the test. */
export const newLogbook = async (): Promise<string> =>
  onPostgres ? newDatabase('empty_logbook') : storeFile();

/** A clock at 2026-03-01T12:00:00Z until it is set. */
export const settableClock = (): Clock & { set(at: number): void } => {
  let now = Date.UTC(2026, 2, 1, 12);
  return {
    now: () => instant(now),
    set: (at) => {
      now = at;
    },
  };
};

/** A real store in its own file or database, closed after the test. */
export const openTestStore = async (
  options: Partial<StoreOptions> & { file?: string } = {},
): Promise<Store & { file: string }> => {
  const { file = await newLogbook(), ...rest } = options;
  const store = await openStore(file, { clock: settableClock(), ...rest });
  onTestFinished(() => store.close());
  return { ...store, file };
};
