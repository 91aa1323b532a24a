import { parentPort, workerData } from 'node:worker_threads';
import { z } from 'zod';
import { openDatabase } from './database.ts';
import { migrations } from '../../migrations/migrations.ts';

const { file } = z.object({ file: z.string() }).parse(workerData);

/** Vacuums the file, so that nothing deleted stays in it, and truncates its write-ahead log. */
const compact = (): boolean => {
  const { sqlite } = openDatabase(file, migrations.length);
  try {
    sqlite.exec('vacuum');
    const [emptied] = z
      .array(z.object({ busy: z.number() }))
      .parse(sqlite.pragma('wal_checkpoint(TRUNCATE)'));
    return emptied?.busy === 0;
  } finally {
    sqlite.close();
  }
};

parentPort?.postMessage(compact());
