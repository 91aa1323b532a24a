import { logs, needed, optional } from '../../src/contract/contract.ts';
import { pressToRun } from '../../src/contract/replyParts.ts';
import { bucket } from '../../src/contract/kinds/bucket.ts';
import { time } from '../../src/contract/kinds/quantities.ts';
import { days, later, minutes } from '../../src/studio/ids.ts';
import { toldWhere } from '../../src/studio/remind/toldWhere.ts';
import { isoInstant } from '../../src/studio/time/isoInstant.ts';

/** A dose has worked after this long: common practice. */
const usual = minutes(10);

export const remindMe = logs({
  name: 'me',
  about: (w) => w.reminder.meAbout,
  who: 'member',
  private: true,
  options: {
    bucket: needed(bucket, (w) => w.reminder.meBucket),
    in: optional(time(minutes(1), days(2), 'min', '10min'), (w) => w.reminder.meIn),
  },
  async run(v, { words, book, now, member }) {
    const at = later(now, v.in ?? usual);
    const key = await book.remindAt(member, v.bucket.no, at, now);
    const where = toldWhere(member, await book.studio(), await book.platformsOf(member));
    return {
      kind: 'answer',
      title: words.verdict.headline(v.bucket.settings.name, words.reminder.toldAt(where, at, now)),
      actions: [pressToRun(words.reminder.notAfterAll, 'remind done', { reminder: key })],
      data: { reminder: key, at: isoInstant(at), bucket: v.bucket.no },
    };
  },
});
