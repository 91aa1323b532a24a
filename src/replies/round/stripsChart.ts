import { definedOnly } from '../../definedOnly.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { isFlagged } from '../../studio/bucket/withoutFlagged.ts';
import { days, instant, type Instant } from '../../studio/ids.ts';
import type { Studio } from '../../studio/settings/studio.ts';
import { decide } from '../../studio/verdict/decide.ts';
import type { Asking, Chart } from '../../contract/contract.ts';

const shown = days(14);
/** Enough for two weeks of a busy bucket. */
const mostEntries = 60;

type Series = Chart['series'][number];

const readings = async (
  bucket: BucketState,
  from: Instant,
  { book }: Pick<Asking, 'book'>,
): Promise<Series['points']> =>
  (await book.entries(bucket.no, { most: mostEntries }))
    .flatMap(({ event, at, seq, undoneBy }) =>
      event.kind === 'reading' && event.gravity && undoneBy === undefined && at >= from
        ? [
            {
              at,
              value: event.gravity.value,
              believed: event.stirred === true && !(isFlagged(bucket) && bucket.believed?.seq === seq),
            },
          ]
        : [],
    )
    .toReversed();

/** Gravity of the last two weeks, a strip for each bucket; undefined where no bucket was measured. */
export const stripsChart = async (
  studio: Studio,
  asking: Pick<Asking, 'book' | 'words' | 'now'>,
): Promise<Chart | undefined> => {
  const { book, words, now } = asking;
  const w = words.round.strips;
  const from = instant(now - shown);
  const buckets = (await book.buckets()).filter(({ retired }) => !retired);
  const series: Series[] = [];
  for (const bucket of buckets) {
    const { no, settings } = bucket;
    const { step, keeperStep } = decide(bucket, { now, role: 'keeper', sure: studio.sure });
    series.push({
      label: `${no} · ${settings.name}`,
      unit: '',
      ...definedOnly({ band: settings.gravity }),
      points: await readings(bucket, from, asking),
      note: words.bucket.stepName(keeperStep ?? step),
    });
  }
  const measured = series.filter(({ points }) => points.length > 0);
  if (measured.length === 0) return undefined;
  return {
    strips: { from, until: now },
    title: w.title,
    alt: w.alt(measured.length, series.length),
    key: w.key,
    zone: studio.zone,
    series: measured,
    marks: [],
  };
};
