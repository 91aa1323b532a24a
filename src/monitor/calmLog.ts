import type { Log } from '../contract/log.ts';

const minute = 60_000;

const errorIn = (about: object): string => {
  const error: unknown = 'err' in about ? about.err : undefined;
  return typeof error === 'object' && error !== null && 'message' in error ? String(error.message) : '';
};

/** Limits repeats of a message to one a minute. When the minute ends, it logs how many were left out. */
export const calmLog = (log: Log): Log => {
  const told = new Map<string, { about: object; suppressed: number }>();
  const calmly =
    (level: 'warn' | 'error') =>
    (about: object, message: string): void => {
      const key = `${level} ${message} ${errorIn(about)}`;
      const before = told.get(key);
      if (before) {
        before.about = about;
        before.suppressed += 1;
        return;
      }
      const tell = (what: object): void => {
        const now = { about, suppressed: 0 };
        told.set(key, now);
        log[level](what, message);
        setTimeout(() => {
          if (now.suppressed === 0) told.delete(key);
          else tell({ ...now.about, suppressed: now.suppressed });
        }, minute).unref();
      };
      tell(about);
    };
  return {
    info: (about, message) => log.info(about, message),
    warn: calmly('warn'),
    error: calmly('error'),
  };
};
