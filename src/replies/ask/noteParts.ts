import { byMember, fact, pressToRead } from '../../contract/replyParts.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { studioNoteId, type Note } from '../../studio/handbook.ts';
import { firstSentence } from '../../studio/people/noteTexts.ts';
import type { Text } from '../../words/text/text.ts';
import type { Action, Asking, Reply } from '../../contract/contract.ts';

export const noteTitle = ({ from, note }: Note): Text =>
  from === 'handbook' ? [note.title] : [{ said: note.title }];

export const noteId = ({ from, note }: Note): string =>
  from === 'handbook' ? note.id : studioNoteId(note.no);

/** What a note says, as the parts of a reply. */
export interface NoteParts {
  answer: Text;
  facts: NonNullable<Reply['facts']>;
  dont: Text[];
  cautions: Text[];
  reasons: Text[];
}

export const noteParts = async (found: Note, asking: Asking, bucket?: BucketState): Promise<NoteParts> => {
  const w = asking.words.ask;
  if (found.from === 'handbook') {
    const { answer, facts, dont, cautions, basis } = found.note;
    return {
      answer: [answer],
      facts: facts.map(({ label, text }) => ({ label: [label], text: [text] })),
      dont: dont.map((one): Text => [one]),
      // A bucket that is marked for gloves says so itself.
      cautions: cautions
        .filter((one) => one !== 'gloves' || bucket?.settings.cautions.includes('gloves') !== true)
        .map(w.caution),
      reasons: [w.basis(basis)],
    };
  }
  const { no, text, by, at } = found.note;
  const { first, rest } = firstSentence(text);
  return {
    answer: [{ said: first }],
    facts: rest === '' ? [] : [fact(w.factOwn, [{ said: rest }])],
    dont: [],
    cautions: [],
    reasons: [w.ownNote(studioNoteId(no), await byMember(by, asking), at)],
  };
};

/** A button that opens another note. */
export const readNote = (found: Note, { words }: Asking): Action =>
  pressToRead(found.note.title, words, noteTitle(found));
