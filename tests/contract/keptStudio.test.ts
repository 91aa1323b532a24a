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

it('the export of a file of version 0.1.0 is the one that version 0.1.0 made, byte for byte', async () => {
  expect(await exportOf(await open())).toBe(exported);
});

it('working its states out anew changes none of them, nor what the export says', async () => {
  const store = await open();
  await store.rebuildStates();
  expect(await checkStates(store.file)).toEqual({ studios: 1, streams: 15, outdated: 0, differing: [] });
  // An entry that was read back names its parts in another order than one that was just made.
  expect(JSON.parse(await exportOf(store))).toEqual(JSON.parse(exported));
});
