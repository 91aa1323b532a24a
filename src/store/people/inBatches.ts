import { writeAll, type Scope, type Turns, type Writing } from '../engine/turns.ts';

/** Works through rows in small batches, each in a turn of its own. A batch answers where it ended; undefined at the end. */
export const inBatches = async <Place>(
  turns: Turns,
  scope: Scope,
  first: Place,
  batch: (writing: Writing, after: Place) => Promise<Place | undefined>,
): Promise<void> => {
  for (let after: Place | undefined = first; after !== undefined;) {
    const from: Place = after;
    after = await writeAll(turns, scope, (writing) => batch(writing, from));
  }
};
