import { undoneIn, type Entry } from '../entry.ts';
import type { ResistCoat } from './resistCoat.ts';
import type { CoatEvent } from './coatEvent.ts';
import { days, since } from '../ids.ts';

/** After this long, a coat was glazed over and nobody logged it. */
const forgotten = days(30);

const on = (
  coats: readonly ResistCoat[],
  { id, seq, at, loggedAt, by, event }: Entry<Extract<CoatEvent, { kind: 'on' }>>,
): ResistCoat[] => {
  const { kind: _, over, ...coat } = event;
  const below = over === undefined ? undefined : coats.find((one) => one.seq === over);
  return [
    ...coats.filter((one) => one !== below && since(one.onAt, loggedAt) < forgotten),
    { ...coat, id, seq, by, onAt: at, loggedAt, below: below ? [...below.below, below.seq] : [] },
  ];
};

/** The coats that are on after one more entry. An undo is not handled here: it needs a fold of all entries. */
export const applyToCoats = (
  coats: readonly ResistCoat[],
  entry: Entry<CoatEvent>,
): readonly ResistCoat[] => {
  const { event } = entry;
  switch (event.kind) {
    case 'on':
      return on(coats, { ...entry, event });
    case 'off':
      return coats.filter(({ seq }) => seq !== event.of);
    case 'not-mine':
      return coats.map((coat) => (coat.seq === event.of ? { ...coat, disowned: true } : coat));
    case 'undo':
      return coats;
  }
};

/** The coats that are on after these entries, without those that were undone. */
export const foldCoats = (entries: readonly Entry<CoatEvent>[]): readonly ResistCoat[] => {
  const undone = undoneIn(entries);
  return [...entries]
    .filter(({ seq }) => !undone.has(seq))
    .sort((a, b) => a.seq - b.seq)
    .reduce(applyToCoats, []);
};
