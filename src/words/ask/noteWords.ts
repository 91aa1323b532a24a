import { ours, said, t, type Text } from '../text/text.ts';

export const noteWords = {
  about: 'The studio’s own notes, which /ask answers from before the handbook’s',
  add: 'Add a note of the studio’s own',
  change: 'Change a note of the studio’s own',
  remove: 'Remove a note of the studio’s own; what it said is forgotten',
  list: 'The studio’s own notes',
  note: 'The note, by its number or title',
  title: 'What it is about, in a few words',
  text: 'What it says: the answer in the first sentence',
  words: 'Other words that people ask by, with commas between',

  added: (id: string, title: string): Text => t`Kept ${[id]}: ${said(title)}. /ask answers from it now.`,
  changed: (id: string, title: string): Text => t`Changed ${[id]}: ${said(title)}.`,
  removed: (id: string): Text => t`Removed ${[id]}; what it said is forgotten.`,
  nothingToChange: ours('Say what to change: title:, text: or words:. Nothing was saved.'),
  sameTitle: (id: string, title: string): Text =>
    t`“${said(title)}” is ${[id]} already. Change that one: /note change. Nothing was saved.`,
  full: (most: number): Text =>
    t`There are ${most} notes already: remove one that nobody needs. Nothing was saved.`,
  none: (typed: string): Text =>
    t`There is no note “${said(typed)}” of the studio's own. /note list shows them.`,
  which: (typed: string): Text => t`Which note is “${said(typed)}”?`,
  listTitle: (count: number): Text =>
    count === 0
      ? ['No notes of the studio’s own yet. A keeper adds one: /note add title: text:.']
      : count === 1
        ? ['One note of the studio’s own.']
        : t`${count} notes of the studio’s own.`,
  label: (id: string, title: string): Text => t`${[id]} ${said(title)}`,
  choice: (id: string, title: string): string => `${id} · ${title}`,
  factText: 'Says',
  changeIt: ours('Change it'),
  askIt: ours('Ask for it'),
};
