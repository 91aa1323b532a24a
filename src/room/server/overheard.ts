import type { Desk } from '../../contract/contract.ts';
import { printLine } from '../../contract/parseLine.ts';
import type { Room } from './room.ts';

/** What is logged on another platform is said in the room as well: there is one logbook. */
export const overheard = (desk: Desk, { ports, posts }: Room): Desk => ({
  ...desk,
  async dispatch(request) {
    const reply = await desk.dispatch(request);
    if (request.studio !== ports.studio || reply.private === true || reply.kind !== 'answer') return reply;
    const { key, now: at, member, path, typed } = request;
    const line = printLine(path, typed).slice(0, 500);
    try {
      posts.say({ key, id: key.replace(/[^\w-]/g, '-'), at, member, line, private: false, reply });
    } catch (err) {
      // It is logged, whatever becomes of it here: whoever logged it is told so.
      ports.log.error({ err }, 'could not say in the room what was logged elsewhere');
    }
    return reply;
  },
});
