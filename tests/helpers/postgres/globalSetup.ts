import type { TestProject } from 'vitest/node';
import { openStore } from '../../../src/store/openStore.ts';
import { instant } from '../../../src/studio/ids.ts';
import { startPostgres } from './server.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** The address of a PostgreSQL server, for the tests that run on one; DATABASE stands for a database on it. */
    postgres: string;
  }
}

/** Starts one server for all tests of a run, with an empty logbook that each test gets a copy of. */
export const setup = async (project: TestProject): Promise<() => Promise<void>> => {
  const server = await startPostgres();
  const maintenance = server.address('postgres');
  const pg = await import('pg');
  const client = new pg.default.Client(maintenance);
  await client.connect();
  await client.query('create database empty_logbook');
  await client.end();
  const store = await openStore(server.address('empty_logbook'), { clock: { now: () => instant(0) } });
  await store.close();
  project.provide('postgres', server.address('DATABASE'));
  return () => server.stop();
};
