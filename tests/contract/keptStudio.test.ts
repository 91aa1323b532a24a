import { readFileSync, writeFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { exportJson } from '../../src/replies/export/exportJson.ts';
import { checkStates } from '../../src/store/states/checkStates.ts';
import { instant } from '../../src/studio/ids.ts';
import { openTestStore, storeFile } from '../helpers/store/storeFile.ts';

const kept = (name: string) => gunzipSync(readFileSync(new URL(`../fixtures/${name}.gz`, import.meta.url)));

/** The demo studio as version 0.1.0 first filled it, at 2026-05-20T21:00:00Z. */
const open = async () => {
  const file = storeFile();
  writeFileSync(file, kept('demo-0.1.0.db'));
  return openTestStore({ file });
};

/** What version 0.1.0 exported of it. */
const exported = kept('demo-0.1.0.json').toString('utf8');
const exportedAt = instant(Date.parse(/"exportedAt":"([^"]+)"/.exec(exported)?.[1] ?? ''));

const exportOf = async ({ books, people }: Awaited<ReturnType<typeof open>>) => {
  const [studio] = await people.studios();
  if (!studio) throw new Error('the kept file holds no studio');
  return books.read(studio.id, async (book) => {
    const texts: string[] = [];
    for await (const { text } of exportJson(book, exportedAt, {})) texts.push(text);
    return texts.join('');
  });
};

it('every state in a file of version 0.1.0 follows from its entries', async () => {
  const { file } = await open();
  expect(await checkStates(file)).toMatchObject({ studios: 1, streams: 15, differing: [] });
});

/**
 * What later versions tell from the same entries: a cake and dirt end what was measured before them, and a bucket that was
 * stirred and then read was last stirred when the stir was logged.
 */
const sinceThen = (text: string): unknown => {
  const { studio, buckets, ...rest } = JSON.parse(text);
  const named = (name: string) =>
    buckets.find(({ settings }: { settings: { name: string } }) => settings.name === name);
  const [puffinBlack, capelin, fogBell] = ['Puffin Black', 'Capelin', 'Fog Bell'].map(named);
  const loggedAt = (id: string) =>
    Date.parse(rest.entries.find(({ entry }: { entry: string }) => entry === id).at);
  named('Gull Grey').stir.at = loggedAt('1-50');
  named('Kelp Rope').stir.at = loggedAt('3-51');
  fogBell.stir.at = loggedAt('7-42');
  named('Lichen').stir.at = loggedAt('11-26');
  // The last long stirs: each bucket was read, stirred, later than a stir's five minutes after it.
  named('Whelk White').stir.longAt = loggedAt('2-55');
  fogBell.stir.longAt = loggedAt('7-41');
  puffinBlack.rests.shortest = loggedAt('5-26') - loggedAt('5-24');
  delete puffinBlack.efflux;
  // Seen at rest after the cake, and kept without being believed: entry 5-27.
  puffinBlack.restedFlow.flow = { cup: 'hall cup', kind: 'ford4', seconds: 9.2 };
  // Found by entries 5-28 and 6-39.
  puffinBlack.voided = { by: 'cake', at: Date.parse('2026-05-20T19:25:00Z') };
  capelin.voided = { by: 'contaminated', at: Date.parse('2026-05-15T12:35:00Z') };
  return { ...rest, studio: { ...studio, materials: [] }, buckets };
};

it('what was logged is exported from a file of version 0.1.0 as that version exported it, byte for byte', async () => {
  const entries = (text: string) => text.slice(text.indexOf('"entries":['));
  expect(entries(await exportOf(await open()))).toBe(entries(exported));
});

it('the rest of its export says the same, but for what later versions tell from the entries', async () => {
  expect(JSON.parse(await exportOf(await open()))).toEqual(sinceThen(exported));
});

it('rebuilding its states changes neither them nor the export', async () => {
  const store = await open();
  await store.rebuildStates();
  expect(await checkStates(store.file)).toEqual({ studios: 1, streams: 15, outdated: 0, differing: [] });
  expect(JSON.parse(await exportOf(store))).toEqual(sinceThen(exported));
});
