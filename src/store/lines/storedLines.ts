import { randomBytes } from 'node:crypto';
import type { Instant, StudioId } from '../../studio/ids.ts';
import type { HeldLines } from '../../studio/logbook/ports.ts';
import type { Turns } from '../engine/turns.ts';
import { withoutNul } from '../engine/withoutNul.ts';

export class StoredLines implements HeldLines {
  readonly #turns: Turns;

  constructor(turns: Turns) {
    this.#turns = turns;
  }

  hold(studio: StudioId, line: string, until: Instant): Promise<string> {
    return this.#turns.write('directory', async ({ db }) => {
      const id = randomBytes(12).toString('base64url');
      await db
        .insertInto('held_lines')
        .values({ id, studio_id: studio, line: withoutNul(line), until })
        .execute();
      return { keep: true, value: id };
    });
  }

  held(id: string, now: Instant): Promise<{ studio: StudioId; line: string } | undefined> {
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
}
