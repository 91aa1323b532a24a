import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { openDemo } from '../../../src/start/openDemo.ts';
import { loadSeed } from '../../../src/seed/loadSeed.ts';
import { checkStates } from '../../../src/store/states/checkStates.ts';
import { decide } from '../../../src/studio/verdict/decide.ts';
import { instant, studioStream, type Instant } from '../../../src/studio/ids.ts';
import { wallOf } from '../../../src/studio/time/wallTime.ts';

const folders: string[] = [];
afterEach(() => folders.splice(0).forEach((folder) => rmSync(folder, { recursive: true })));
const newFolder = () => {
  const folder = mkdtempSync(join(tmpdir(), 'demo-'));
  folders.push(folder);
  return folder;
};

const open = (file: string, now: Instant) =>
  openDemo({
    file,
    clock: { now: () => now },
    onBug: (error) => {
      throw error;
    },
  });

const starts = {
  'on a summer evening': '2026-07-04T22:15:00Z',
  'ten past midnight': '2026-02-11T03:40:00Z',
  'the noon after clocks went forward': '2026-03-08T14:30:00Z',
  'the noon after clocks went back': '2026-11-01T15:30:00Z',
};

describe('the demo studio', () => {
  it.each(Object.entries(starts))(
    'first started %s, has twelve buckets in different conditions',
    async (_, at) => {
      const now = instant(Date.parse(at));
      const { store } = await open(join(newFolder(), 'demo.db'), now);
      const [studio] = await store.people.studios();
      if (!studio) throw new Error('no studio');
      const steps = await store.books.read(studio.id, async (book) =>
        (await book.buckets()).map((state) => [
          state.settings.name,
          decide(state, { now, role: 'keeper' }).rule,
          decide(state, { now, role: 'keeper' }).step,
        ]),
      );
      await store.close();
      expect(steps).toEqual([
        ['Gull Grey', 'grid', 'use'],
        ['Whelk White', 'grid', 'deflocculate'],
        ['Kelp Rope', 'grid', 'draw-off-water'],
        ['Sandbar', 'grid', 'add-water'],
        ['Puffin Black', 'cake', 'stir'],
        ['Capelin', 'on-hold', 'on-hold'],
        ['Fog Bell', 'grid', 'stir-on'],
        ['Dory Blue', 'stale', 'measure'],
        ['Gull Wing', 'rested', 'stir'],
        ['Tansy Field', 'grid', 'flocculate'],
        ['Lichen', 'unsieved', 'sieve'],
        ['Bog Iron', 'never-stirred', 'stir'],
      ]);
    },
  );

  it('spans three months that end at the first start, and is never in the future', async () => {
    const now = instant(Date.parse('2026-05-20T21:00:00Z'));
    const { store } = await open(join(newFolder(), 'demo.db'), now);
    const [studio] = await store.people.studios();
    if (!studio) throw new Error('no studio');
    const entries = await store.books.read(studio.id, async (book) => {
      const streams = [studioStream, ...(await book.buckets()).map(({ no }) => no)];
      return (await Promise.all(streams.map((stream) => book.entries(stream, { most: 1000 })))).flat();
    });
    const members = await store.books.read(studio.id, (book) => book.members());
    const zone = await store.books.read(studio.id, async (book) => (await book.studio()).zone);
    await store.close();
    const first = Math.min(...entries.map(({ at }) => at));
    expect((now - first) / 86_400_000).toBeGreaterThan(88);
    expect(Math.max(...entries.map(({ loggedAt }) => loggedAt))).toBeLessThanOrEqual(now);
    expect(members).toHaveLength(10);
    expect(zone).toBe(loadSeed().zone);
    expect(new Set(entries.map(({ by }) => by)).size).toBe(10);
    const hours = entries.map(({ at }) => wallOf(at, zone).hour);
    expect(Math.min(...hours)).toBeGreaterThanOrEqual(8);
    expect(Math.max(...hours)).toBeLessThanOrEqual(21);
  });

  it('replays to the states that it cached', async () => {
    const file = join(newFolder(), 'demo.db');
    const { store } = await open(file, instant(Date.parse('2026-05-20T21:00:00Z')));
    await store.close();
    expect(await checkStates(file)).toMatchObject({ studios: 1, differing: [] });
  });

  it('is the same studio on the next start, filled once', async () => {
    const folder = newFolder();
    const file = join(folder, 'demo.db');
    const count = async (at: string) => {
      const { store } = await open(file, instant(Date.parse(at)));
      const studios = await store.people.studios();
      const [studio] = studios;
      const entries = studio && (await store.books.read(studio.id, (book) => book.buckets()));
      await store.close();
      return { studios, entries };
    };
    const first = await count('2026-05-20T21:00:00Z');
    expect(await count('2026-05-22T09:00:00Z')).toEqual(first);
    expect(readdirSync(folder).filter((name) => name.includes('.new'))).toEqual([]);
  });

  it('is never poured into a file that is there already', async () => {
    const file = join(newFolder(), 'mine.db');
    writeFileSync(file, '');
    const { store } = await open(file, instant(Date.parse('2026-05-20T21:00:00Z')));
    expect(await store.people.studios()).toEqual([]);
    await store.close();
  });
});
