import { logs, needed } from '../../src/contract/contract.ts';
import { pick } from '../../src/contract/kinds/picks.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';

export const remindBy = logs({
  name: 'by',
  about: (w) => w.reminder.byAbout,
  who: 'member',
  private: true,
  options: {
    way: needed(
      pick(['direct', 'channel'], { dm: 'direct', directly: 'direct', message: 'direct', room: 'channel' }),
      (w) => w.reminder.way,
    ),
  },
  async run(v, { words, book, now, member }) {
    const { entry } = await book.logStudio({ kind: 'reach', member, by: v.way }, stampNow({ now, member }));
    return { kind: 'answer', title: words.reminder.by(v.way), data: { entry: entry.id, way: v.way } };
  },
});
