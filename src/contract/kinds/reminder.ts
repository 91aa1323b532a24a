import type { Reminder } from '../../studio/remind/reminder.ts';
import type { ResistCoat } from '../../studio/resist/resistCoat.ts';
import type { Kind } from '../contract.ts';
import { plainText } from '../plainText.ts';

/** The coat that a reminder is about. */
export const coatOf = ({ about }: Pick<Reminder, 'about'>, coats: readonly ResistCoat[]) =>
  'coat' in about ? coats.find(({ seq }) => seq === about.coat) : undefined;

/** One of the member's own reminders, by the id that buttons and lists use. */
export const reminder: Kind<Reminder> = {
  control: 'text',
  example: 'c-12-ready',
  async read(typed, { book, member, words }) {
    const wanted = typed.trim().toLowerCase();
    const found = (await book.reminders(member)).find(({ key }) => key.toLowerCase() === wanted);
    return found ? { ok: true, value: found } : { ok: false, why: words.reminder.none(typed) };
  },
  async suggest(typed, { book, member, now, words: { reminder: w } }) {
    const wanted = typed.toLowerCase();
    const { zone } = await book.studio();
    const coats = await book.coats();
    return (await book.reminders(member))
      .filter(({ told }) => !told)
      .map((one) => {
        const text = w.named(w.subject(one.about, coatOf(one, coats)), one.key);
        return { name: plainText(text, { now, zone }), value: one.key };
      })
      .filter(({ name, value }) => `${name} ${value}`.toLowerCase().includes(wanted));
  },
};
