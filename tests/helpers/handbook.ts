import { openHandbook } from '../../src/search/openHandbook.ts';
import { loadNotes } from '../../src/seed/loadNotes.ts';

/** The program's own handbook. */
export const handbook = openHandbook(loadNotes);
