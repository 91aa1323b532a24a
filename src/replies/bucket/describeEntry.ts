import type { Entry } from '../../studio/entry.ts';
import type { LoggedEvent, Notes } from '../../studio/logbook/ports.ts';
import type { Text } from '../../words/text/text.ts';
import { byMember } from '../../contract/replyParts.ts';
import type { Asking } from '../../contract/contract.ts';

/** A log entry on one line: who, when, what, its note, and whether it was undone. */
export const describeEntry = async (entry: Entry<LoggedEvent> & Notes, asking: Asking): Promise<Text> => {
  const { units } = await asking.book.studio();
  return asking.words.log.entry(entry, await byMember(entry.by, asking), units);
};
