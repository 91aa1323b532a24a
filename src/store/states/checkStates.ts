import { setImmediate as nextLoop } from 'node:timers/promises';
import { isDeepStrictEqual } from 'node:util';
import type { Kysely } from 'kysely';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { openReader } from '../engine/either/openEngine.ts';
import { caughtUp } from './caughtUp.ts';
import { readState } from './bucketStateSchema.ts';
import { foldedBy } from './foldedBy.ts';
import { everyStream, refold, type StreamName } from './refold.ts';
import type { Tables } from '../migrations/tables.ts';

export interface StatesChecked {
  studios: number;
  streams: number;
  /** States from an earlier version of the fold, which are never used. */
  outdated: number;
  /** Streams whose cached state does not follow from their entries, or that count more of them than there are. */
  differing: StreamName[];
}

const asStored = (state: BucketState): BucketState | undefined => readState(JSON.stringify(state));

/** A state of an earlier entry agrees when it comes to the same with the later ones, or would be folded anew. */
const follows = async (
  db: Kysely<Tables>,
  { studio, stream }: StreamName,
  json: string | null,
  state: BucketState | undefined,
): Promise<boolean> => {
  if (!state) return json === null;
  const stored = readState(json);
  if (!stored || stored.seq > state.seq) return false;
  const then = await caughtUp(db, studio, stream, stored, state.seq);
  return then === undefined || isDeepStrictEqual(asStored(then), asStored(state));
};

const checkStream = async (
  db: Kysely<Tables>,
  name: StreamName,
): Promise<'agrees' | 'outdated' | 'differs'> => {
  const row = await db
    .selectFrom('streams')
    .where(({ and }) => and({ studio_id: name.studio, stream_no: name.stream }))
    .select(['seq', 'folded_by', 'state'])
    .executeTakeFirst();
  const { last, count, state } = await refold(db, name);
  if (!row || last === null || row.seq > last || count !== last) return 'differs';
  if (row.state !== null && row.folded_by !== foldedBy) return 'outdated';
  return (await follows(db, name, row.state, state)) ? 'agrees' : 'differs';
};

/** Folds every state again from the entries and compares. Changes nothing, and may run while the owner does. */
export const checkStates = async (where: string): Promise<StatesChecked> => {
  const reader = await openReader(where);
  try {
    const streams = await reader.read(({ db }) => everyStream(db));
    const studios = new Set(streams.map(({ studio }) => studio)).size;
    const checked: StatesChecked = { studios, streams: streams.length, outdated: 0, differing: [] };
    for (const name of streams) {
      // One short read for each stream: a long one would keep the write-ahead log from being truncated.
      const verdict = await reader.read(({ db }) => checkStream(db, name));
      if (verdict === 'outdated') checked.outdated += 1;
      if (verdict === 'differs') checked.differing.push(name);
      await nextLoop();
    }
    return checked;
  } finally {
    await reader.close();
  }
};
