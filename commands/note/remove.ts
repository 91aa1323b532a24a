import { logs, needed } from '../../src/contract/contract.ts';
import { studioNote } from '../../src/contract/kinds/studioNote.ts';
import { studioNoteId } from '../../src/studio/handbook.ts';

export const removeNote = logs({
  name: 'remove',
  about: (w) => w.notes.remove,
  who: 'keeper',
  options: { note: needed(studioNote, (w) => w.notes.note) },
  async run({ note }, { words, book }) {
    await book.dropNote(note.no);
    const id = studioNoteId(note.no);
    // The removed text must not be in the answer either: answers are kept for a while.
    return { kind: 'answer', title: words.notes.removed(id), data: { note: id } };
  },
});
