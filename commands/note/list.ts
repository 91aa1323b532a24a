import { asks, toEdit } from '../../src/contract/contract.ts';
import { fromOption, longList } from '../../src/contract/kinds/longList.ts';
import { isoInstant } from '../../src/studio/time/isoInstant.ts';
import { studioNoteId, type StudioNote } from '../../src/studio/handbook.ts';
import { shortNote } from '../../src/studio/people/noteTexts.ts';

export const listNotes = asks({
  name: 'list',
  about: (w) => w.notes.list,
  who: 'member',
  options: { from: fromOption },
  async run(v, asking) {
    const { words, book, role } = asking;
    const w = words.notes;
    const all = await book.notes();
    const idOf = ({ no }: StudioNote) => studioNoteId(no);
    const { rows: notes, more } = longList(all, idOf, v.from, ['note', 'list'], asking);
    return {
      kind: 'answer',
      title: w.listTitle(all.length),
      facts: notes.map(({ no, title, text }) => ({
        label: w.label(studioNoteId(no), title),
        text: [{ said: shortNote(text) }],
      })),
      ...(all.length === 0 && role === 'keeper' ? { actions: [toEdit(w.addOne, '/note add')] } : {}),
      more,
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
