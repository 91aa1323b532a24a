import { definedOnly } from '../definedOnly.ts';
import { closeSync, fsyncSync, openSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { systemClock } from '../clock.ts';
import { exportCsv } from '../replies/export/exportCsv.ts';
import { exportJson } from '../replies/export/exportJson.ts';
import { logbookOf, readConfig } from '../start/config.ts';
import { readBesideOwner } from '../store/logbook/readBesideOwner.ts';
import { nameOf } from '../store/engine/nameOf.ts';
import { studiosIn } from '../store/logbook/studiosIn.ts';
import { days, instant, type StreamNo } from '../studio/ids.ts';
import { matchBuckets } from '../studio/naming/matchBuckets.ts';
import type { Logbook } from '../studio/logbook/ports.ts';
import { en } from '../words/en.ts';
import { studioAmong } from '../start/chosenStudio.ts';
import { exitCodeOf, UsageProblem } from '../start/exitCodeOf.ts';

const w = en.export;

const bucketMeant = async (book: Logbook, typed: string): Promise<StreamNo> => {
  const [found, ...others] = matchBuckets(typed, await book.buckets());
  if (!found) throw new UsageProblem(w.noBucket(typed));
  if (others.length > 0) throw new UsageProblem(w.whichBucket(typed));
  return found.no;
};

const spanMeant = (typed: string): number => {
  const span = Number(typed);
  if (typed.trim() === '' || !(span > 0)) throw new UsageProblem(w.noSuchDays(typed));
  return days(span);
};

/** Creates a file that only its owner may read. An existing file is not overwritten. */
const openNew = (file: string): number => {
  try {
    return openSync(file, 'wx', 0o600);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'EEXIST') throw new UsageProblem(w.exists(file));
    if (code === 'ENOENT' || code === 'ENOTDIR') throw new UsageProblem(w.noFolder(file));
    throw error;
  }
};

process.exitCode = await exitCodeOf(w.usage, async () => {
  const text = { type: 'string' } as const;
  const { values } = parseArgs({
    options: { out: text, as: { ...text, default: 'json' }, bucket: text, days: text, studio: text },
  });
  const { out, as } = values;
  if (out === undefined || (as !== 'json' && as !== 'csv')) throw new UsageProblem(w.usage);
  const where = logbookOf(readConfig());
  const studio = studioAmong(await studiosIn(where), values.studio);
  if (studio === undefined) throw new UsageProblem(w.empty(nameOf(where)));
  const now = systemClock.now();
  const since = values.days === undefined ? undefined : instant(now - spanMeant(values.days));
  await readBesideOwner(where, studio, async (book) => {
    const scope = {
      ...(values.bucket !== undefined && { bucket: await bucketMeant(book, values.bucket) }),
      ...definedOnly({ since }),
    };
    const handle = openNew(out);
    const total = { entries: 0, bytes: 0 };
    try {
      const parts = as === 'json' ? exportJson(book, now, scope) : exportCsv(book, scope, en.someone);
      for await (const part of parts) {
        total.entries += part.entries;
        total.bytes += Buffer.byteLength(part.text);
        // Not `write`, which may write only a part of it.
        writeFileSync(handle, part.text);
      }
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    console.log(w.wrote(out, total.entries, total.bytes));
  });
  return 0;
});
