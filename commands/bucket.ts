import type { Group } from '../src/contract/contract.ts';
import { addBucket } from './bucket/add.ts';
import { changeBucket } from './bucket/change.ts';
import { holdBucket, releaseBucket, retireBucket } from './bucket/hold.ts';
import { labelsOfBuckets } from './bucket/labels.ts';
import { listBuckets } from './bucket/list.ts';
import { logOfBucket } from './bucket/log.ts';
import { showBucket } from './bucket/show.ts';

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
