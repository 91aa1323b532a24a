import { fact } from '../../contract/replyParts.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Deed } from '../../studio/logbook/deed.ts';
import type { LoggedEvent } from '../../studio/logbook/ports.ts';
import type { Asking, Reply } from '../../contract/contract.ts';
import { describeEntry } from './describeEntry.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';

/** How many entries are searched for an answer. */
const mostEntries = 200;

const deedIn = (question: string): Deed => {
  if (/\bstir/i.test(question)) return 'stir';
  if (/\bsiev/i.test(question)) return 'sieve';
  if (/\b(?:add|put|pour|water)/i.test(question)) return 'addition';
  return /\b(?:measur|weigh|read)/i.test(question) ? 'reading' : 'any';
};

const isOf = (deed: Deed, event: LoggedEvent): boolean => {
  if (deed === 'any') return event.kind !== 'undo';
  // A reading that was taken stirred counts as a stir.
  return event.kind === deed || (deed === 'stir' && event.kind === 'reading' && event.stirred === true);
};

/** Who last stirred, sieved, measured or added to a bucket, and when. */
export const lastDone = async (question: string, state: BucketState, asking: Asking): Promise<Reply> => {
  const { words, book } = asking;
  const deed = deedIn(question);
  const [last] = (await book.entries(state.no, { most: mostEntries }))
    .filter(({ event, undoneBy }) => undoneBy === undefined && isOf(deed, event))
    .toSorted((a, b) => b.at - a.at);
  const member = last && (await book.member(last.by));
  const by = last && { member: last.by, name: member?.name ?? words.someone };
  const said = by ? words.ask.lastDone(deed, last.at, by) : words.ask.neverDone(deed);
  return {
    kind: 'answer',
    title: words.verdict.headline(state.settings.name, said),
    facts: last ? [fact(words.ask.factEntry, await describeEntry(last, asking))] : [],
    data: {
      bucket: state.no,
      last: last ? { entry: last.id, at: isoInstant(last.at), by: by?.name ?? '' } : null,
    },
  };
};
