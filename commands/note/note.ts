import type { Group } from '../../src/contract/contract.ts';
import { addNote } from './add.ts';
import { changeNote } from './change.ts';
import { listNotes } from './list.ts';
import { dropQuestion, listQuestions, wantNote } from './questions.ts';
import { removeNote } from './remove.ts';

export const noteGroup: Group = {
  name: 'note',
  about: (w) => w.notes.about,
  leaves: [listNotes, addNote, changeNote, removeNote, listQuestions, dropQuestion, wantNote],
};
