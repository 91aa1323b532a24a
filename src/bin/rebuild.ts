import { parseArgs } from 'node:util';
import { systemClock } from '../clock.ts';
import { logbookOf, readConfig } from '../start/config.ts';
import { checkStates } from '../store/states/checkStates.ts';
import { openStore } from '../store/openStore.ts';
import { storeWords } from '../words/platform/storeWords.ts';
import { exitCodeOf } from '../start/exitCodeOf.ts';

const check = async (where: string): Promise<number> => {
  const { studios, streams, outdated, differing } = await checkStates(where);
  if (outdated > 0) console.log(storeWords.outdated(outdated));
  for (const { studio, stream } of differing) console.error(storeWords.differs(studio, stream));
  if (differing.length > 0) return 1;
  console.log(storeWords.checked(studios, streams));
  return 0;
};

const rebuild = async (where: string): Promise<number> => {
  const store = await openStore(where, { clock: systemClock });
  try {
    console.log(storeWords.rebuilt(await store.rebuildStates()));
    return 0;
  } finally {
    await store.close();
  }
};

process.exitCode = await exitCodeOf(storeWords.rebuildUsage, async () => {
  const { values } = parseArgs({ options: { check: { type: 'boolean', default: false } } });
  const where = logbookOf(readConfig());
  return values.check ? check(where) : rebuild(where);
});
