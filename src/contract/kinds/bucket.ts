import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { beginsWithBucket, matchBuckets, nearestBuckets } from '../../studio/naming/matchBuckets.ts';
import type { Asking, Choice, Kind } from '../contract.ts';

const choice = ({ no, settings, retired, hold }: BucketState, { words }: Asking): Choice => ({
  name: words.bucket.label(no, settings.name, { retired, held: hold !== undefined }),
  value: String(no),
  typed: settings.name,
});

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
        choices: found.map((state) => choice(state, asking)),
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
    return nearestBuckets(typed, await asking.book.buckets()).map((state) => choice(state, asking));
  },
};

/** Several buckets, with commas between. A name that has a comma in it is found whole. */
export const buckets: Kind<BucketState[]> = {
  ...bucket,
  longest: 2_000,
  example: 'gg',
  async read(typed, asking) {
    const whole = await bucket.read(typed, asking);
    if (whole.ok) return { ok: true, value: [whole.value] };
    const parts = typed
      .split(/[,;\n]/)
      .map((part) => part.trim())
      .filter((part) => part !== '');
    const found = new Map<number, BucketState>();
    for (const [i, part] of parts.entries()) {
      const read = await bucket.read(part, asking);
      if (read.ok) {
        found.set(read.value.no, read.value);
        continue;
      }
      const inPlace = (choices: readonly Choice[]) =>
        choices.map((one) => ({ ...one, value: parts.with(i, one.value).join(', ') }));
      return {
        ok: false,
        why: read.why,
        ...(read.choices && { choices: inPlace(read.choices) }),
        ...(read.near && { near: inPlace(read.near) }),
      };
    }
    return found.size === 0
      ? { ok: false, why: asking.words.label.noneNamed(typed) }
      : { ok: true, value: [...found.values()] };
  },
  async suggest(typed, asking) {
    const before = typed.replace(/[^,;]*$/, '');
    const rest = (await bucket.suggest?.(typed.slice(before.length).trim(), asking)) ?? [];
    const start = before === '' ? '' : `${before.trim()} `;
    return rest.map(({ name, value }) => ({
      name: `${start}${name}`.slice(-100),
      value: `${start}${value}`,
    }));
  },
};
