import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { expect, it } from 'vitest';
import { roomPageWords } from '../../src/words/platform/roomPageWords.ts';
import { openPage } from '../helpers/room/browser.ts';
import { gullGrey, phoneOf, sayAsKeeper, testRoom } from '../helpers/room/roomServer.ts';
import { withBrowser } from '../helpers/room/withDemo.ts';
import { newDatabase } from '../helpers/postgres/databases.ts';

let browser: Browser;
withBrowser((opened) => (browser = opened));

it('a phone whose lines go to one process, and which hears the other first, shows an export that is shown once, and saves it', async () => {
  const file = await newDatabase('empty_logbook');
  const one = await testRoom({ file });
  const other = await testRoom({ file });
  await sayAsKeeper(other, gullGrey);
  const { page } = await openPage(browser);
  const phone = await phoneOf(other, 'Ilse', { code: other.keeperCode, passcode: '' });
  const cookies = ['room', 'known'].flatMap((name) => {
    const value = phone.cookie(name);
    return value === undefined ? [] : [{ name, value, domain: '127.0.0.1', path: '/' }];
  });
  await page.context().addCookies(cookies);
  await page.goto(`http://127.0.0.1:${other.port}/`);
  await page.getByText('live', { exact: true }).waitFor();
  const origin = `http://127.0.0.1:${one.port}`;
  await page.route('**/api/say', async (route) => {
    const headers = { ...(await route.request().allHeaders()), origin, host: `127.0.0.1:${one.port}` };
    const response = await route.fetch({ url: `${origin}/api/say`, headers });
    await page.getByText('This was shown once and is not kept.').waitFor();
    await route.fulfill({ response });
  });
  await page.getByLabel(roomPageWords.write, { exact: true }).fill('/export');
  await page.keyboard.press('Enter');
  const saving = page.waitForEvent('download');
  await page.getByText(/^Save /).click();
  const saved = await (await saving).path();
  expect(readFileSync(saved, 'utf8')).toContain('Gull Grey');
  expect(await page.getByText('This was shown once and is not kept.').count()).toBe(0);
});
