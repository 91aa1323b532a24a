import Sqlite from 'better-sqlite3';
import fc from 'fast-check';
import { sql } from 'kysely';
import { expect, it } from 'vitest';
import { openDatabase } from '../../src/store/engine/sqlite/database.ts';
import { migrate } from '../../src/store/engine/sqlite/migrate.ts';
import { TransactionQueue } from '../../src/store/engine/sqlite/transactionQueue.ts';
import { migrations } from '../../src/store/migrations/migrations.ts';
import { instant, studioId } from '../../src/studio/ids.ts';
import { standsIn } from '../helpers/store/fileBytes.ts';
import { storeFile } from '../helpers/store/storeFile.ts';

const studio = studioId('a studio');
/** A text of theirs starts with it. */
const word = 'xylophone';

/** Theirs or somebody else's; of any length, so that pages are split, joined and given back, and long texts take pages of their own. */
const text = fc.record({
  theirs: fc.boolean(),
  length: fc.oneof(
    fc.integer({ min: 0, max: 60 }),
    fc.integer({ min: 0, max: 900 }),
    fc.integer({ min: 0, max: 9_000 }),
  ),
});
const step = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({ does: fc.constant('write' as const), key: fc.nat(400), text }),
  },
  { weight: 2, arbitrary: fc.record({ does: fc.constant('delete' as const), key: fc.nat(400) }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('carry over' as const) }) },
);

it('leaves no byte of what was erased, wherever its page was split or given back before, and whoever writes meanwhile', async () => {
  await fc.assert(
    fc.asyncProperty(fc.integer(), async (seed) => {
      const database = openDatabase(storeFile(), migrations.length);
      await migrate(database, migrations);
      database.sqlite.pragma('synchronous = OFF');
      const turns = new TransactionQueue(database);
      const { sqlite, kysely } = database;
      const texts = new Map<number, string>();
      for (const one of fc.sample(step, { seed, numRuns: 600 })) {
        if (one.does === 'carry over') sqlite.pragma('wal_checkpoint(TRUNCATE)');
        else if (one.does === 'delete') {
          texts.delete(one.key);
          await kysely.deleteFrom('kept').where('name', '=', `${one.key}`).execute();
          await kysely.deleteFrom('replies').where('key', 'like', `${one.key} %`).execute();
        } else {
          const value = `${one.text.theirs ? word : 'oboe'}${'.'.repeat(one.text.length)}`;
          texts.set(one.key, value);
          await kysely
            .replaceInto('kept')
            .values({ name: `${one.key}`, value })
            .execute();
          await kysely.deleteFrom('replies').where('key', 'like', `${one.key} %`).execute();
          await kysely
            .insertInto('replies')
            .values({ studio_id: studio, key: `${one.key} ${value.slice(0, 40)}`, value, at: instant(0) })
            .execute();
        }
      }
      await kysely.updateTable('kept').where('value', 'like', `${word}%`).set({ value: '…' }).execute();
      await kysely.deleteFrom('replies').where('value', 'like', `${word}%`).execute();
      let wiped: boolean | undefined;
      const wiping = turns.compact().then((done) => (wiped = done));
      for (let n = 0; wiped === undefined; n += 1)
        await turns.write('directory', async ({ db }) => {
          await db
            .replaceInto('kept')
            .values({ name: `during ${n}`, value: 'oboe'.repeat(n) })
            .execute();
          return { keep: true, value: undefined };
        });
      expect(await wiping).toBe(true);
      expect(standsIn(database.file, word)).toBe(false);

      // What is written afterwards brings none of it back, and everything else is as it was.
      const others = [...texts.values()].filter((value) => !value.startsWith(word));
      const kept = await kysely
        .selectFrom('kept')
        .where('value', '<>', '…')
        .where('name', 'not like', 'during %')
        .select('value')
        .execute();
      expect(kept.map(({ value }) => value).sort()).toEqual(others.sort());
      for (const table of ['kept', 'replies'] as const)
        await kysely
          .updateTable(table)
          .set({ value: sql<string>`replace(value, 'oboe', 'tuba')` })
          .execute();
      sqlite.pragma('wal_checkpoint(TRUNCATE)');
      expect(standsIn(database.file, word)).toBe(false);
      expect(sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
      await turns.close();
      sqlite.close();
    }),
    { numRuns: 10 },
  );
});

it('harms no file that another program has set to vacuum itself', async () => {
  const file = storeFile();
  const foreign = new Sqlite(file);
  foreign.pragma('auto_vacuum = FULL');
  foreign.close();
  const database = openDatabase(file, migrations.length);
  await migrate(database, migrations);
  const { sqlite } = database;
  const turns = new TransactionQueue(database);
  // Such a file has a page of pointers before every 819 others: this makes several.
  sqlite.exec(`with recursive n(i) as (select 1 union all select i + 1 from n where i < 9000)
    insert into replies (studio_id, key, value, at)
    select 's', ((i * 7919) % 9001) || iif(i % 3, ' ${word}', ' oboe'), printf('%.*c', 100 + i % 700, '.'), i from n`);
  sqlite.exec(`delete from replies where key like '%${word}'`);
  expect(await turns.compact()).toBe(true);
  sqlite.pragma('shrink_memory');
  expect(sqlite.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(standsIn(file, word)).toBe(false);
  expect(sqlite.prepare('select count(*) as n from replies').get()).toEqual({ n: 3000 });
  await turns.close();
});
