import type { Browser, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings } from '../../helpers/room/browser.ts';
import { answers, phoneAt, typeLine } from '../../helpers/room/demoPhone.ts';
import { phoneOf, testRoom, type TestRoom } from '../../helpers/room/roomServer.ts';
import { withBrowser } from '../../helpers/room/withDemo.ts';

let browser: Browser;
withBrowser((opened) => (browser = opened));

/** A new studio whose room phones may reach, and its first keeper's phone. */
const newStudio = async (options: Parameters<typeof phoneAt>[2] = {}) => {
  const open = await testRoom({ url: 'http://glaze.wrackline.example' });
  const page = await phoneAt(browser, `${at(open)}#keeper=${open.keeperCode}`, options);
  await comeIn(page, 'Odile', 'first keeper here');
  return { open, page };
};

const at = ({ port }: TestRoom) => `http://127.0.0.1:${port}/`;

const comeIn = async (page: Page, name: string, password: string) => {
  await page.getByLabel('Your name').fill(name);
  await page.getByLabel('Your own password').fill(password);
  await page.getByRole('button', { name: 'Come in' }).click();
  await page.getByText('live', { exact: true }).waitFor();
};

const step = async (page: Page, name: string) => {
  await page.getByRole('region', { name: 'First steps' }).getByRole('button', { name }).click();
};
const fill = (page: Page, typed: Record<string, string>) =>
  Object.entries(typed).reduce<Promise<void>>(
    (before, [option, value]) =>
      before.then(() => page.locator(`dialog [data-option="${option}"] input`).fill(value)),
    Promise.resolve(),
  );
const log = async (page: Page) => {
  const before = await answers(page).count();
  await page.locator('dialog button[type=submit]').click();
  await expect.poll(() => answers(page).count()).toBe(before + 1);
  return answers(page).last();
};

/** The steps as they stand: what is done with its tick, what is not as a button. */
const stepsOf = (page: Page) =>
  page
    .locator('.steps li')
    .evaluateAll((all) =>
      all.map(
        (one) =>
          `${one.querySelector('.done') ? '✓' : '·'} ${one.querySelector('button, .done')?.firstChild?.textContent ?? ''}`,
      ),
    );
const all = ['Name and time zone', 'Calibrate a cup', 'Set a bucket up', 'Let a phone in'];
const standing = (done: number) => all.map((name, i) => `${i < done ? '✓' : '·'} ${name}`);

describe.each(['light', 'dark'] as const)('a new studio, set up on a phone, %s', (colorScheme) => {
  it('is led through its first steps until each is done', async () => {
    const { open, page } = await newStudio({ timezoneId: 'Europe/Lisbon', colorScheme });
    const wren = await phoneAt(browser, at(open), { timezoneId: 'Europe/Lisbon', colorScheme });
    await wren.getByLabel('the studio’s passcode').fill(open.passcode);
    expect(await stepsOf(page)).toEqual(standing(0));
    expect(await axeFindings(page)).toEqual([]);

    await step(page, 'Name and time zone');
    const zone = page.locator('dialog [data-option=zone] input');
    expect(await zone.inputValue()).toBe('Europe/Lisbon');
    await zone.fill('Atlantis');
    await log(page);
    // What was refused leaves the steps as they were.
    expect(await stepsOf(page)).toEqual(standing(0));
    await page.getByRole('button', { name: 'Correct it' }).click();
    await fill(page, { zone: 'Lisbon', name: 'Dune Lane Clay' });
    expect(await (await log(page)).locator('h2').textContent()).toContain('Europe/Lisbon');
    await expect.poll(() => stepsOf(page)).toEqual(standing(1));
    await expect.poll(() => page.locator('h1').textContent()).toBe('Dune Lane Clay');
    expect(await page.title()).toBe('Dune Lane Clay');
    expect(await page.locator('.zone').isVisible()).toBe(false);

    await step(page, 'Calibrate a cup');
    await fill(page, { name: 'steel cup', tare: '85.4', water: '185.6' });
    const wrong = await log(page);
    // 85.4 + 185.6, by hand: the water was weighed with the cup.
    expect(await wrong.locator('.facts').textContent()).toContain('your scale should show 271 g');
    await expect.poll(() => stepsOf(page)).toEqual(standing(2));
    await wrong.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => stepsOf(page)).toEqual(standing(1));
    await step(page, 'Calibrate a cup');
    await fill(page, { name: 'steel cup', tare: '85.4', water: '100.2' });
    expect(await (await log(page)).locator('.facts').textContent()).toContain('should show 185.6 g');

    await step(page, 'Set a bucket up');
    await fill(page, { name: 'Gull Grey', pail: '19', volume: '15', gravity: '1.42-1.46', seconds: '12-16' });
    await log(page);
    await expect.poll(() => stepsOf(page)).toEqual(standing(3));
    expect(await axeFindings(page)).toEqual([]);

    await step(page, 'Let a phone in');
    await page.getByRole('img', { name: 'A code to scan' }).waitFor();
    await page.getByRole('button', { name: 'Close' }).click();
    await wren.getByLabel('Your name').fill('Wren');
    await wren.getByLabel('Your own password').fill('oyster catcher');
    await wren.getByRole('button', { name: 'Come in' }).click();
    await wren.getByText('live', { exact: true }).waitFor();
    // Nobody reloads: the page hears of the guest.
    await page.locator('.steps').waitFor({ state: 'hidden', timeout: 10_000 });
    expect(await wren.locator('.steps').isVisible()).toBe(false);
  }, 90_000);
});

describe('the studio’s name', () => {
  it('shows at once on every phone when a keeper sets it', async () => {
    const { open, page } = await newStudio();
    const wren = await phoneAt(browser, at(open));
    await wren.getByLabel('the studio’s passcode').fill(open.passcode);
    await comeIn(wren, 'Wren', 'oyster catcher');
    await typeLine(page, '/studio set name:"Dune Lane Clay"');
    for (const one of [page, wren])
      await expect.poll(() => one.locator('h1').textContent()).toBe('Dune Lane Clay');
  });
});

describe('a member in a studio without a bucket', () => {
  it('is told who sets one up, and is offered no step of a keeper’s', async () => {
    const open = await testRoom();
    const page = await phoneAt(browser, at(open));
    await page.getByLabel('the studio’s passcode').fill(open.passcode);
    await comeIn(page, 'Wren', 'oyster catcher');
    await page.getByText('No bucket is set up here yet. A keeper does that first').waitFor();
    expect(await page.locator('.steps').isVisible()).toBe(false);
    expect((await (await phoneOf(open, 'Tern')).get('/api/studio')).json).not.toHaveProperty('steps');
  });
});

describe('an invitation', () => {
  it('is one of the keeper’s jobs', async () => {
    const { page } = await newStudio();
    await page.getByRole('button', { name: 'All jobs' }).click();
    await page.getByRole('button', { name: 'For keepers' }).click();
    await page.locator('.all-jobs').getByRole('button', { name: 'Let a phone in' }).click();
    await page.getByRole('img', { name: 'A code to scan' }).waitFor();
  });

  it('that was used says so before anything is typed, and leads on by password or passcode', async () => {
    const { open } = await newStudio();
    const address = await open.room.invitation('join');
    const code = address.slice(address.indexOf('#'));
    const first = await phoneAt(browser, at(open) + code);
    await first.getByText('Your code lets you in').waitFor();
    await comeIn(first, 'Wren', 'oyster catcher');
    const second = await phoneAt(browser, at(open) + code);
    await second.getByText('This invitation was used').waitFor();
    await comeIn(second, 'Wren', 'oyster catcher');
    const third = await phoneAt(browser, at(open) + code);
    await third.getByText('This invitation was used').waitFor();
    await third.getByLabel('the studio’s passcode').fill(open.passcode);
    await comeIn(third, 'Tern', 'dunlin on the shore');
  });

  it('that is used while somebody types keeps what they typed', async () => {
    const { open } = await newStudio();
    const address = await open.room.invitation('join');
    const code = address.slice(address.indexOf('#'));
    const slow = await phoneAt(browser, at(open) + code);
    await slow.getByLabel('Your name').fill('Tern');
    await slow.getByLabel('Your own password').fill('dunlin on the shore');
    const quick = await phoneAt(browser, at(open) + code);
    await comeIn(quick, 'Wren', 'oyster catcher');
    await slow.getByRole('button', { name: 'Come in' }).click();
    await slow.getByText('This invitation was used').waitFor();
    expect(await slow.getByLabel('Your name').inputValue()).toBe('Tern');
    await slow.getByLabel('the studio’s passcode').waitFor();
  });

  it('is left in no address, also on a phone that is signed in', async () => {
    const { open, page } = await newStudio();
    const address = await open.room.invitation('join');
    await page.goto(at(open) + address.slice(address.indexOf('#')));
    await page.reload();
    await page.getByText('live', { exact: true }).waitFor();
    expect(page.url()).not.toContain('join=');
  });
});
