import { basename, dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { formatISO } from 'date-fns/formatISO';
import { systemClock } from '../clock.ts';
import { logbookOf, readConfig } from '../start/config.ts';
import { backUp } from '../store/backup/backUp.ts';
import { makeFolder } from '../store/engine/sqlite/makeFolder.ts';
import { storeWords } from '../words/platform/storeWords.ts';
import { exitCodeOf, UsageProblem } from '../start/exitCodeOf.ts';

const backupFile = (file: string) => {
  const folder = join(dirname(file), 'backups');
  makeFolder(folder);
  return join(folder, `${formatISO(systemClock.now(), { format: 'basic' })}-${basename(file)}`);
};

process.exitCode = await exitCodeOf(storeWords.backUpUsage, async () => {
  const { positionals } = parseArgs({ allowPositionals: true });
  const config = readConfig();
  if (config.DATABASE_URL !== undefined) throw new UsageProblem(storeWords.backUpByServer);
  const file = logbookOf(config);
  const target = positionals[0] ?? backupFile(file);
  await backUp(file, target);
  console.log(storeWords.backedUp(file, target));
  return 0;
});
