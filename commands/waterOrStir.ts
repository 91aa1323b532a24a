import { asks } from '../src/contract/contract.ts';
import { bucketOption } from '../src/contract/kinds/usualOptions.ts';
import { withUnexplained } from '../src/replies/batch/derivedMarks.ts';
import { verdictReply } from '../src/replies/verdict/verdictReply.ts';

export const waterOrStir = asks({
  name: 'water-or-stir',
  about: (w) => w.waterOrStir.about,
  who: 'member',
  options: { bucket: bucketOption },
  run: async ({ bucket }, asking) => withUnexplained(await verdictReply(bucket, asking), bucket, asking),
});
