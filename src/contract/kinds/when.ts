import type { Stretch } from '../../studio/firing/firedEvent.ts';
import { days, instant, since, type Instant } from '../../studio/ids.ts';
import { addLocalDays, startOfLocalDay } from '../../studio/time/wallTime.ts';
import type { Kind } from '../contract.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';
import { plainText } from '../plainText.ts';
import { readInstant } from '../../parse/readInstant.ts';

/** An entry older than this is more likely a slip than a memory. */
const longAgo = days(366);

const when = (looks: 'back' | 'ahead', example: string, to: 'day' | 'hour' = 'day'): Kind<Instant> => ({
  control: 'text',
  ...(looks === 'back' && { happened: true }),
  example,
  // As it was meant when it was typed.
  async read(typed, { happenedAt: now, book, words }) {
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

/** The hour as it was said; a day alone, or `last night`, is all of that day as far as it is over. */
export const stretchPast: Kind<Stretch> = {
  ...whenPast,
  example: '3 days ago',
  async read(typed, asking) {
    const read = await whenPast.read(typed, asking);
    if (!read.ok) return read;
    const { happenedAt: now, book } = asking;
    const { zone } = await book.studio();
    const said = readInstant(typed, { now, zone, looks: 'back' });
    if (said.ok && said.exact) return { ok: true, value: { from: read.value, to: read.value } };
    const from = startOfLocalDay(read.value, zone);
    const to = instant(Math.min(addLocalDays(from, 1, zone) - 1, now));
    return { ok: true, value: { from, to } };
  },
};
