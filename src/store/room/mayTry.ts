import { sql } from 'kysely';
import type { StudioId } from '../../studio/ids.ts';
import type { Tried, TryPace } from '../../studio/logbook/roomPorts.ts';
import type { Turns } from '../engine/turns.ts';

/**
 * Takes one of the tries that are allowed. Stored is when all that were taken will be given back, by the database's
 * clock: so processes count together, however their clocks differ.
 */
export const mayTry = (
  turns: Turns,
  studio: StudioId,
  key: string,
  { atOnce, every }: TryPace,
): Promise<Tried> => {
  const { itsNow } = turns;
  if (itsNow === undefined) throw new Error('One process counts tries by itself.');
  return turns.write<Tried>('directory', async ({ db }) => {
    // Given back, they say nothing any more.
    await db.deleteFrom('tries').where('until', '<', itsNow).execute();
    const { rows } = await sql<{ taken: boolean }>`
      insert into tries as known (studio_id, key, until) values (${studio}, ${key}, ${itsNow} + ${sql.lit(every)})
      on conflict (studio_id, key) do update set until = greatest(known.until, ${itsNow}) + ${sql.lit(every)}
      where known.until - ${itsNow} <= ${sql.lit((atOnce - 1) * every)}
      returning true as taken`.execute(db);
    if (rows.length > 0) return { keep: true, value: { ok: true } };
    const { wait } = await db
      .selectFrom('tries')
      .where(({ and }) => and({ studio_id: studio, key }))
      .select(sql<number>`until - ${itsNow} - ${sql.lit((atOnce - 1) * every)}`.as('wait'))
      .executeTakeFirstOrThrow();
    return { keep: true, value: { ok: false, seconds: Math.max(1, Math.ceil(wait / 1_000)) } };
  });
};
