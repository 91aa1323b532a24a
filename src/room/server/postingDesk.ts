import type { Desk } from '../../contract/desk.ts';
import type { Log } from '../../contract/log.ts';
import { printLine } from '../../contract/parseLine.ts';
import type { Post, StudioId } from '../ports.ts';

/** Wraps the desk for another platform, so that what is logged there is also posted in its studio's room. */
export const postingDesk = (
  desk: Desk,
  log: Log,
  say: (studio: StudioId, said: Omit<Post, 'no'>) => Promise<unknown>,
): Desk => ({
  ...desk,
  async dispatch(request) {
    const reply = await desk.dispatch(request);
    if (reply.private === true || reply.kind !== 'answer') return reply;
    const { studio, key, now: at, member, path, typed } = request;
    const line = printLine(path, typed).slice(0, 500);
    const said = { key, id: key.replace(/[^\w-]/g, '-'), at, member, line, private: false, reply };
    // It is logged, so its member gets the reply without waiting for the room, and whatever fails there.
    void say(studio, said).catch((err: unknown) =>
      log.error({ err }, 'could not say in the room what was logged elsewhere'),
    );
    return reply;
  },
});
