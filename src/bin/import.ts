import { existsSync, rmSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { systemClock } from '../clock.ts';
import { withoutControlsInLines } from '../contract/plainText.ts';
import { readConfig } from '../start/config.ts';
import { exitCodeOf, UsageProblem } from '../start/exitCodeOf.ts';
import { importExport } from '../start/importExport.ts';
import { ImportProblem, type ImportWhy } from '../store/imports/importProblem.ts';
import { openStore, type Store } from '../store/openStore.ts';
import { importWords as w } from '../words/platform/importWords.ts';

const sentence = (why: ImportWhy, file: string): string => {
  switch (why.kind) {
    case 'not-an-export':
      return w.notAnExport(file);
    case 'newer-format':
      return w.newerFormat(file, why.format);
    case 'a-part':
      return w.aPart(file);
    case 'damaged':
      return w.damaged(file, why.line);
    case 'cut-off':
      return w.cutOff(file, why.line);
    case 'differs':
      return w.differs(file, why.what);
    case 'no-name':
      return w.noName(file);
    case 'exists':
      return w.exists(why.name);
    case 'server-known':
      return w.serverKnown(why.server);
  }
};

/** A logbook that did not exist before is not left behind when the file is refused. */
const inLogbook = async (work: (store: Store) => Promise<number>): Promise<number> => {
  const logbook = readConfig().DATABASE_FILE ?? 'data/studio.db';
  const isNew = !existsSync(logbook);
  const store = await openStore(logbook, { clock: systemClock });
  let done = false;
  try {
    const code = await work(store);
    done = code === 0;
    return code;
  } finally {
    await store.close();
    if (isNew && !done)
      for (const end of ['', '-wal', '-shm', '.lock']) rmSync(`${logbook}${end}`, { force: true });
  }
};

const bringIn = (file: string, options: Parameters<typeof importExport>[2]): Promise<number> =>
  inLogbook(async (store) => {
    try {
      const { name, id, entries, members, namesakes } = await importExport(
        file,
        { store, clock: systemClock },
        options,
      );
      console.log(withoutControlsInLines(w.brought(name, id, entries, members)));
      for (const called of namesakes) console.log(withoutControlsInLines(w.namesake(called)));
      if (members > 0) console.log(w.link);
      return 0;
    } catch (error) {
      if (!(error instanceof ImportProblem)) throw error;
      console.error(withoutControlsInLines(sentence(error.why, file)));
      return 1;
    }
  });

process.exitCode = await exitCodeOf(w.usage, async () => {
  const text = { type: 'string' } as const;
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: { studio: text, server: text, 'states-anew': { type: 'boolean', default: false } },
  });
  const [file, ...others] = positionals;
  if (file === undefined || others.length > 0 || values.studio?.trim() === '')
    throw new UsageProblem(w.usage);
  if (!existsSync(file)) throw new UsageProblem(w.noFile(file));
  return bringIn(file, {
    name: values.studio,
    server: values.server,
    anew: values['states-anew'],
  });
});
