import type { Group } from '../../src/contract/contract.ts';
import { addBucket } from './add.ts';
import { changeBucket } from './change.ts';
import { holdBucket, releaseBucket, retireBucket } from './hold.ts';
import { labelsOfBuckets } from './labels.ts';
import { listBuckets } from './list.ts';
import { logOfBucket } from './log.ts';
import { showBucket } from './show.ts';

export const bucketGroup: Group = {
  name: 'bucket',
  about: (w) => w.bucket.about,
  leaves: [
    listBuckets,
    showBucket,
    logOfBucket,
    addBucket,
    changeBucket,
    labelsOfBuckets,
    holdBucket,
    releaseBucket,
    retireBucket,
  ],
};
