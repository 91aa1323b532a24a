import type { Kysely } from 'kysely';
import { studioStream, type StudioId } from '../../studio/ids.ts';
import type { StudioEvent } from '../../studio/settings/studio.ts';
import type { Tables } from '../migrations/tables.ts';

/** What a studio says that is planned anew as time goes on. One of thousands that never said it is not looked at. */
const planned: readonly StudioEvent['kind'][] = ['session', 'morning'];

export const studiosToPlan = (db: Kysely<Tables>): Promise<{ id: StudioId }[]> =>
  db
    .selectFrom('studios')
    .where(({ exists, or, selectFrom }) =>
      exists(
        selectFrom('events')
          .whereRef('events.studio_id', '=', 'studios.id')
          .where('events.stream_no', '=', studioStream)
          .where((event) => or(planned.map((kind) => event('events.event', 'like', `%"kind":"${kind}"%`))))
          .select('events.seq'),
      ),
    )
    .select('id')
    .execute();
