import type { MemberId, Seq } from '../studio/ids.ts';
import type { Part, Text } from '../words/text/text.ts';
import type { Words } from '../words/words.ts';
import type { Action, Asking, Fact, Reply } from './contract.ts';
import { printLine } from './parseLine.ts';

type Typed = Parameters<typeof printLine>[1];

/** A button that runs this command when it is pressed. */
export const pressToRun = (label: Text, path: string, typed: Typed = {}, after?: Seq): Action => ({
  label,
  line: printLine([path], typed, after),
  press: 'run',
});

/** A button that opens the command first, to be changed. */
export const pressToEdit = (...button: Parameters<typeof pressToRun>): Action => ({
  ...pressToRun(...button),
  press: 'edit',
});

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
