import type { BucketEvent } from '../bucket/bucketEvent.ts';
import type { Entry } from '../entry.ts';
import type { Logbook, LoggedEvent, Notes } from './ports.ts';
import type { StreamNo } from '../ids.ts';

/** The bucket that the glaze came from or went to. */
const otherBucket = (event: LoggedEvent): StreamNo | undefined => {
  if (event.kind !== 'addition') return undefined;
  if (event.added.what === 'glaze') return event.added.from;
  return event.added.what === 'taken' ? event.added.to : undefined;
};

/** Pouring glaze into another bucket is logged in both: finds the other bucket's entry, unless it was undone. */
export const otherHalf = async (
  entry: Entry<LoggedEvent> & Notes,
  book: Logbook,
): Promise<(Entry<BucketEvent> & Notes) | undefined> => {
  const bucket = otherBucket(entry.event);
  if (bucket === undefined) return undefined;
  return (await book.entries(bucket, { most: 200 })).find(
    (one): one is Entry<BucketEvent> & Notes =>
      one.stream > 0 &&
      one.undoneBy === undefined &&
      one.loggedAt === entry.loggedAt &&
      one.by === entry.by &&
      otherBucket(one.event) === entry.stream,
  );
};
