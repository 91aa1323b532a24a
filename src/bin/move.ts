import { existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { exitCodeOf, UsageProblem } from '../start/exitCodeOf.ts';
import { isAddress } from '../store/engine/isAddress.ts';
import { nameOf } from '../store/engine/nameOf.ts';
import { moveLogbook } from '../store/move/moveLogbook.ts';
import { storeWords } from '../words/platform/storeWords.ts';

process.exitCode = await exitCodeOf(storeWords.moveUsage, async () => {
  const { positionals } = parseArgs({ allowPositionals: true });
  const [from, to, ...others] = positionals;
  if (from === undefined || to === undefined || others.length > 0)
    throw new UsageProblem(storeWords.moveUsage);
  if (from === to) throw new UsageProblem(storeWords.moveSame);
  if (!isAddress(from) && !existsSync(from)) throw new UsageProblem(storeWords.moveNothing(from));
  const { studios, entries } = await moveLogbook(from, to);
  console.log(storeWords.moved(studios, entries, nameOf(from), nameOf(to)));
  return 0;
});
