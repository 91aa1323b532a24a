import type { Group } from '../src/contract/contract.ts';
import { addNote } from './note/add.ts';
import { changeNote } from './note/change.ts';
import { listNotes } from './note/list.ts';
import { dropQuestion, listQuestions, wantNote } from './note/questions.ts';
import { removeNote } from './note/remove.ts';

export const noteGroup: Group = {
  name: 'note',
  about: (w) => w.notes.about,
  leaves: [listNotes, addNote, changeNote, removeNote, listQuestions, dropQuestion, wantNote],
};
