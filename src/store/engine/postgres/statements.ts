import { sql, type Transaction } from 'kysely';
import type { StudioId } from '../../../studio/ids.ts';
import type { Tables } from '../../migrations/tables.ts';
import { compiledOnce } from '../compiledOnce.ts';

interface Begun {
  /** The transaction's own number, by which the server knows later whether it was committed. */
  xid: string;
  version: number;
}

const ownNumber = sql<string>`pg_current_xact_id()::text`.as('xid');
const lock = compiledOnce<{ studio: StudioId }, Begun>((db, value) =>
  db.selectFrom('studios').where('id', '=', value('studio')).select(['version', ownNumber]).forUpdate(),
);
export const versionOf = compiledOnce<{ studio: StudioId }, { version: number }>((db, value) =>
  db.selectFrom('studios').where('id', '=', value('studio')).select('version'),
);
export const raise = compiledOnce<{ studio: StudioId; version: number }>(
  (db, value) =>
    db
      .updateTable('studios')
      .set({ version: value('version') })
      .where('id', '=', value('studio')),
  { isAwaited: false },
);

const bareStatement = (words: string) =>
  compiledOnce((db) => ({ compile: () => sql.raw(words).compile(db) }), { isAwaited: false });
export const [setSavepoint, goBack, releaseSavepoint] = [
  bareStatement('savepoint job'),
  bareStatement('rollback to savepoint job'),
  bareStatement('release savepoint job'),
];

/** Waits until this studio's row is free. From then on nobody else writes to the studio. */
export const begin = async (db: Transaction<Tables>, studio: StudioId | undefined): Promise<Begun> => {
  const [locked] = studio === undefined ? [] : await lock(db, { studio });
  if (locked) return locked;
  const { xid } = await db.selectNoFrom(ownNumber).executeTakeFirstOrThrow();
  return { xid, version: 0 };
};
