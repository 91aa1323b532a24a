import { asks } from '../../src/contract/contract.ts';
import { reminderText } from '../../src/contract/kinds/reminderText.ts';
import { isoInstant } from '../../src/studio/time/isoInstant.ts';

export const listReminders = asks({
  name: 'list',
  about: (w) => w.reminder.listAbout,
  who: 'member',
  options: {},
  async run(_values, { words, book, member }) {
    const { reminder: w } = words;
    const coming = (await book.reminders(member)).filter(({ told }) => !told);
    const coats = await book.coats();
    return {
      kind: 'answer',
      title: coming.length === 0 ? w.nothing : w.listTitle(coming.length),
      facts: coming.map((one) => ({ label: w.row(one.dueAt), text: reminderText(one, coats, words) })),
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
