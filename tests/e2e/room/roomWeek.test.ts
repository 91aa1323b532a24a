import type { Browser, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { answers, enterDemo, phoneAt, typeLine } from '../../helpers/room/demoPhone.ts';
import type { TestRoom } from '../../helpers/room/roomServer.ts';
import { withDemo } from '../../helpers/room/withDemo.ts';

let browser: Browser;
let demo: TestRoom;
withDemo((...opened) => ([browser, demo] = opened));

const enter = async (name: string, role: 'member' | 'keeper' = 'member'): Promise<Page> => {
  const page = await phoneAt(browser, `http://127.0.0.1:${demo.port}/`);
  await enterDemo(page, name, role);
  return page;
};

it('the answer to a press far down the round is in sight, with its undo', async () => {
  const page = await enter('Odile', 'keeper');
  const lichen = page.locator('.rows li', { hasText: 'Lichen' });
  await lichen.getByRole('button', { name: 'I sieved it' }).click();
  const answered = page.locator('.answered', { hasText: 'Lichen' });
  await answered.waitFor();
  expect((await answered.boundingBox())?.y).toBeGreaterThan(0);
  expect((await answered.boundingBox())?.y).toBeLessThan(700);
  await answered.getByRole('button', { name: 'Undo' }).click();
  await lichen.getByRole('button', { name: 'I sieved it' }).waitFor();
});

it('a reading in plain words is told without the moment in figures', async () => {
  const page = await enter('Piper');
  const draft = await typeLine(page, 'gull grey 1.44 14 sec stirred');
  await draft.getByRole('button', { name: 'Log it' }).click();
  const logged = page.locator('.tile.mine:not(.private)');
  await logged.waitFor();
  expect(await logged.locator('.did').textContent()).toBe(
    'Reading, Gull Grey, gravity 1.44, 14 sec, stirred',
  );
});

it('a waxed foot in plain words becomes a coat by one press, and stands there until it is dealt with', async () => {
  const page = await enter('Waxer');
  const draft = await typeLine(page, 'I waxed the foot of two mugs');
  expect(await draft.locator('h2').textContent()).toBe('two mugs: wax emulsion went on. Log it?');
  await draft.getByRole('button', { name: 'Log it' }).click();
  await page.locator('.standing').getByText('1 thing waits for you').click();
  await page.locator('.rows li', { hasText: 'two mugs' }).waitFor();
});

it('a bucket that is picked where nothing else is asked is the question', async () => {
  const page = await enter('Picker');
  await page.locator('.job[data-path="water-or-stir"]').click();
  await page.locator('dialog').getByRole('button', { name: 'Gull Grey' }).click();
  await page.locator('.tile.mine', { hasText: 'Gull Grey' }).waitFor();
  const told = await answers(page).last().locator('.did').textContent();
  expect(told).toBe('Water or stir? Gull Grey');
});

it('without a connection the studio’s name stays whole', async () => {
  const page = await enter('Ferry');
  await page.context().setOffline(true);
  await page.getByText('no connection').waitFor();
  const cut = await page.locator('.top h1').evaluate((name) => name.scrollWidth - name.clientWidth);
  expect(cut).toBe(0);
  expect((await page.locator('.top h1').boundingBox())?.width).toBeGreaterThan(100);
  await page.context().setOffline(false);
  await page.getByText('live', { exact: true }).waitFor();
});

it('a list of reminders ends each by a press, and names none by its key', async () => {
  const page = await enter('Lister');
  await typeLine(page, '/coat on kind:wax pieces:"3 bowls"');
  const list = await typeLine(page, '/remind list');
  expect(await list.locator('.facts').textContent()).not.toContain('-ready');
  await list.getByRole('button', { name: 'Don’t remind me' }).click();
  await page.getByText('Done. I won’t remind you of it again.').waitFor();
});
