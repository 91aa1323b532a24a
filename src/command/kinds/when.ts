import { days, since, type Instant } from '../../studio/ids.ts';
import type { Kind } from '../contract.ts';
import { isoInstant } from '../isoInstant.ts';
import { plainText } from '../plainText.ts';
import { readInstant } from '../readInstant.ts';

/** An entry older than this is more likely a slip than a memory. */
const longAgo = days(366);

const when = (looks: 'back' | 'ahead', example: string, to: 'day' | 'hour' = 'day'): Kind<Instant> => ({
  control: 'text',
  example,
  async read(typed, { now, book, words }) {
    const { zone } = await book.studio();
    const read = readInstant(typed, { now, zone, looks });
    if (!read.ok) {
      const { why } = read;
      const either = why.kind === 'ambiguous' ? [why.either, why.or] : undefined;
      const choices = either?.map((at) => ({
        name: plainText([{ at, show: 'day' }, ' ', { at, show: 'clock' }], { now, zone }),
        value: isoInstant(at),
      }));
      return { ok: false, why: words.option.instant(why), ...(choices && { choices }) };
    }
    if (to === 'hour' && !read.exact) return { ok: false, why: words.option.whatTime(typed, example) };
    const far = looks === 'back' ? since(read.value, now) : since(now, read.value);
    return far > longAgo
      ? { ok: false, why: words.option.tooFar(typed, looks) }
      : { ok: true, value: read.value };
  },
});

/** A time gone by: `now`, `2h ago`, `last night 9pm`. */
export const whenPast = when('back', '2h ago');
/** The same where hours matter: a day alone, or `yesterday evening`, asks for the time. */
export const hourPast = when('back', 'last night 9pm', 'hour');
export const hourAhead = when('ahead', 'tonight 7pm', 'hour');
