import { randomBytes } from 'node:crypto';
import type { Instant, StudioId } from '../../studio/ids.ts';
import type { HeldLines } from '../../studio/logbook/ports.ts';
import type { Turns } from '../engine/turns.ts';
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

export class StoredLines implements HeldLines {
  readonly #turns: Turns;
  /** Not yet written. If the program dies meanwhile, their buttons say that they are too old. */
  readonly #waiting = new Map<string, Line>();
  #timer: NodeJS.Timeout | undefined;

  constructor(turns: Turns) {
    this.#turns = turns;
  }

  hold(studio: StudioId, line: string, until: Instant): string {
    const id = randomBytes(12).toString('base64url');
    this.#waiting.set(id, { studio, line: withoutNul(line), until });
    const [oldest] = this.#waiting.keys();
    if (this.#waiting.size > mostWaiting && oldest !== undefined) this.#waiting.delete(oldest);
    this.#writeAfter(writtenAfter);
    return id;
  }

  async held(id: string, now: Instant): Promise<{ studio: StudioId; line: string } | undefined> {
    const waiting = this.#waiting.get(id);
    if (waiting) return now < waiting.until ? { studio: waiting.studio, line: waiting.line } : undefined;
    return this.#turns.read('directory', async ({ db }) => {
      const row = await db
        .selectFrom('held_lines')
        .where('id', '=', id)
        .where('until', '>', now)
        .select(['studio_id', 'line'])
        .executeTakeFirst();
      return row && { studio: row.studio_id, line: row.line };
    });
  }

  /** Writes what is waiting; rejects when it cannot, and then it waits on. */
  async written(): Promise<void> {
    while (this.#waiting.size > 0) {
      const lines = [...this.#waiting].slice(0, rowsAtOnce);
      await this.#turns.write('directory', async ({ db }) => {
        await db
          .insertInto('held_lines')
          .values(lines.map(([id, { studio, line, until }]) => ({ id, studio_id: studio, line, until })))
          // A commit that nobody heard of is done again.
          .onConflict((conflict) => conflict.doNothing())
          .execute();
        return { keep: true, value: undefined };
      });
      for (const [id] of lines) this.#waiting.delete(id);
    }
  }

  #writeAfter(milliseconds: number): void {
    if (this.#timer) return;
    this.#timer = setTimeout(() => {
      this.#timer = undefined;
      this.written().catch(() => this.#writeAfter(triedAgainAfter));
    }, milliseconds).unref();
  }
}
