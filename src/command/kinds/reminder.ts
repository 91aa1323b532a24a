import type { Reminder } from '../../studio/reminder.ts';
import type { Kind } from '../contract.ts';

/** One of the asker's own reminders, as buttons and lists name it. */
export const reminder: Kind<Reminder> = {
  control: 'text',
  example: 'c-12-ready',
  async read(typed, { book, member, words }) {
    const wanted = typed.trim().toLowerCase();
    const found = (await book.reminders(member)).find(({ key }) => key.toLowerCase() === wanted);
    return found ? { ok: true, value: found } : { ok: false, why: words.reminder.none(typed) };
  },
  async suggest(typed, { book, member }) {
    const wanted = typed.toLowerCase();
    return (await book.reminders(member))
      .filter(({ key, told }) => !told && key.toLowerCase().includes(wanted))
      .slice(0, 25)
      .map(({ key }) => ({ name: key, value: key }));
  },
};
