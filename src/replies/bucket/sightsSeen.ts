import { present } from '../../present.ts';
import { pressToRead } from '../../contract/replyParts.ts';
import type { Observation } from '../../studio/bucket/bucketEvent.ts';
import type { Text } from '../../words/text/text.ts';
import type { Action, Asking } from '../../contract/contract.ts';

/** The note on each thing that can be seen in a bucket. */
const noteOf: Partial<Record<Observation, string>> = {
  smell: 'rotten-gum',
  mould: 'rotten-gum',
  crystals: 'crystals',
  ice: 'frozen',
};

/** What to do about what was seen, and buttons for the notes on it. */
export const sightsSeen = (
  seen: readonly Observation[],
  { words, handbook }: Asking,
): { cautions: Text[]; actions: Action[] } => {
  const notes = new Set(seen.flatMap((sight) => noteOf[sight] ?? []));
  return {
    cautions: present(seen.map((sight) => words.sight[sight])),
    actions: present([...notes].map((id) => handbook.note(id))).map(({ title }) => pressToRead(title, words)),
  };
};
