import { setTimeout as pause } from 'node:timers/promises';
import { sql, type Kysely, type Transaction } from 'kysely';
import type { StudioId } from '../../../studio/ids.ts';
import type { Tables } from '../../migrations/tables.ts';
import { DraftSnapshots, memorySnapshots, type SnapshotCache } from '../snapshotCache.ts';
import type { WriteJob } from '../turnGuard.ts';
import { patienceMs } from './attempts.ts';
import type { VersionedSnapshots } from './versionedSnapshots.ts';
import { isPassing, isUnsure } from './postgresProblem.ts';
import { begin, goBack, raise, releaseSavepoint, setSavepoint } from './statements.ts';

export interface StudioJob extends WriteJob {
  readonly isLogbook: boolean;
}

interface Done {
  readonly changes: 'logbook' | 'rows' | 'nothing';
  acknowledge(): void;
}

/** Ends a transaction that is not to be kept. */
class NotKept extends Error {}

/** What is not kept of one job goes, and the others' stays. */
const runOne = async (job: StudioJob, db: Transaction<Tables>, below: SnapshotCache): Promise<Done> => {
  const snapshots = new DraftSnapshots(below);
  await setSavepoint(db, {});
  const { keep, evenSo, acknowledge } = await job.run({ db, snapshots });
  if (keep) snapshots.keep();
  else {
    await goBack(db, {});
    await evenSo?.(db);
  }
  await releaseSavepoint(db, {});
  if (keep) return { acknowledge, changes: job.isLogbook ? 'logbook' : 'rows' };
  return { acknowledge, changes: evenSo ? 'rows' : 'nothing' };
};

/** The connection was lost during the commit: only the server knows how it ended. */
const wasCommitted = async (kysely: Kysely<Tables>, xid: string): Promise<boolean> => {
  const giveUpAt = performance.now() + patienceMs;
  for (;;) {
    try {
      const { status } = await kysely
        .selectNoFrom(sql<string | null>`pg_xact_status(${xid}::xid8)`.as('status'))
        .executeTakeFirstOrThrow();
      if (status !== 'in progress') return status === 'committed';
    } catch (error) {
      if (!isPassing(error)) return false;
      if (performance.now() >= giveUpAt) throw error;
    }
    await pause(100);
  }
};

/** Runs jobs of one studio, or of none, in one transaction. */
export const writeTurn = async (
  { kysely, remembered }: { kysely: Kysely<Tables>; remembered: VersionedSnapshots },
  studio: StudioId | undefined,
  jobs: readonly StudioJob[],
): Promise<void> => {
  let ended: { xid: string; version: number; drafts: DraftSnapshots } | undefined;
  const done: Done[] = [];
  try {
    await kysely
      .transaction()
      .setIsolationLevel('read committed')
      .execute(async (db) => {
        const { xid, version } = await begin(db, studio);
        const drafts = new DraftSnapshots(studio ? remembered.at(studio, version) : memorySnapshots(1));
        for (const job of jobs) done.push(await runOne(job, db, drafts));
        if (done.every(({ changes }) => changes === 'nothing')) throw new NotKept();
        const raised = done.some(({ changes }) => changes === 'logbook') ? version + 1 : version;
        if (studio && raised > version) await raise(db, { studio, version: raised });
        ended = { xid, version: raised, drafts };
      });
  } catch (error) {
    if (!(error instanceof NotKept)) {
      if (!ended || !isUnsure(error)) throw error;
      if (studio) remembered.delete(studio);
      if (!(await wasCommitted(kysely, ended.xid))) throw error;
    }
  }
  if (studio && ended) ended.drafts.keep(remembered.at(studio, ended.version));
  for (const { acknowledge } of done) acknowledge();
};
