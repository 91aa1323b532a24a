import { asks } from '../src/contract/contract.ts';
import { bucketOption } from '../src/contract/kinds/usualOptions.ts';
import { unexplainedIn } from '../src/replies/batch/derivedMarks.ts';
import { verdictReply } from '../src/replies/verdict/verdictReply.ts';

export const waterOrStir = asks({
  name: 'water-or-stir',
  about: (w) => w.waterOrStir.about,
  who: 'member',
  options: { bucket: bucketOption },
  async run(v, context) {
    const reply = await verdictReply(v.bucket, context);
    const unexplained = await unexplainedIn(v.bucket.settings, context);
    return { ...reply, cautions: [...unexplained, ...(reply.cautions ?? [])] };
  },
});
