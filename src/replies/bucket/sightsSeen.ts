import type { Observation } from '../../studio/bucket/bucketEvent.ts';
import type { Text } from '../../words/text/text.ts';
import { printLine } from '../../contract/parseLine.ts';
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
    cautions: seen.flatMap((sight) => {
      const told = words.sight[sight];
      return told ? [told] : [];
    }),
    actions: [...notes].flatMap((id): Action[] => {
      const note = handbook.note(id);
      return note
        ? [
            {
              label: words.ask.read([note.title]),
              line: printLine(['ask'], { question: note.title }),
              press: 'run',
            },
          ]
        : [];
    }),
  };
};
