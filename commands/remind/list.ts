import { asks } from '../../src/contract/contract.ts';
import { pressToRun } from '../../src/contract/replyParts.ts';
import { fromOption, longList } from '../../src/contract/kinds/longList.ts';
import { coatOf } from '../../src/contract/kinds/reminder.ts';
import { isoInstant } from '../../src/studio/time/isoInstant.ts';

export const listReminders = asks({
  name: 'list',
  about: (w) => w.reminder.listAbout,
  who: 'member',
  options: { from: fromOption },
  async run(v, asking) {
    const { words, book, member } = asking;
    const { reminder: w } = words;
    const all = (await book.reminders(member)).filter(({ told }) => !told);
    const { rows: coming, more } = longList(all, ({ key }) => key, v.from, ['remind', 'list'], asking);
    const coats = await book.coats();
    return {
      kind: 'answer',
      title: all.length === 0 ? w.nothing : w.listTitle(all.length),
      facts: coming.map(({ key, about, dueAt }) => ({
        label: w.row(dueAt),
        text: w.subject(about, coatOf({ about }, coats)),
        presses: [pressToRun(w.stop, 'remind done', { reminder: key })],
      })),
      more,
      data: {
        reminders: coming.map(({ key, about, dueAt, goodUntil }) => ({
          reminder: key,
          about: about.kind,
          dueAt: isoInstant(dueAt),
          goodUntil: isoInstant(goodUntil),
        })),
      },
    };
  },
});
