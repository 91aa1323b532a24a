import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { expect, onTestFinished } from 'vitest';
import { openPage, phoneSize } from './browser.ts';

/** A phone on a room's page, before anybody has signed in. It is closed after the test; its console must stay empty. */
export const phoneAt = async (
  browser: Browser,
  address: string,
  options: BrowserContextOptions = {},
): Promise<Page> => {
  const { page, complaints } = await openPage(browser, { ...phoneSize, ...options });
  onTestFinished(async () => {
    await page.context().close();
    // The browser itself reports what the server refused.
    expect(complaints.filter((one) => !one.includes('responded with a status of 4'))).toEqual([]);
  });
  await page.goto(address);
  return page;
};

/** Comes in to the demo, which asks for a name alone. */
export const enterDemo = async (
  page: Page,
  name: string,
  role: 'member' | 'keeper' = 'member',
): Promise<void> => {
  await page.getByLabel('Your name').fill(name);
  if (role === 'keeper') await page.getByText('Try it as a keeper').click();
  await page.getByRole('button', { name: 'Come in' }).click();
  await page.getByText('live', { exact: true }).waitFor();
};

export const answers = (page: Page): Locator => page.locator('.tile[data-no]');

/** Types a line and waits for its answer. */
export const typeLine = async (page: Page, line: string): Promise<Locator> => {
  const before = await answers(page).count();
  await page.locator('#line').fill(line);
  await page.locator('#line').press('Enter');
  await expect.poll(() => answers(page).count()).toBe(before + 1);
  return answers(page).last();
};
