import { readFileSync } from 'node:fs';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it, onTestFinished } from 'vitest';
import { readCode } from '../../helpers/labels/readCode.ts';
import { renderPdf } from '../../helpers/labels/renderPdf.ts';
import { axeFindings, openPage, phoneSize, sticksOut } from '../../helpers/room/browser.ts';
import { gullGrey, phoneOf, sayAsKeeper, testRoom, type TestRoom } from '../../helpers/room/roomServer.ts';
import { withDemo } from '../../helpers/room/withDemo.ts';

let browser: Browser;
let demo: TestRoom;
withDemo((...opened) => ([browser, demo] = opened));

const url = ({ port }: TestRoom, path = '/') => `http://127.0.0.1:${port}${path}`;

const open = async (options: BrowserContextOptions = phoneSize): Promise<Page> => {
  const { page, complaints } = await openPage(browser, options);
  onTestFinished(async () => {
    await page.context().close();
    expect(complaints.filter((one) => !one.includes('net::ERR_'))).toEqual([]);
  });
  return page;
};
const comeIn = async (page: Page, name: string) => {
  await page.getByLabel('Your name').fill(name);
  await page.getByRole('button', { name: 'Come in' }).click();
};
const form = (page: Page) => page.locator('dialog form');
const bucketField = (page: Page) => form(page).locator('[data-option=bucket] input');

describe('the address that a label’s code holds', () => {
  it('leads a phone that is signed in to its bucket, with the reading form open', async () => {
    const page = await open();
    await page.goto(url(demo));
    await comeIn(page, 'Scanner');
    await page.getByText('live', { exact: true }).waitFor();
    await page.goto(url(demo, '/bucket/4'));
    await form(page).waitFor();
    expect(await bucketField(page).inputValue()).toBe('Sandbar');
    expect(await form(page).locator('.of-bucket').textContent()).toMatch(
      /needs water.*4 · Sandbar: Add 600 ml/,
    );
    expect(await axeFindings(page)).toEqual([]);
    expect(await sticksOut(page)).toBe(0);
    await form(page).locator('[data-option=weight] input').fill('231');
    await form(page).getByRole('button', { name: 'yes', exact: true }).click();
    await page.locator('dialog button[type=submit]').click();
    await expect
      .poll(() => page.locator('.tile[data-no]').last().locator('h2').textContent())
      .toMatch(/^Sandbar/);
    // A reload does not open it again.
    await page.reload();
    await page.getByText('live', { exact: true }).waitFor();
    expect(new URL(page.url()).pathname).toBe('/');
    expect(await form(page).count()).toBe(0);
  });

  it('leads one that is not to sign-in, and then on to the bucket', async () => {
    const page = await open();
    await page.goto(url(demo, '/bucket/7'));
    expect(await form(page).count()).toBe(0);
    expect(await page.content()).not.toContain('Fog Bell');
    await comeIn(page, 'Stranger');
    await form(page).waitFor();
    expect(await bucketField(page).inputValue()).toBe('Fog Bell');
  });

  it('does so with passcode and password too, and offers the bucket’s card', async () => {
    const room = await testRoom();
    await sayAsKeeper(room, gullGrey);
    const page = await open();
    await page.goto(url(room, '/bucket/1'));
    await page.getByLabel('passcode', { exact: false }).first().fill(room.passcode);
    await page.getByLabel('Your own password').fill('potters like clay');
    await comeIn(page, 'Wren');
    await form(page).waitFor();
    await page.getByRole('button', { name: 'Its card and chart' }).click();
    await expect.poll(() => page.locator('.tile[data-no]').last().textContent()).toContain('Made for');
    expect(await form(page).count()).toBe(0);
  });

  it('of a bucket that is gone says so, and asks which one it is', async () => {
    const page = await open();
    await page.goto(url(demo, '/bucket/99'));
    await comeIn(page, 'Lost');
    await form(page).waitFor();
    expect(await form(page).locator('[role=alert]').first().textContent()).toMatch(/no bucket 99/);
    expect(await bucketField(page).inputValue()).toBe('');
  });
});

describe('the board on a screen of 1024 × 768', () => {
  const cut = (page: Page) =>
    page.evaluate<string[]>(`
      [...document.querySelectorAll('.bucket')].flatMap((card) => {
        const edge = card.getBoundingClientRect();
        const words = document.createTreeWalker(card.querySelector('.content'), NodeFilter.SHOW_TEXT);
        const found = [];
        while (words.nextNode()) {
          const range = document.createRange();
          range.selectNodeContents(words.currentNode);
          for (const { left, right, top, bottom } of range.getClientRects())
            if (left < edge.left || right > edge.right || top < edge.top || bottom > edge.bottom)
              found.push(words.currentNode.textContent);
        }
        return found;
      })
    `);

  it('cuts nothing: long names and long sentences are there in full', async () => {
    const room = await testRoom({ demo: true });
    for (const name of ['Grandmother’s very old speckled oatmeal white, number two', 'W'.repeat(60)])
      await sayAsKeeper(room, `/bucket add name:"${name}" pail:19l volume:12l gravity:1.40-1.44`);
    await sayAsKeeper(
      room,
      `/bucket hold bucket:gg why:"${'somebody poured the rinse water of the tools in '.repeat(4)}"`,
    );
    const page = await open({ viewport: { width: 1024, height: 768 } });
    await page.goto(url(room, '/board'));
    await expect.poll(() => page.locator('.bucket').count()).toBe(14);
    expect(await cut(page)).toEqual([]);
    expect(await page.locator('.bucket').first().textContent()).toContain("Don't use it and don't change it");
    expect(await page.evaluate('document.documentElement.scrollHeight <= innerHeight')).toBe(true);
    // 9 CSS pixels: the smallest that is still read from arm’s length (common practice).
    expect(
      await page.evaluate<number>(
        `Math.min(...[...document.querySelectorAll('.needs')].map((one) => parseFloat(getComputedStyle(one).fontSize)))`,
      ),
    ).toBeGreaterThanOrEqual(9);
    expect(await axeFindings(page)).toEqual([]);
  });

  it('opens a bucket on a tap, also while it refreshes', async () => {
    const page = await open({ viewport: { width: 1024, height: 768 }, hasTouch: true });
    await page.goto(url(demo));
    await comeIn(page, 'Waller');
    await page.getByText('live', { exact: true }).waitFor();
    await page.goto(url(demo, '/board'));
    const card = page.locator('.bucket', { hasText: 'Kelp Rope' });
    await card.waitFor();
    const place = await card.boundingBox();
    if (!place) throw new Error('no card');
    await page.mouse.move(place.x + place.width / 2, place.y + place.height / 2);
    await page.mouse.down();
    await page.waitForResponse(/api\/board/);
    await page.mouse.up();
    await form(page).waitFor();
    expect(await bucketField(page).inputValue()).toBe('Kelp Rope');
  });
});

describe('the sheet of labels, in the room', () => {
  it('is saved by a keeper, and its codes lead to this room', async () => {
    const room = await testRoom({ url: 'http://192.168.1.20:8017' });
    await sayAsKeeper(room, gullGrey);
    await sayAsKeeper(room, '/bucket add name:Lichen use:brushing');
    const keeper = await phoneOf(room, 'Tove', { code: room.keeperCode });
    const said = await keeper.say('/bucket labels paper:letter');
    const got = await keeper.get(`/api/post/${String(said.json['no'])}/file`);
    expect(got.headers['content-type']).toBe('application/pdf');
    const [page] = await renderPdf(got.text);
    if (!page) throw new Error('no page');
    expect([page.width, page.height]).toEqual([612, 792]);
    const codes = page.texts
      .filter(({ text }) => text.startsWith('Scan it'))
      .map(({ x, y }) => readCode(page, { x: x - 12, y: page.height - y - 128, width: 116, height: 122 }));
    expect(codes).toEqual(['http://192.168.1.20:8017/bucket/1', 'http://192.168.1.20:8017/bucket/2']);
    expect(JSON.stringify(said.json)).toMatch(/may change/);
    // Names that somebody may want forgotten are in it: it is not kept.
    expect(readFileSync(room.file, 'latin1')).not.toContain('%PDF');
  });
});
