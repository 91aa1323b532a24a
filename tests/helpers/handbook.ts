import { openHandbook } from '../../src/search/openHandbook.ts';
import { loadNotes } from '../../src/seed/loadNotes.ts';

/** The handbook that comes with the program. */
export const handbook = openHandbook(loadNotes);
