import { bucketCard } from '../../src/replies/bucket/bucketCard.ts';
import { bucketChart } from '../../src/replies/bucket/bucketChart.ts';
import { unexplainedIn } from '../../src/replies/batch/derivedMarks.ts';
import { asks } from '../../src/contract/contract.ts';
import { bucketOption } from '../../src/contract/kinds/usualOptions.ts';

export const showBucket = asks({
  name: 'show',
  about: (w) => w.bucket.show,
  who: 'member',
  slow: true,
  options: { bucket: bucketOption },
  async run(v, asking) {
    const bare = await bucketCard(v.bucket, asking);
    const unexplained = await unexplainedIn(v.bucket.settings, asking);
    const card = { ...bare, cautions: [...unexplained, ...(bare.cautions ?? [])] };
    const chart = await bucketChart(v.bucket, asking);
    return chart ? { ...card, chart } : card;
  },
});
