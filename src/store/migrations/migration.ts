import type { Transaction } from 'kysely';
import type { Tables } from './tables.ts';

/** One step of the schema, forward only. It must not rely on changes that later steps make to the tables. */
export type Migration = (db: Transaction<Tables>) => Promise<void>;
