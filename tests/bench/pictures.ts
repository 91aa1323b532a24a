import type { Page } from 'playwright-core';
import { openBrowser, openPage, phoneSize } from '../helpers/room/browser.ts';
import { openRoom } from '../helpers/room/roomServer.ts';

/** Takes the README's pictures of the room anew, from the demo studio. */
const folder = 'docs/pictures';
const [browser, demo] = await Promise.all([openBrowser(), openRoom({ demo: true })]);
const room = `http://127.0.0.1:${demo.port}`;
const phone = { ...phoneSize, deviceScaleFactor: 1.5, timezoneId: 'America/St_Johns' };
const wall = { viewport: { width: 1280, height: 720 } };

const picture = async (page: Page, name: string) => {
  // Not in the picture: the line's focus, and a button half pressed.
  await page.evaluate('document.activeElement?.blur()');
  await page.waitForTimeout(500);
  await page.screenshot({ path: `${folder}/${name}.png` });
};

const typeLine = async (page: Page, line: string) => {
  const answers = page.locator('.tile[data-no]');
  const before = await answers.count();
  await page.locator('#line').fill(line);
  await page.locator('#line').press('Enter');
  await answers.nth(before).waitFor();
};

const comeIn = async (page: Page, name: string, keeper = false) => {
  await page.goto(room);
  await page.getByLabel('Your name').fill(name);
  if (keeper) await page.getByText('Try it as a keeper').click();
  await page.getByRole('button', { name: 'Come in' }).click();
  await page.getByText('live', { exact: true }).waitFor();
};

const { page: board } = await openPage(browser, { ...wall, timezoneId: phone.timezoneId });
await board.goto(`${room}/board`);
await board.locator('.bucket').first().waitFor();
await picture(board, 'board');
const { page } = await openPage(browser, phone);
await comeIn(page, 'Wren');
await typeLine(page, '/water-or-stir sandbar');
await picture(page, 'phone');
await page.locator('.job[data-path="reading"]').click();
for (const [option, value] of [
  ['bucket', 'Gull Grey'],
  ['weight', '229.9'],
  ['seconds', '14'],
] as const)
  await page.locator(`dialog [data-option="${option}"] input`).fill(value);
await picture(page, 'form');
await page.keyboard.press('Escape');
await typeLine(page, '/bucket show gull grey');
await page.locator('.picture').last().click();
await page.locator('.pinned img').waitFor();
await picture(page, 'chart');
const { page: keepers } = await openPage(browser, phone);
await comeIn(keepers, 'Kim', true);
await keepers.locator('.rows li').first().waitFor();
await picture(keepers, 'round');
await browser.close();
await demo.close();
