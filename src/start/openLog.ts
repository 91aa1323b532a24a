import { definedOnly } from '../definedOnly.ts';
import { pino } from 'pino';
import { calmLog } from '../monitor/calmLog.ts';
import type { Log } from '../contract/log.ts';

/**
 * An error without its other properties: a Discord error has the request, whose URL contains the token and whose body a
 * member's words.
 */
const plainError = (error: unknown): unknown => {
  if (!(error instanceof Error)) return error;
  const { name, message, stack } = error;
  const code = 'code' in error ? error.code : undefined;
  return { type: name, message, ...definedOnly({ code }), stack };
};

export interface Logs {
  /** For messages that are always logged, such as bugs. */
  every: Log;
  /** For messages that may repeat a hundred times a minute. */
  calm: Log;
}

/** The log: one JSON object on each line of standard error. */
export const openLog = (level: string): Logs => {
  const every = pino({ level, serializers: { err: plainError } }, pino.destination({ dest: 2, sync: true }));
  return { every, calm: calmLog(every) };
};
