import type { Transaction } from 'kysely';
import type { Tables } from './tables.ts';

/** One step of the schema, forward only. It may not rely on what the tables look like after later steps. */
export type Migration = (db: Transaction<Tables>) => Promise<void>;
