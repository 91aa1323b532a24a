import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { entryId } from '../../studio/ids.ts';
import { unloggedReminders } from '../../studio/remind/unloggedReminders.ts';
import { isZone } from '../../studio/time/wallTime.ts';
import { replan } from './replan.ts';
import type { Planning } from './replanStudio.ts';

/** Has the keepers told of what came to light, and no longer told of what was explained. */
export const replanUnlogged = async (
  { db, id, studio, now }: Planning,
  before: BucketState,
  after: BucketState,
): Promise<void> => {
  const [was, is] = [before.unlogged ?? [], after.unlogged ?? []];
  const without = (some: typeof was, others: typeof was) =>
    some.filter(({ to }) => !others.some((same) => same.to.seq === to.seq));
  const [gone, found] = [without(was, is), without(is, was)];
  if (gone.length + found.length === 0 || !isZone(studio.zone)) return;
  for (const { to } of gone) await replan(db, id, entryId(after.no, to.seq), [], now);
  for (const change of found) {
    const wanted = unloggedReminders(after.no, change, studio, now);
    await replan(db, id, entryId(after.no, change.to.seq), wanted, now);
  }
};
