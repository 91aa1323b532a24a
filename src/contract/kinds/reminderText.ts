import type { ResistCoat } from '../../studio/resist/resistCoat.ts';
import type { Reminder } from '../../studio/remind/reminder.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';

/** What a reminder is about, for the list and the suggestions. */
export const reminderText = (
  { about, key }: Reminder,
  coats: readonly ResistCoat[],
  { reminder: w }: Words,
): Text => {
  const coat = 'coat' in about ? coats.find(({ seq }) => seq === about.coat) : undefined;
  return w.named(w.subject(about, coat), key);
};
