import { existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { openDemo } from '../start/openDemo.ts';
import { isAddress } from '../store/engine/isAddress.ts';
import { seedWords } from '../words/platform/seedWords.ts';
import { exitCodeOf, UsageProblem } from '../start/exitCodeOf.ts';

process.exitCode = await exitCodeOf(seedWords.usage, async () => {
  const { positionals } = parseArgs({ allowPositionals: true });
  const [file, ...rest] = positionals;
  if (file === undefined || rest.length > 0) throw new UsageProblem(seedWords.usage);
  if (isAddress(file)) throw new UsageProblem(seedWords.onlyFile);
  if (existsSync(file)) throw new UsageProblem(seedWords.exists(file));
  const app = await openDemo({ file });
  try {
    for (const { name } of await app.store.people.studios()) console.log(seedWords.filled(file, name));
    return 0;
  } finally {
    await app.store.close();
  }
});
