import type { Browser, Page } from 'playwright-core';
import { beforeEach, describe, expect, it, onTestFinished } from 'vitest';
import { openPage } from '../../helpers/room/browser.ts';
import { breakLog, type TestRoom } from '../../helpers/room/roomServer.ts';
import { type Duration, days, hours, minutes, since } from '../../../src/studio/ids.ts';
import { withDemo } from '../../helpers/room/withDemo.ts';

let browser: Browser;
let room: TestRoom;
let own = 0;
let line = '';
withDemo((...opened) => ([browser, room] = opened), { mayBreak: true });

const address = () => `http://127.0.0.1:${room.port}/`;
const connected = (page: Page) => page.getByText('live', { exact: true }).waitFor();

/** A phone in the demo with a clock that can be moved; every test uses another member. */
const enter = async (): Promise<Page> => {
  const { page } = await openPage(browser);
  onTestFinished(() => page.context().close());
  await page.clock.install();
  await page.goto(address());
  await page.getByLabel('Your name').fill(`Dunlin ${'abcdefghijkl'.charAt(own)}`);
  await page.getByRole('button', { name: 'Come in' }).click();
  await connected(page);
  return page;
};

const anotherTab = async (page: Page): Promise<Page> => {
  const other = await page.context().newPage();
  await other.goto(address());
  await connected(other);
  return other;
};

const goOffline = async (page: Page) => {
  await page.context().setOffline(true);
  await page.getByText('no connection').waitFor();
};
const goOnline = (page: Page) => page.context().setOffline(false);

const write = async (page: Page, line: string) => {
  await page.locator('#line').fill(line);
  await page.locator('#line').press('Enter');
};
const answered = (page: Page, line: string) =>
  page.locator('.tile[data-no]', { has: page.locator(`.did[title^="${line}"]`) });
const waiting = (page: Page) => page.locator('.tile.waiting');

/** The stirs of bucket 7 that this test logged. */
const stirs = async () => {
  const { books } = room.app.store;
  const bucket = (await books.read(room.studio, (book) => book.buckets()))[6];
  if (!bucket) throw new Error('no bucket 7');
  const entries = await books.read(room.studio, (book) => book.entries(bucket.no, { most: 100 }));
  return entries.filter(({ event }) => event.kind === 'stir' && event.minutes === stirOf());
};
/** A duration that no stir in the demo has. */
const stirOf = () => 20.5 + own;
beforeEach(() => {
  own += 1;
  line = `/stirred bucket:7 minutes:${stirOf()}`;
});

/** How long before logging this test's stir happened. */
const ago = async () => {
  await expect.poll(async () => (await stirs()).length).toBe(1);
  const [entry] = await stirs();
  return entry ? since(entry.at, entry.loggedAt) : NaN;
};

describe('a line written without a connection', () => {
  it('six seconds before it comes back is logged, as of then', async () => {
    const page = await enter();
    await goOffline(page);
    await write(page, line);
    await page.waitForTimeout(6_000);
    await goOnline(page);
    const waited = await ago();
    expect(waited).toBeGreaterThan(6_000);
    expect(waited).toBeLessThan(30_000);
    await expect.poll(() => waiting(page).count()).toBe(0);
    expect(await answered(page, line).count()).toBe(1);
  });

  it.each([
    ['a minute', minutes(1)],
    ['an hour', hours(1)],
    ['all but a day', minutes(23 * 60 + 50)],
  ])('%s before it comes back is logged, as of then', async (_, long: Duration) => {
    const page = await enter();
    await goOffline(page);
    await write(page, line);
    await waiting(page).waitFor();
    await page.clock.fastForward(long);
    await goOnline(page);
    const waited = await ago();
    expect(waited).toBeGreaterThanOrEqual(long);
    expect(waited).toBeLessThan(long + 60_000);
  });

  it('days before is put up again with its age, over a reload too, and logged as of then when confirmed', async () => {
    const page = await enter();
    await goOffline(page);
    await write(page, line);
    await page.clock.fastForward(days(3));
    await goOnline(page);
    const asked = waiting(page).filter({ hasText: '3 days ago' });
    await asked.waitFor();
    await page.reload();
    await asked.waitFor();
    expect(await stirs()).toEqual([]);
    await asked.getByRole('button', { name: 'Log it for that time' }).click();
    expect((await ago()) / days(3)).toBeCloseTo(1, 3);
    await expect.poll(() => waiting(page).count()).toBe(0);
  });

  it('days before is gone when it is dropped, and holds up no other', async () => {
    const page = await enter();
    await goOffline(page);
    await write(page, line);
    await page.clock.fastForward(days(2));
    await write(page, '/help');
    await goOnline(page);
    await answered(page, '/help').waitFor();
    await waiting(page).getByRole('button', { name: 'Drop it' }).click();
    expect(await waiting(page).count()).toBe(0);
    await page.reload();
    await connected(page);
    expect(await waiting(page).count()).toBe(0);
    expect(await stirs()).toEqual([]);
  });
});

describe('a line that a bug kept from being logged', () => {
  it('stays, over a reload too, holds up no other, and is sent again by a press', async () => {
    const page = await enter();
    const mend = breakLog(room);
    onTestFinished(mend);
    await write(page, line);
    const held = waiting(page).filter({ hasText: 'Nothing was saved' });
    await held.waitFor();
    await write(page, '/help');
    await answered(page, '/help').waitFor();
    await page.reload();
    await held.waitFor();
    mend();
    await held.getByRole('button', { name: 'Send again' }).click();
    await answered(page, line).waitFor();
    expect(await waiting(page).count()).toBe(0);
    expect(await stirs()).toHaveLength(1);
  });
});

describe('two tabs of one browser', () => {
  it('lose nothing that either wrote without a connection, and log it once', async () => {
    const page = await enter();
    const other = await anotherTab(page);
    await goOffline(page);
    await write(page, line);
    await write(other, '/bucket show bucket:7');
    await write(page, '/sieved bucket:7 mesh:80');
    await expect.poll(() => waiting(page).count()).toBe(3);
    await expect.poll(() => waiting(other).count()).toBe(3);
    await goOnline(page);
    for (const tab of [page, other]) {
      await expect.poll(() => waiting(tab).count()).toBe(0);
      for (const said of [line, '/bucket show', '/sieved'])
        await expect.poll(() => answered(tab, said).count()).toBe(1);
    }
    expect(await stirs()).toHaveLength(1);
  });

  it('send each other’s lines when one is closed', async () => {
    const page = await enter();
    const other = await anotherTab(page);
    await goOffline(page);
    await write(other, line);
    await waiting(page).waitFor();
    await other.close();
    await goOnline(page);
    await answered(page, line).waitFor();
    expect(await stirs()).toHaveLength(1);
  });

  it('keep what one wrote for its writer when somebody else signs in in the other', async () => {
    const page = await enter();
    const other = await anotherTab(page);
    await goOffline(page);
    await write(page, line);
    await waiting(page).waitFor();
    const name = `Dunlin ${'abcdefghijkl'.charAt(own)}`;
    const request = page.context().request;
    const headers = { origin: address().slice(0, -1) };
    expect(
      (await request.post(`${address()}api/sign-in`, { data: { name: 'Whimbrel' }, headers })).status(),
    ).toBe(200);
    await goOnline(page);
    await page.getByRole('button', { name: 'Whimbrel' }).waitFor();
    await other.close();
    expect(await stirs()).toEqual([]);
    await request.post(`${address()}api/sign-in`, { data: { name }, headers });
    await page.reload();
    await answered(page, line).waitFor();
    expect(await stirs()).toHaveLength(1);
  });

  it('drop a line together', async () => {
    const page = await enter();
    const other = await anotherTab(page);
    await goOffline(page);
    await write(page, line);
    await page.clock.fastForward(days(2));
    await goOnline(page);
    await waiting(other).getByRole('button', { name: 'Drop it' }).click();
    await expect.poll(() => waiting(page).count()).toBe(0);
  });
});
