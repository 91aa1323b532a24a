import { toEdit, toRun, type Asking, type Reply } from '../../contract/contract.ts';
import { whenPast } from '../../contract/kinds/when.ts';
import { printLine } from '../../contract/parseLine.ts';
import { choice } from '../../contract/replyParts.ts';
import type { PlainCoat } from '../../parse/plain/plainCoat.ts';
import type { Instant } from '../../studio/ids.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';

/** The coat that a line tells of, to be logged by one press. */
export const coatDraft = async (
  { kind, pieces, when }: PlainCoat,
  at: Instant,
  asking: Asking,
): Promise<Reply> => {
  const { words } = asking;
  const told = when === undefined ? undefined : await whenPast.read(when, { ...asking, happenedAt: at });
  const moment = told?.ok ? told.value : at;
  const line = printLine(['coat', 'on'], { kind, pieces, when: isoInstant(moment) });
  return choice(
    words.coat.draft(kind, pieces, told?.ok ? moment : undefined),
    [toRun(words.plain.logIt, line), toEdit(words.plain.change, line)],
    { draft: line, unread: [] },
  );
};
