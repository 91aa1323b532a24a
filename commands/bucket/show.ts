import { definedOnly } from '../../src/definedOnly.ts';
import { bucketCard } from '../../src/replies/bucket/bucketCard.ts';
import { bucketChart } from '../../src/replies/bucket/bucketChart.ts';
import { withUnexplained } from '../../src/replies/batch/derivedMarks.ts';
import { asks } from '../../src/contract/contract.ts';
import { bucketOption } from '../../src/contract/kinds/usualOptions.ts';

export const showBucket = asks({
  name: 'show',
  about: (w) => w.bucket.show,
  who: 'member',
  slow: true,
  options: { bucket: bucketOption },
  async run(v, asking) {
    const card = await withUnexplained(await bucketCard(v.bucket, asking), v.bucket, asking);
    return { ...card, ...definedOnly({ chart: await bucketChart(v.bucket, asking) }) };
  },
});
