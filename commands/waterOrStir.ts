import { asks } from '../src/contract/contract.ts';
import { bucket } from '../src/contract/kinds/bucket.ts';
import { verdictReply } from '../src/replies/verdict/verdictReply.ts';

export const waterOrStir = asks({
  name: 'water-or-stir',
  about: (w) => w.waterOrStir.about,
  who: 'member',
  options: { bucket: { kind: bucket, needed: true, about: (w) => w.reading.bucket } },
  run: (v, context) => verdictReply(v.bucket, context),
});
