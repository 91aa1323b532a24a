import type { Browser } from 'playwright-core';
import { expect, it, onTestFinished } from 'vitest';
import { openPage, phoneSize } from '../../helpers/room/browser.ts';
import {
  gullGrey,
  openRoom,
  phoneOf,
  sayAsKeeper,
  testRoom,
  type TestRoom,
} from '../../helpers/room/roomServer.ts';
import { withBrowser } from '../../helpers/room/withDemo.ts';

let browser: Browser;
withBrowser((opened) => (browser = opened));

const hour = 3_600_000;
const lastEntry = async ({ app, studio }: TestRoom) => {
  const entries = await app.store.books.read(studio, async (book) => {
    const [bucket] = await book.buckets();
    return bucket ? book.entries(bucket.no, { most: 1 }) : [];
  });
  return entries[0];
};

it('plain words in the box become a reading by one press, which nobody presses twice', async () => {
  const demo = await openRoom({ demo: true });
  onTestFinished(() => demo.close());
  const { page, complaints } = await openPage(browser, phoneSize);
  await page.goto(`http://127.0.0.1:${demo.port}/`);
  await page.getByLabel('Your name').fill('Wren');
  await page.getByRole('button', { name: 'Come in' }).click();
  await page.getByText('live', { exact: true }).waitFor();
  const before = await lastEntry(demo);
  await page.getByLabel('Type a reading, a question or a command').fill('gul grey 1,45 13 sec stirred');
  await page.locator('#line').press('Enter');
  const draft = page.locator('.tile.choice').last();
  await draft.getByText('Gull Grey: gravity 1,45, 13 sec, stirred. Log it?').waitFor();
  expect(await draft.getByText('only you see this').count()).toBe(1);
  expect((await lastEntry(demo))?.seq).toBe(before?.seq);
  await draft.getByRole('button', { name: 'Log it' }).click();
  await expect.poll(async () => (await lastEntry(demo))?.seq).toBe((before?.seq ?? 0) + 1);
  expect((await lastEntry(demo))?.event).toMatchObject({ kind: 'reading', gravity: { value: 1.45 } });
  expect(await draft.getByRole('button', { name: 'Log it' }).isDisabled()).toBe(true);
  await page.context().close();
  expect(complaints).toEqual([]);
}, 60_000);

it('plain words that waited on a phone are of when they were typed, however late they are pressed', async () => {
  const open = await testRoom();
  await sayAsKeeper(open, gullGrey);
  const wren = await phoneOf(open, 'Wren');
  const said = await wren.say('gull grey 1.45 13 sec stirred', 'plain-0123456789abcdef01', {
    waited: 2 * hour + 0.5,
  });
  const { reply, no } = said.json as { no: number; reply: { title: unknown; actions: { line: string }[] } };
  expect(JSON.stringify(reply.title)).toMatch(/Log it\?/);
  const line = reply.actions[0]?.line ?? '';
  for (const id of ['press-0123456789abcdef01', 'press-0123456789abcdef02'])
    expect((await wren.post('/api/say', { id, line, pressed: no })).status).toBe(200);
  const entry = await lastEntry(open);
  expect(entry?.seq).toBe(2);
  expect(entry && entry.loggedAt - entry.at).toBeGreaterThanOrEqual(2 * hour);
});
