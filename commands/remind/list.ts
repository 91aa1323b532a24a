import { asks } from '../../src/command/contract.ts';
import { isoInstant } from '../../src/command/isoInstant.ts';

export const listReminders = asks({
  name: 'list',
  about: (w) => w.reminder.listAbout,
  who: 'member',
  options: {},
  async run(_values, { words, book, member }) {
    const { reminder: w } = words;
    const coming = (await book.reminders(member)).filter(({ told }) => !told);
    return {
      kind: 'answer',
      title: coming.length === 0 ? w.nothing : w.listTitle(coming.length),
      facts: coming.map(({ key, dueAt }) => ({ label: [{ said: key }], text: w.row(dueAt) })),
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
