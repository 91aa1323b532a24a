import { asks, needed } from '../src/contract/contract.ts';
import { bucket } from '../src/contract/kinds/bucket.ts';
import { unexplainedIn } from '../src/replies/batch/derivedMarks.ts';
import { verdictReply } from '../src/replies/verdict/verdictReply.ts';

export const waterOrStir = asks({
  name: 'water-or-stir',
  about: (w) => w.waterOrStir.about,
  who: 'member',
  options: { bucket: needed(bucket, (w) => w.reading.bucket) },
  async run(v, context) {
    const reply = await verdictReply(v.bucket, context);
    const unexplained = await unexplainedIn(v.bucket.settings, context);
    return { ...reply, cautions: [...unexplained, ...(reply.cautions ?? [])] };
  },
});
