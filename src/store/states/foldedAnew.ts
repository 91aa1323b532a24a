import type { Kysely } from 'kysely';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { foldBucket } from '../../studio/bucket/fold/foldBucket.ts';
import type { StreamNo, StudioId } from '../../studio/ids.ts';
import { foldStudio } from '../../studio/settings/foldStudio.ts';
import type { Studio } from '../../studio/settings/studio.ts';
import { frozen } from '../engine/frozen.ts';
import { readBucket, readStudio } from '../entries/readEntries.ts';
import type { Tables } from '../migrations/tables.ts';

/** A bucket's state by its entries alone. */
export const bucketAnew = async (
  db: Kysely<Tables>,
  studio: StudioId,
  bucket: StreamNo,
): Promise<BucketState | undefined> => foldBucket(bucket, await readBucket(db, studio, bucket));

/** A studio's settings by its entries alone. */
export const studioAnew = async (db: Kysely<Tables>, studio: StudioId): Promise<Studio> =>
  frozen(foldStudio(await readStudio(db, studio)));
