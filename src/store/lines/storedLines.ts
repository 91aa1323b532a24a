import { randomBytes } from 'node:crypto';
import type { Instant, StudioId } from '../../studio/ids.ts';
import type { HeldLines } from '../../studio/logbook/ports.ts';
import { writeAll, type Turns } from '../engine/turns.ts';
import { withoutNul } from '../engine/withoutNul.ts';

interface Line {
  studio: StudioId;
  line: string;
  until: Instant;
}

/** Milliseconds. Lines that come so close together are written at once: one by one, they would cost as much as the entries. */
const writtenAfter = 100;
const triedAgainAfter = 5_000;
/** While the database takes nothing, no more than so many wait. */
const mostWaiting = 10_000;
const rowsAtOnce = 500;

export const storedLines = (turns: Turns): HeldLines & { written(): Promise<void> } => {
  /** Not yet written. If the program dies meanwhile, their buttons say that they are too old. */
  const waiting = new Map<string, Line>();
  let timer: NodeJS.Timeout | undefined;

  const writeAfter = (milliseconds: number): void => {
    timer ??= setTimeout(() => {
      timer = undefined;
      written().catch(() => writeAfter(triedAgainAfter));
    }, milliseconds).unref();
  };

  /** Writes what is waiting; rejects when it cannot, and then it waits on. */
  const written = async (): Promise<void> => {
    while (waiting.size > 0) {
      const lines = [...waiting].slice(0, rowsAtOnce);
      await writeAll(turns, 'directory', ({ db }) =>
        db
          .insertInto('held_lines')
          .values(lines.map(([id, { studio, line, until }]) => ({ id, studio_id: studio, line, until })))
          // A commit that nobody heard of is done again.
          .onConflict((conflict) => conflict.doNothing())
          .execute(),
      );
      for (const [id] of lines) waiting.delete(id);
    }
  };

  return {
    written,

    hold(studio, line, until) {
      const id = randomBytes(12).toString('base64url');
      waiting.set(id, { studio, line: withoutNul(line), until });
      const [oldest] = waiting.keys();
      if (waiting.size > mostWaiting && oldest !== undefined) waiting.delete(oldest);
      writeAfter(writtenAfter);
      return id;
    },

    async held(id, now) {
      const found = waiting.get(id);
      if (found) return now < found.until ? { studio: found.studio, line: found.line } : undefined;
      return turns.read('directory', ({ db }) =>
        db
          .selectFrom('held_lines')
          .where('id', '=', id)
          .where('until', '>', now)
          .select(['studio_id as studio', 'line'])
          .executeTakeFirst(),
      );
    },
  };
};
