import type { StudioNote } from '../../studio/handbook.ts';
import { normalizedName } from '../../studio/normalizedName.ts';
import { text } from '../../contract/kinds/texts.ts';

/** What a form of the strictest platform holds. */
export const noteKinds = {
  title: text(80, 'where the cookies are'),
  text: text(1000, 'Clay cookies are on the shelf by the kiln door.'),
  words: text(200, 'cookie, kiln shelf, runny pots'),
};

/** Another note of the same title: two would answer one question. */
export const sameTitle = (
  title: string,
  notes: readonly StudioNote[],
  but?: StudioNote,
): StudioNote | undefined =>
  notes.find((one) => one.no !== but?.no && normalizedName(one.title) === normalizedName(title));
