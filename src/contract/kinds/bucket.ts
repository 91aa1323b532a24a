import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { beginsWithBucket, matchBuckets, nearestBuckets } from '../../studio/naming/matchBuckets.ts';
import type { Asking, Choice, Kind } from '../contract.ts';

const choice = ({ no, settings, retired, hold }: BucketState, { words }: Asking): Choice => ({
  name: words.bucket.label(no, settings.name, { retired, held: hold !== undefined }).slice(0, 100),
  value: String(no),
  typed: settings.name,
});

/** A platform shows at most this many suggestions. */
const mostSuggestions = 25;

/** A bucket by name, nickname or number. If several match, the member is asked: it never guesses. */
export const bucket: Kind<BucketState> = {
  control: 'text',
  example: 'gull grey',
  async read(typed, asking) {
    const { words, book } = asking;
    const all = await book.buckets();
    const found = matchBuckets(typed, all);
    const [only] = found;
    if (only && found.length === 1) return { ok: true, value: only };
    if (found.length > 1)
      return {
        ok: false,
        why: words.option.whichBucket(typed),
        choices: found.slice(0, mostSuggestions).map((state) => choice(state, asking)),
      };
    const near = nearestBuckets(typed, all).slice(0, 3);
    const more = beginsWithBucket(typed, all);
    if (more && (near.length === 0 || /\d/.test(more.rest)))
      return { ok: false, why: words.option.noBucket(typed, undefined), more };
    if (all.length === 0) return { ok: false, why: words.option.noBucketYet };
    return {
      ok: false,
      why: words.option.noBucket(typed, near[0]?.settings.name),
      ...(near.length > 0 && { near: near.map((state) => choice(state, asking)) }),
    };
  },
  async suggest(typed, asking) {
    const all = await asking.book.buckets();
    return nearestBuckets(typed, all)
      .slice(0, mostSuggestions)
      .map((state) => choice(state, asking));
  },
};
