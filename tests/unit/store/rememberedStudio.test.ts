import Sqlite from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { onPostgres } from '../../helpers/postgres/databases.ts';
import { openTestStore, settableClock } from '../../helpers/store/storeFile.ts';

const now = settableClock().now();

const openStudio = async () => {
  const store = await openTestStore();
  const studio = await store.people.studioOf('discord', '1', 'Elsewhere');
  const wren = await store.people.memberOf(studio, 'discord', '2', 'Wren');
  const makeKeeper = (key: string, keep: boolean) =>
    store.books.writeOnce(studio, key, async (book) => {
      const logged = { at: now, loggedAt: now, by: wren };
      await book.logStudio({ kind: 'keeper', member: wren, keeper: true }, logged);
      return { keep, value: null };
    });
  const keepers = async () => (await store.books.studio(studio)).keepers;
  return { file: store.file, wren, makeKeeper, keepers };
};

describe('a studio’s settings, asked for outside a turn', () => {
  it('are the new ones as soon as a change is acknowledged', async () => {
    const { wren, makeKeeper, keepers } = await openStudio();
    expect(await keepers()).toEqual([]);
    await makeKeeper('one', true);
    expect(await keepers()).toEqual([wren]);
  });

  it('are the old ones when a change is not kept', async () => {
    const { makeKeeper, keepers } = await openStudio();
    await keepers();
    await makeKeeper('one', false);
    expect(await keepers()).toEqual([]);
  });

  it.skipIf(onPostgres)('are read again when another connection has written to the file', async () => {
    const { file, wren, makeKeeper, keepers } = await openStudio();
    await makeKeeper('one', true);
    expect(await keepers()).toEqual([wren]);
    const other = new Sqlite(file);
    other.exec('delete from events');
    other.close();
    expect(await keepers()).toEqual([]);
  });
});
