import type { ExpressionBuilder } from 'kysely';
import type { Seq } from '../../studio/ids.ts';
import type { Tables } from '../migrations/tables.ts';

/** A stream's last entry, in a query of `streams`: its own `seq` is of the time when it was last saved. */
export const lastSeq = ({ selectFrom }: ExpressionBuilder<Tables, 'streams'>) =>
  selectFrom('events')
    .whereRef('events.studio_id', '=', 'streams.studio_id')
    .whereRef('events.stream_no', '=', 'streams.stream_no')
    .select(({ fn }) => fn.max<Seq>('events.seq').as('last'))
    .$asScalar()
    .$notNull();
