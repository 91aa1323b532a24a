import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { inject, onTestFinished } from 'vitest';

/** The benches use these helpers too, on files and without a run of tests. */
const given = process.env['VITEST'] === undefined ? undefined : inject('postgres');

/** Whether this run of a test is the one on PostgreSQL. */
export const onPostgres = given !== undefined;

/** The address of a database on the run's server. */
const addressOf = (database: string): string => {
  if (given === undefined) throw new Error('This test runs on files: there is no server.');
  return given.replace('DATABASE', database);
};

/** Runs one statement on a database of its own connection. */
export const queryAt = async (
  address: string,
  statement: string,
  values: readonly unknown[] = [],
): Promise<Record<string, unknown>[]> => {
  const client = new pg.Client(address);
  // A database that is dropped ends its connections.
  client.on('error', () => undefined);
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(statement, [...values])).rows;
  } finally {
    await client.end();
  }
};

/** Lets the leases of claimed reminders end, which the server measures by its own clock. A file’s end with the test’s. */
export const endLeases = async (where: string): Promise<void> => {
  if (onPostgres)
    await queryAt(where, 'update reminders set leased_until = 0 where leased_until is not null');
};

/** One connection for all tests of a file, which ends with the process. */
let maintenance: Promise<pg.Client> | undefined;
const maintain = async (statement: string): Promise<void> => {
  maintenance ??= (async () => {
    const client = new pg.Client(addressOf('postgres'));
    client.on('error', () => undefined);
    await client.connect();
    return client;
  })();
  await (await maintenance).query(statement);
};

/** A database of the test's own, dropped after it: without any table, or with those of an empty logbook. */
export const newDatabase = async (template?: 'empty_logbook'): Promise<string> => {
  const name = `test_${randomUUID().replaceAll('-', '')}`;
  await maintain(`create database ${name}${template === undefined ? '' : ` template ${template}`}`);
  onTestFinished(() => maintain(`drop database if exists ${name} with (force)`));
  return addressOf(name);
};
