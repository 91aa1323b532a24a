import { readFileSync, symlinkSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { seq, streamNo } from '../../../src/studio/ids.ts';
import { checkStates } from '../../../src/store/states/checkStates.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { openTestStore, settableClock, storeFile } from '../../helpers/store/storeFile.ts';
import { startWriter } from '../../helpers/store/storeProcess.ts';

const clock = settableClock();
const locked = expect.objectContaining({ name: 'StoreProblem', kind: 'locked' });

describe('a file with an owner', () => {
  it('is refused to a second one, by whatever name, and stays as it was', async () => {
    const { file } = await openTestStore();
    symlinkSync(file, `${file}.alias`);
    const before = readFileSync(file);
    await expect(openStore(file, { clock, waitMs: 0 })).rejects.toEqual(locked);
    await expect(openStore(`${file}.alias`, { clock, waitMs: 50 })).rejects.toEqual(locked);
    expect(readFileSync(file)).toEqual(before);
  });

  it('goes to the next as soon as the owner has closed it', async () => {
    const first = await openTestStore();
    const next = openStore(first.file, { clock });
    await first.close();
    await expect((await next).close()).resolves.toBeUndefined();
  });

  it('is refused while another process owns it, and taken over at once when that is killed', async () => {
    const file = storeFile();
    const holder = startWriter(file, 'hold');
    await holder.line((line) => line === 'open');
    await expect(openStore(file, { clock, waitMs: 100 })).rejects.toEqual(locked);
    await holder.kill();
    await (await openStore(file, { clock, waitMs: 0 })).close();
  });

  it('serves several short processes that come at the same time', async () => {
    const file = storeFile();
    const writers = [1, 2, 3, 4].map(() => startWriter(file, 'once'));
    expect(await Promise.all(writers.map(({ ended }) => ended))).toEqual([0, 0, 0, 0]);
    const store = await openTestStore({ file });
    const studio = await store.people.studioOf('terminal', 'here', '');
    const entries = await store.books.read(studio, (book) => book.entries(streamNo(1), { most: 9 }));
    expect(entries.map(({ id }) => id)).toEqual(['1-5', '1-4', '1-3', '1-2', '1-1']);
  });
});

describe('a process killed while it writes', () => {
  it('has lost no entry that it had acknowledged, and has doubled none', async () => {
    const file = storeFile();
    const acknowledged: [key: string, entry: string][] = [];
    for (const entries of [1, 5, 20, 60, 150, 300, 500, 800]) {
      const writer = startWriter(file, 'log');
      await writer.line(() => writer.lines.length > entries);
      await writer.kill();
      for (const line of writer.lines.slice(1)) {
        const [key = '', entry = ''] = line.split(' ');
        acknowledged.push([key, entry]);
      }
    }
    expect(new Set(acknowledged.map(([, entry]) => entry)).size).toBe(acknowledged.length);

    const store = await openTestStore({ file });
    const studio = await store.people.studioOf('terminal', 'here', '');
    const entries = await store.books.read(studio, (book) => book.entries(streamNo(1), { most: 1e6 }));
    expect(entries.map((entry) => entry.seq)).toEqual(entries.map((_, i) => seq(entries.length - i)));
    const ids = new Set<string>(entries.map(({ id }) => id));
    for (const [key, entry] of acknowledged) {
      expect(ids).toContain(entry);
      const again = await store.books.writeOnce(studio, key, () => Promise.reject(new Error('it ran again')));
      expect(again).toBe(entry);
    }
    expect(await checkStates(file)).toMatchObject({ studios: 1, streams: 1, outdated: 0, differing: [] });
  });
});
