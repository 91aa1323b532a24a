import type { Entry } from '../../studio/entry.ts';
import type { LoggedEvent, Notes } from '../../studio/logbook/ports.ts';
import type { Text } from '../../words/text/text.ts';
import type { Asking } from '../../contract/contract.ts';

/** A log entry on one line: who, when, what, its note, and whether it was undone. */
export const describeEntry = async (
  entry: Entry<LoggedEvent> & Notes,
  { words, book }: Asking,
): Promise<Text> => {
  const { units } = await book.studio();
  const member = await book.member(entry.by);
  return words.log.entry(entry, { member: entry.by, name: member?.name ?? words.someone }, units);
};
