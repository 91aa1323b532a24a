import { z } from 'zod';
import type { Database } from './database.ts';

const answered = z.tuple([z.object({ busy: z.number() })]);

/** Carries the write-ahead log over into the file, and truncates it; false, at once, when somebody reads an older state. */
export const emptyLog = ({ sqlite }: Database): boolean => {
  const patience = Number(sqlite.pragma('busy_timeout', { simple: true }));
  sqlite.pragma('busy_timeout = 0');
  try {
    return answered.parse(sqlite.pragma('wal_checkpoint(TRUNCATE)'))[0].busy === 0;
  } finally {
    sqlite.pragma(`busy_timeout = ${patience}`);
  }
};
