import { expect, it } from 'vitest';
import { refoldAtLeisure } from '../../../src/start/whileRunning.ts';
import { checkStates } from '../../../src/store/states/checkStates.ts';
import { streamNo } from '../../../src/studio/ids.ts';
import { gullGrey, loggedAt, water } from '../../helpers/store/storeEvents.ts';
import { sqlIn } from '../../helpers/store/sqlIn.ts';
import { openTestStore } from '../../helpers/store/storeFile.ts';

/** Two studios with two buckets each, their states folded by an earlier release. */
const openUpdated = async () => {
  const store = await openTestStore();
  for (const id of ['1', '2']) {
    const studio = await store.people.studioOf('discord', id, `Studio ${id}`);
    const ana = await store.people.memberOf(studio, 'discord', '11', 'Ana');
    await store.books.writeOnce(studio, 'fill', async (book) => {
      await book.open(gullGrey, loggedAt(ana, 0));
      await book.open({ ...gullGrey, name: 'Tern White' }, loggedAt(ana, 0));
      await book.log(streamNo(2), water(450), loggedAt(ana, 10));
      return { keep: true, value: 'filled' };
    });
  }
  await store.close();
  const { file } = store;
  await sqlIn(file, `update streams set folded_by = 'another', state = '{}' where state is not null`);
  expect(await checkStates(file)).toMatchObject({ outdated: 4, differing: [] });
  return openTestStore({ file });
};

const openLog = () => {
  const logged: object[] = [];
  const note = (about: object) => void logged.push(about);
  return { logged, log: { info: note, warn: note, error: note } };
};

it('after an update, every bucket is worked out again and stored before anybody asks', async () => {
  const store = await openUpdated();
  const { logged, log } = openLog();
  const stop = refoldAtLeisure(store, log, 0);
  await expect.poll(() => logged).toEqual([{ buckets: 4 }]);
  await stop();
  expect(await checkStates(store.file)).toMatchObject({ outdated: 0, differing: [] });
  expect(await store.refoldOutdated(new AbortController().signal)).toBe(0);
});

it('a program that is stopped leaves the other buckets for later', async () => {
  const store = await openUpdated();
  const { logged, log } = openLog();
  await refoldAtLeisure(store, log)();
  expect(logged).toEqual([]);
  expect(await checkStates(store.file)).toMatchObject({ outdated: 4, differing: [] });
});

it('a bucket that is logged to meanwhile keeps the newer entry', async () => {
  const store = await openUpdated();
  const [studio] = await store.people.studios();
  if (!studio) throw new Error('no studio');
  const ana = await store.people.memberOf(studio.id, 'discord', '11', 'Ana');
  const going = store.refoldOutdated(new AbortController().signal);
  await store.books.writeOnce(studio.id, 'more', async (book) => {
    await book.log(streamNo(2), water(100), loggedAt(ana, 20));
    return { keep: true, value: 'more' };
  });
  await going;
  expect(await checkStates(store.file)).toMatchObject({ outdated: 0, differing: [] });
  const entries = await store.books.read(studio.id, (book) => book.entries(streamNo(2), { most: 9 }));
  expect(entries).toHaveLength(3);
});
