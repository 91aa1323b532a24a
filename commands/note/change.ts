import { logs, needed, optional, refusal, type Reply } from '../../src/contract/contract.ts';
import { studioNote } from '../../src/contract/kinds/studioNote.ts';
import { noteKinds, sameTitle } from '../../src/replies/ask/noteOptions.ts';
import { studioNoteId } from '../../src/studio/handbook.ts';

export const changeNote = logs({
  name: 'change',
  about: (w) => w.notes.change,
  who: 'keeper',
  form: ['note', 'title', 'text', 'words'],
  options: {
    note: needed(studioNote, (w) => w.notes.note),
    title: optional(noteKinds.title, (w) => w.notes.title),
    text: optional(noteKinds.text, (w) => w.notes.text),
    words: optional(noteKinds.words, (w) => w.notes.words),
  },
  async run({ note, title, text, words: asked }, { words, book, now, member }): Promise<Reply> {
    const w = words.notes;
    if (title === undefined && text === undefined && asked === undefined) return refusal(w.nothingToChange);
    const same = title === undefined ? undefined : sameTitle(title, await book.notes(), note);
    if (same) return refusal(w.sameTitle(studioNoteId(same.no), same.title), { no: same.no });
    const changed = await book.keepNote({
      no: note.no,
      title: title ?? note.title,
      text: text ?? note.text,
      words: asked ?? note.words,
      by: member,
      at: now,
    });
    const id = studioNoteId(note.no);
    return {
      kind: 'answer',
      title: w.changed(id, changed.title),
      facts: [{ label: [w.factText], text: [{ said: changed.text }] }],
      data: { note: id, title: changed.title },
    };
  },
});
