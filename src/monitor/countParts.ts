import { leafAt } from '../contract/parseLine.ts';
import type { Desk, Request } from '../contract/desk.ts';
import type { Log } from '../contract/log.ts';
import type { LogbookStore } from '../studio/logbook/ports.ts';
import type { Counts } from './counts.ts';

const platforms = ['discord', 'room', 'terminal'];

/** Every platform begins its keys with its name. */
const platformOf = ({ key }: Request): string => {
  const [name = ''] = key.split(':');
  return platforms.includes(name) ? name : 'other';
};

const since = (began: number): number => (performance.now() - began) / 1_000;

/** A desk whose commands are counted and timed. What the program asks for itself is not. */
export const countingDesk = (desk: Desk, { commands, took }: Counts): Desk => ({
  ...desk,
  async dispatch(request) {
    const began = performance.now();
    const reply = await desk.dispatch(request);
    if (request.probe) return reply;
    const command = leafAt(desk.commands, request.path) ? request.path.join(' ') : 'unknown';
    commands.add({ command, kind: reply.kind, platform: platformOf(request) });
    took.observe({ command }, since(began));
    return reply;
  },
});

/** A logbook that tells how long work waited for its turn. */
export const countingBooks = (books: LogbookStore, { waited }: Counts): LogbookStore => {
  const timed = <B, T>(work: 'read' | 'write', run: (book: B) => Promise<T>) => {
    const began = performance.now();
    return (book: B): Promise<T> => {
      waited.observe({ work }, since(began));
      return run(book);
    };
  };
  return {
    studio: (studio) => books.studio(studio),
    read: (studio, run) => books.read(studio, timed('read', run)),
    readSnapshot: (studio, run) => books.readSnapshot(studio, run),
    writeOnce: (studio, key, run) => books.writeOnce(studio, key, timed('write', run)),
  };
};

export const countingLog = (log: Log, { logged }: Counts): Log => {
  const counting =
    (level: keyof Log): Log[typeof level] =>
    (about, message) => {
      logged.add({ level });
      log[level](about, message);
    };
  return { info: counting('info'), warn: counting('warn'), error: counting('error') };
};
