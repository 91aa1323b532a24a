import type { Migration } from './migration.ts';

/** Changes no table. From here on a stream may have entries after its `seq`: an earlier release would give their numbers again. */
export const laterEntries: Migration = () => Promise.resolve();
