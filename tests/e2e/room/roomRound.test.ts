import type { Browser, Page } from 'playwright-core';
import { describe, expect, it, onTestFinished } from 'vitest';
import { axeFindings, openPage, phoneSize, sticksOut } from '../../helpers/room/browser.ts';
import { type TestRoom } from '../../helpers/room/roomServer.ts';
import { withDemo } from '../../helpers/room/withDemo.ts';

let browser: Browser;
let demo: TestRoom;
withDemo((...opened) => ([browser, demo] = opened));

const enter = async (name: string, keeper: boolean): Promise<Page> => {
  const { page, complaints } = await openPage(browser, phoneSize);
  onTestFinished(async () => {
    await page.context().close();
    expect(complaints).toEqual([]);
  });
  await page.goto(`http://127.0.0.1:${demo.port}/`);
  await page.getByLabel('Your name').fill(name);
  if (keeper) await page.getByText('Try it as a keeper').click();
  await page.getByRole('button', { name: 'Come in' }).click();
  await page.getByText('live', { exact: true }).waitFor();
  return page;
};

const rows = (page: Page) => page.locator('.rows li');
const row = (page: Page, name: string) => page.locator('.rows li', { hasText: name });

describe('a keeper’s first page', () => {
  it('is the round, on a phone, for everybody who reads it', async () => {
    const page = await enter('Walker', true);
    await rows(page).first().waitFor();
    expect(await page.locator('.round h2').textContent()).toMatch(/^\d+ things to do\. First: /);
    expect(await page.locator('.stream').isVisible()).toBe(false);
    expect(await rows(page).count()).toBeGreaterThan(8);
    expect(await sticksOut(page)).toBe(0);
    expect(await axeFindings(page)).toEqual([]);
    for (const button of await page.locator('.rows button').all())
      expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(44);
  });

  it('takes what was done off the list, and says what comes next', async () => {
    const page = await enter('Siever', true);
    await row(page, 'Lichen').waitFor();
    await row(page, 'Lichen').getByRole('button', { name: 'I sieved it' }).click();
    await page.locator('.answered', { hasText: 'Lichen' }).waitFor();
    await expect.poll(() => row(page, 'Lichen').textContent()).not.toContain('Sieve it first');
    expect(await page.locator('.round').isVisible()).toBe(true);
  });

  it('opens a form where something has to be typed, and shows its answer in the room', async () => {
    const page = await enter('Reader', true);
    await row(page, 'Dory Blue').getByRole('button', { name: 'Log a reading' }).click();
    expect(await page.locator('dialog [data-option=bucket] input').inputValue()).toBe('Dory Blue');
    await page.locator('dialog [data-option=weight] input').fill('244');
    await page.locator('dialog button[type=submit]').click();
    await page.locator('.tile.mine', { hasText: 'Dory Blue' }).last().waitFor();
    expect(await page.locator('.round').isVisible()).toBe(false);
    await page.getByRole('button', { name: /^Round/ }).click();
    expect(await page.locator('.stream').isVisible()).toBe(false);
  });

  it('has the log of all buckets behind it, a page at a time', async () => {
    const page = await enter('Logger', true);
    await rows(page).first().waitFor();
    await page.getByRole('button', { name: 'Log of all buckets' }).click();
    const log = page.locator('.tile.mine', { hasText: 'All buckets: the last' });
    await log.waitFor();
    await log.getByRole('button', { name: 'Older' }).click();
    await expect.poll(() => log.count()).toBe(2);
    const texts = await log.allTextContents();
    expect(texts[0]).not.toBe(texts[1]);
  });

  it('stands in the room too when it is asked for there, with the same presses', async () => {
    const page = await enter('Asker', true);
    await rows(page).first().waitFor();
    await page.locator('#line').fill('/round');
    await page.locator('#line').press('Enter');
    const tile = page.locator('.tile.mine', { hasText: 'things to do' });
    await tile.getByRole('button', { name: 'I poured 600 ml' }).waitFor();
    expect(await axeFindings(page)).toEqual([]);
  });

  it('changes when somebody else does something about it', async () => {
    const page = await enter('Watcher', true);
    await row(page, 'Sandbar').waitFor();
    const other = await enter('Doer', false);
    await other.locator('#line').fill('/added bucket:sandbar what:water amount:630ml');
    await other.locator('#line').press('Enter');
    await expect
      .poll(() => row(page, 'Sandbar').textContent(), { timeout: 8_000 })
      .not.toContain('Add 600 ml');
  });
});

describe('a member', () => {
  it('has nothing above the posts until something waits, and then until it is dealt with', async () => {
    const page = await enter('Waxer', false);
    const standing = page.locator('.standing');
    expect(await standing.isVisible()).toBe(false);
    await page.locator('#line').fill('/coat on kind:tape pieces:"3 bowls"');
    await page.locator('#line').press('Enter');
    await standing.getByText('1 thing waits for you').click();
    expect(await row(page, '3 bowls').textContent()).toContain('tape: ready');
    expect(await axeFindings(page)).toEqual([]);
    await row(page, '3 bowls').getByRole('button', { name: 'I peeled it' }).click();
    await standing.waitFor({ state: 'hidden' });
  });

  it('is told in ten minutes after a dose, by a press, and sees it stand there', async () => {
    const page = await enter('Doser', false);
    await page.locator('#line').fill('/added bucket:"tansy field" what:flocculant amount:3.7ml');
    await page.locator('#line').press('Enter');
    await page.getByRole('button', { name: 'Tell me in 10 minutes' }).click();
    const told = page.locator('.tile.mine', { hasText: 'I’ll tell you here at' });
    await told.waitFor();
  });

  it('opens a list filled, not as an empty form', async () => {
    const page = await enter('Lister', false);
    await page.getByRole('button', { name: 'All jobs' }).click();
    await page.locator('.all-jobs [data-path="bucket list"]').click();
    await page.locator('.tile.mine', { hasText: 'ready to use' }).waitFor();
    expect(await page.locator('dialog').count()).toBe(0);
  });
});
