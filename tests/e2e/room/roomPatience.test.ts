import type { Browser, Page } from 'playwright-core';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openPage } from '../../helpers/room/browser.ts';
import { type TestRoom } from '../../helpers/room/roomServer.ts';
import { withDemo } from '../../helpers/room/withDemo.ts';

let browser: Browser;
let room: TestRoom;
withDemo((...opened) => ([browser, room] = opened));

const enter = async (name: string): Promise<Page> => {
  const { page } = await openPage(browser);
  onTestFinished(() => page.context().close());
  await page.clock.install();
  await page.goto(`http://127.0.0.1:${room.port}/`);
  await page.getByLabel('Your name').fill(name);
  await page.getByRole('button', { name: 'Come in' }).click();
  await page.getByText('live', { exact: true }).waitFor();
  return page;
};

const write = async (page: Page, line: string) => {
  await page.locator('#line').fill(line);
  await page.locator('#line').press('Enter');
};

/** Ten minutes of the page's clock, five seconds at a time, so that every answer is there before the clock moves on. */
const tenMinutes = async (page: Page) => {
  for (let step = 0; step < 120; step += 1) {
    await page.clock.fastForward(5_000);
    await page.waitForTimeout(40);
  }
};

/** The addresses that the page asked for; each is answered so. */
const answering = async (page: Page, paths: string, status: number) => {
  const asked: string[] = [];
  await page.route(paths, (route) => {
    asked.push(new URL(route.request().url()).pathname);
    return route.fulfill({ status, body: 'Service down', contentType: 'text/plain' });
  });
  return asked;
};

describe('a server that goes on failing', () => {
  // 1, 2, 4, 8, 16, 32 s and then each minute: 6 tries in the first minute, one a minute after, a quarter sooner at most.
  const most = 6 + (9 * 4) / 3 + 2;

  it('is sent a line less and less often', async () => {
    const page = await enter('Dunlin');
    const asked = await answering(page, '**/api/say', 503);
    await write(page, '/bucket list');
    await expect.poll(() => asked.length).toBe(1);
    await tenMinutes(page);
    expect(asked.length).toBeGreaterThan(6);
    expect(asked.length).toBeLessThanOrEqual(most);
    await page.unroute('**/api/say');
    await page.clock.fastForward(80_000);
    await page.locator('.tile[data-no] .did', { hasText: 'All buckets' }).waitFor();
  });

  it('is asked for the stream less and less often, and found when it is back', async () => {
    const page = await enter('Godwit');
    const asked = await answering(page, '**/api/stream*', 500);
    await page.context().setOffline(true);
    await page.getByText('no connection').waitFor();
    await page.context().setOffline(false);
    await tenMinutes(page);
    expect(asked.length).toBeGreaterThan(6);
    expect(asked.length).toBeLessThanOrEqual(most);
    await page.unroute('**/api/stream*');
    await page.clock.fastForward(80_000);
    await page.getByText('live', { exact: true }).waitFor();
  });

  it('is not sent every line that is written meanwhile', async () => {
    const page = await enter('Knot');
    const asked = await answering(page, '**/api/say', 500);
    await page.clock.pauseAt(Date.now() + 60_000);
    for (const bucket of [1, 2, 3, 4, 5, 6, 7, 8]) await write(page, `/bucket show bucket:${bucket}`);
    await expect.poll(() => page.locator('.tile.waiting').count()).toBe(8);
    await expect.poll(() => asked.length).toBe(1);
    await page.unroute('**/api/say');
    await page.clock.resume();
    await expect.poll(() => page.locator('.tile.waiting').count()).toBe(0);
  });
});

describe('a button that logs', () => {
  it('pressed again after a reload, or in another tab, logs once', async () => {
    const page = await enter('Turnstone');
    await write(page, '/stirred bucket:g minutes:33.5');
    const choice = page.locator('.tile.choice .actions button').first();
    await choice.waitFor();
    const name = (await choice.textContent()) ?? '';
    const other = await page.context().newPage();
    await other.goto(page.url());
    await other.locator('.tile.choice .actions button').first().waitFor();
    await choice.click();
    const answers = (tab: Page) => tab.locator('.tile.answer .did', { hasText: '33.5 min' });
    await answers(page).waitFor();
    await other.locator('.tile.choice .actions button').first().click();
    await page.reload();
    await page.locator('.tile.choice .actions button').first().click();
    for (const tab of [page, other]) {
      await expect.poll(() => tab.locator('.tile.waiting').count()).toBe(0);
      expect(await answers(tab).count()).toBe(1);
    }
    const buckets = await room.app.store.books.read(room.studio, (book) => book.buckets());
    const bucket = buckets.find(({ settings }) => name.endsWith(` ${settings.name}`));
    if (!bucket) throw new Error(`no bucket ${name}`);
    const entries = await room.app.store.books.read(room.studio, (book) =>
      book.entries(bucket.no, { most: 50 }),
    );
    expect(entries.filter(({ event }) => event.kind === 'stir' && event.minutes === 33.5)).toHaveLength(1);
  });
});
