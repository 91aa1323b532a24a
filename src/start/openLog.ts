import { pino } from 'pino';
import { calmLog } from './calmLog.ts';
import type { Log } from '../contract/log.ts';

/** An error without what hangs on it: a platform's has the request, whose address has the token and whose body a member's words. */
const plainError = (error: unknown): unknown => {
  if (!(error instanceof Error)) return error;
  const { name, message, stack } = error;
  const code = 'code' in error ? error.code : undefined;
  return { type: name, message, ...(code !== undefined && { code }), stack };
};

export interface Logs {
  /** For what is told once: a bug, with the id that its finder was told. */
  every: Log;
  /** For what may come a hundred times a minute. */
  calm: Log;
}

/** The log, one line of JSON a happening, on standard error. */
export const openLog = (level: string): Logs => {
  const every = pino({ level, serializers: { err: plainError } }, pino.destination({ dest: 2, sync: true }));
  return { every, calm: calmLog(every) };
};
