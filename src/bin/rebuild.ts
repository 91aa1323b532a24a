import { parseArgs } from 'node:util';
import { systemClock } from '../clock.ts';
import { readConfig } from '../start/config.ts';
import { checkStates } from '../store/states/checkStates.ts';
import { openStore } from '../store/openStore.ts';
import { storeWords } from '../words/platform/storeWords.ts';
import { exitCodeOf } from '../start/exitCodeOf.ts';

const check = async (file: string): Promise<number> => {
  const { studios, streams, outdated, differing } = await checkStates(file);
  if (outdated > 0) console.log(storeWords.outdated(outdated));
  for (const { studio, stream } of differing) console.error(storeWords.differs(studio, stream));
  if (differing.length > 0) return 1;
  console.log(storeWords.checked(studios, streams));
  return 0;
};

const rebuild = async (file: string): Promise<number> => {
  const store = await openStore(file, { clock: systemClock });
  try {
    console.log(storeWords.rebuilt(await store.rebuildStates()));
    return 0;
  } finally {
    await store.close();
  }
};

process.exitCode = await exitCodeOf(storeWords.rebuildUsage, async () => {
  const { values } = parseArgs({ options: { check: { type: 'boolean', default: false } } });
  const file = readConfig().DATABASE_FILE ?? 'data/studio.db';
  return values.check ? check(file) : rebuild(file);
});
