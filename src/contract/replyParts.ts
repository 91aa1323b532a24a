import type { MemberId, Seq } from '../studio/ids.ts';
import type { Part, Text } from '../words/text/text.ts';
import type { Words } from '../words/words.ts';
import { toEdit, toRun, type Action, type Asking, type Fact, type Reply } from './contract.ts';
import { printLine } from './parseLine.ts';

type Typed = Parameters<typeof printLine>[1];

/** A button that runs this command when it is pressed. */
export const pressToRun = (label: Text, path: string, typed: Typed = {}, after?: Seq): Action =>
  toRun(label, printLine([path], typed, after));

/** A button that opens the command first, to be changed. */
export const pressToEdit = (label: Text, path: string, typed: Typed = {}, after?: Seq): Action =>
  toEdit(label, printLine([path], typed, after));

/** A button that opens a note, by asking for its title. */
export const pressToRead = (title: string, { ask }: Words, shown: Text = [title]): Action =>
  pressToRun(ask.read(shown), 'ask', { question: title });

/** A member by the name that they have now. */
export const byMember = async (
  member: MemberId,
  { book, words }: Pick<Asking, 'book' | 'words'>,
): Promise<Part> => ({
  member,
  name: (await book.member(member))?.name ?? words.someone,
});

export const fact = (label: string, text: Text): Fact => ({ label: [label], text });

/** A question to the asker alone, answered by a press. */
export const choice = (title: Text, actions: Action[], data: Reply['data']): Reply => ({
  kind: 'choice',
  title,
  private: true,
  actions,
  data,
});
