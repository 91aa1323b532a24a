import { logs, needed, optional, refusal } from '../../src/contract/contract.ts';
import { pressToEdit, pressToRun } from '../../src/contract/replyParts.ts';
import { noteKinds, sameTitle } from '../../src/replies/ask/noteOptions.ts';
import { studioNoteId } from '../../src/studio/handbook.ts';

/** Enough for any studio, and few enough to search quickly. */
const mostNotes = 400;

export const addNote = logs({
  name: 'add',
  about: (w) => w.notes.add,
  who: 'keeper',
  form: ['title', 'text', 'words'],
  options: {
    title: needed(noteKinds.title, (w) => w.notes.title),
    text: needed(noteKinds.text, (w) => w.notes.text),
    words: optional(noteKinds.words, (w) => w.notes.words),
  },
  async run(v, { words, book, now, member }) {
    const w = words.notes;
    const notes = await book.notes();
    const same = sameTitle(v.title, notes);
    if (same) return refusal(w.sameTitle(studioNoteId(same.no), same.title), { no: same.no });
    if (notes.length >= mostNotes) return refusal(w.full(mostNotes));
    const { no } = await book.keepNote({
      title: v.title,
      text: v.text,
      words: v.words ?? '',
      by: member,
      at: now,
    });
    const id = studioNoteId(no);
    return {
      kind: 'answer',
      title: w.added(id, v.title),
      facts: [{ label: [w.factText], text: [{ said: v.text }] }],
      actions: [
        pressToRun(w.askIt, 'ask', { question: v.title }),
        pressToEdit(w.changeIt, 'note change', { note: id }),
      ],
      data: { note: id, title: v.title },
    };
  },
});
