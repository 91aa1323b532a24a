import type { Desk } from '../../contract/desk.ts';
import { printLine } from '../../contract/parseLine.ts';
import type { Room } from './room.ts';

/** Wraps the desk for another platform, so that what is logged there is also posted in the room. */
export const postingDesk = (desk: Desk, { ports, posts }: Room): Desk => ({
  ...desk,
  async dispatch(request) {
    const reply = await desk.dispatch(request);
    if (request.studio !== ports.studio || reply.private === true || reply.kind !== 'answer') return reply;
    const { key, now: at, member, path, typed } = request;
    const line = printLine(path, typed).slice(0, 500);
    // It is logged, so its member gets the reply without waiting for the room, and whatever fails there.
    void posts
      .say({ key, id: key.replace(/[^\w-]/g, '-'), at, member, line, private: false, reply })
      .catch((err: unknown) =>
        ports.log.error({ err }, 'could not say in the room what was logged elsewhere'),
      );
    return reply;
  },
});
