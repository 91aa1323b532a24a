import { said, t, type Text } from '../text/text.ts';

export const noteWords = {
  about: 'The studio’s own notes; /ask looks in them first, then in the handbook',
  add: 'Add a note of the studio’s own',
  change: 'Change a note of the studio’s own',
  remove: 'Remove a note of the studio’s own, and its text for good',
  list: 'The studio’s own notes',
  note: 'The note, by its number or title',
  title: 'What it is about, in a few words',
  text: 'What it says; put the answer in the first sentence',
  words: 'Other words that people may ask with, separated by commas',

  added: (id: string, title: string): Text =>
    t`Kept as ${[id]}: ${said(title)}. Questions are answered from it now.`,
  changed: (id: string, title: string): Text => t`Changed ${[id]}: ${said(title)}.`,
  removed: (id: string): Text => t`Removed ${[id]}. Its text is gone for good.`,
  nothingToChange: t`Say what to change: its title, its text, or the other words for it. Nothing was saved.`,
  sameTitle: (id: string, title: string): Text =>
    t`“${said(title)}” is ${[id]} already. Change that one: /note change. Nothing was saved.`,
  full: (most: number): Text =>
    t`There are ${most} notes already, and that is the limit. Remove one that nobody needs. Nothing was saved.`,
  none: (typed: string): Text => t`The studio has no note “${said(typed)}”. /note list shows its notes.`,
  which: (typed: string): Text => t`Which note is “${said(typed)}”?`,
  addOne: t`Write a note`,
  listTitle: (count: number): Text =>
    count === 0
      ? t`The studio has no notes of its own yet. A keeper can add one.`
      : count === 1
        ? t`The studio has one note of its own.`
        : t`The studio has ${count} notes of its own.`,
  label: (id: string, title: string): Text => t`${[id]} ${said(title)}`,
  choice: (id: string, title: string): string => `${id} · ${title}`,
  factText: 'Says',
  changeIt: t`Change it`,
  askIt: t`Show it`,
};
