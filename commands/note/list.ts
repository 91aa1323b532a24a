import { asks } from '../../src/contract/contract.ts';
import { isoInstant } from '../../src/studio/time/isoInstant.ts';
import { studioNoteId } from '../../src/studio/handbook.ts';

export const listNotes = asks({
  name: 'list',
  about: (w) => w.notes.list,
  who: 'member',
  options: {},
  async run(_values, { words, book }) {
    const w = words.notes;
    const notes = await book.notes();
    return {
      kind: 'answer',
      title: w.listTitle(notes.length),
      facts: notes.map(({ no, title, text }) => ({
        label: w.label(studioNoteId(no), title),
        text: [{ said: text.length > 120 ? `${text.slice(0, 119)}…` : text }],
      })),
      data: {
        notes: notes.map(({ no, title, text, words: asked, at }) => ({
          note: studioNoteId(no),
          title,
          text,
          words: asked,
          at: isoInstant(at),
        })),
      },
    };
  },
});
