import type { Browser, Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axeFindings } from '../../helpers/room/browser.ts';
import { answers, enterDemo, phoneAt, typeLine } from '../../helpers/room/demoPhone.ts';
import { type TestRoom } from '../../helpers/room/roomServer.ts';
import { withDemo } from '../../helpers/room/withDemo.ts';

let browser: Browser;
let demo: TestRoom;
withDemo((...opened) => ([browser, demo] = opened));

const phone = async (
  name: string,
  role: 'member' | 'keeper' = 'member',
  viewport = { width: 390, height: 844 },
) => {
  const page = await phoneAt(browser, `http://127.0.0.1:${demo.port}/`, { viewport });
  await enterDemo(page, name, role);
  return page;
};

/** Whether a press at its middle reaches it: it is on the screen, and nothing lies over it. */
const isReached = async (press: Locator): Promise<boolean> => {
  const box = await press.boundingBox();
  if (!box) return false;
  return press.evaluate(
    (node, [x, y]) => {
      const hit = node.ownerDocument.elementFromPoint(x, y);
      return hit !== null && node.contains(hit);
    },
    [box.x + box.width / 2, box.y + box.height / 2] as const,
  );
};

describe.each([
  { width: 360, height: 640 },
  { width: 390, height: 844 },
])('an answer on a phone of $width × $height', (viewport) => {
  it('has its numbers on the small scale, each on one line with its window', async () => {
    const page = await phone(`Looker ${viewport.width}`, 'member', viewport);
    const tile = await typeLine(page, '/reading bucket:"gull grey" weight:229.9g seconds:14 stirred:yes');
    const facts = await tile.locator('.on-scale').allInnerTexts();
    expect(facts.map((one) => one.replaceAll(/\s+/g, ' '))).toEqual([
      // The second phone's reading repeats the first's, so that weighings here are known to repeat well.
      expect.stringMatching(/^Gravity 1\.44 ± 0\.0[12] window 1\.42 to 1\.46$/),
      'Flow 14 s, right window 12 to 16 s',
    ]);
    expect(await tile.locator('.on-scale .scale .mark').count()).toBe(2);
    for (const value of await tile.locator('.on-scale .value').all())
      expect((await value.boundingBox())?.height).toBeLessThan(30);
  });

  it('leaves four fifths of the screen to what is read, and its first press in sight', async () => {
    const page = await phone(`Presser ${viewport.width}`, 'member', viewport);
    const bench = await page.locator('.bench').boundingBox();
    expect(bench?.height).toBeLessThanOrEqual(viewport.height / 5);
    for (const bucket of ['sandbar', 'puffin black', 'fog bell', 'dory blue', 'gull wing', 'tansy field']) {
      const tile = await typeLine(page, `/water-or-stir ${bucket}`);
      const press = tile.locator('.actions button').first();
      await expect.poll(() => isReached(press), { message: bucket }).toBe(true);
      await expect.poll(() => isReached(tile.locator('h2')), { message: bucket }).toBe(true);
    }
  });
});

describe('what was done', () => {
  it('is said in words, with the bucket’s name, whatever was typed for it', async () => {
    const page = await phone('Teller');
    const told = async (line: string) => (await typeLine(page, line)).locator('.did').textContent();
    expect(await told('/reading bucket:gg weight:229.9g seconds:14')).toBe(
      'Reading, Gull Grey, 229.9 g, 14 s',
    );
    expect(await told('/stirred bucket:4 minutes:3 with:mixer')).toBe(
      'I stirred, Sandbar, 3 min, with mixer',
    );
    expect(await told('/added bucket:4 what:water amount:400ml note:"from the tap"')).toBe(
      'I added, Sandbar, water, 400 ml, “from the tap”',
    );
  });

  it('stays as it was typed when it is no command', async () => {
    const page = await phone('Mistyper');
    const tile = await typeLine(page, 'hello there');
    expect(await tile.locator('code').textContent()).toBe('hello there');
  });
});

describe('an old answer', () => {
  it('says how old it is, and is pale after an hour', async () => {
    const page = await phoneAt(browser, 'about:blank');
    await page.clock.install();
    await page.goto(`http://127.0.0.1:${demo.port}/`);
    await enterDemo(page, 'Waiter');
    const tile = await typeLine(page, '/water-or-stir lichen');
    expect(await tile.locator('time').first().textContent()).toBe('just now');
    await page.clock.fastForward('05:00');
    expect(await tile.locator('time').first().textContent()).toBe('5 min ago');
    expect(await tile.getAttribute('class')).not.toContain('old');
    await page.clock.fastForward('01:00:00');
    expect(await tile.getAttribute('class')).toContain('old');
  });

  it('is pale as soon as another answers for the same bucket', async () => {
    const page = await phone('Replacer');
    const before = await typeLine(page, '/water-or-stir capelin');
    const no = await before.getAttribute('data-no');
    await typeLine(page, '/water-or-stir lichen');
    const first = page.locator(`.tile[data-no="${no}"]`);
    expect(await first.getAttribute('class')).not.toContain('old');
    await typeLine(page, '/water-or-stir capelin');
    expect(await first.getAttribute('class')).toContain('old');
  });

  it('of an entry that was taken back is struck through on every phone, also after a reload', async () => {
    const [one, two] = [await phone('Striker'), await phone('Onlooker')];
    const tile = await typeLine(one, '/stirred bucket:lichen minutes:2');
    const no = await tile.getAttribute('data-no');
    await tile.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => answers(one).last().textContent()).toContain('took back');
    for (const page of [one, two]) {
      const struck = page.locator(`.tile[data-no="${no}"].taken-back`);
      await struck.waitFor();
      expect(await struck.locator('.logged').textContent()).toContain('taken back');
      await page.reload();
      await struck.waitFor();
    }
  });
});

describe('a long answer', () => {
  it('shows its first line, also when something begins to wait for its reader', async () => {
    const page = await phone('Waxer');
    await page.setViewportSize({ width: 390, height: 640 });
    const tile = await typeLine(page, '/coat on kind:wax pieces:"3 bowls"');
    await page.locator('.standing').getByText('waits for you').waitFor();
    const [title, stream] = [tile.locator('h2'), page.locator('main')];
    await expect
      .poll(async () => ((await title.boundingBox())?.y ?? 0) - ((await stream.boundingBox())?.y ?? 0))
      .toBeGreaterThanOrEqual(0);
  });
});

describe('a chart that is enlarged', () => {
  it('keeps its title and its scale in sight while it is moved', async () => {
    const page = await phone('Charter');
    const tile = await typeLine(page, '/bucket show gull grey');
    await tile.locator('.picture').click();
    const held = page.locator('.enlarged');
    await expect
      .poll(() => held.evaluate((node) => node.scrollLeft), { timeout: 15_000 })
      .toBeGreaterThan(100);
    const [frame, pinned] = [await held.boundingBox(), await page.locator('.pinned').boundingBox()];
    expect(pinned?.x).toBe(frame?.x);
    await page.locator('.pinned img').waitFor();
    const src = await page.locator('.pinned img').getAttribute('src');
    const margin = await page.evaluate<string>(`fetch(${JSON.stringify(src)}).then((one) => one.text())`);
    for (const seen of ['>Gull Grey<', '>Specific gravity<', '1.46', '#margin:target'])
      expect(margin).toContain(seen);
  });
});

describe('a batch sheet', () => {
  it('opens on the page, and its button prints the sheet alone', async () => {
    const page = await phone('Mixer');
    const tile = await typeLine(
      page,
      '/batch plan recipe:"feldspar 44, silica 31, whiting 25" volume:15l gravity:1.45',
    );
    await tile.getByRole('button', { name: 'Open the sheet to print' }).click();
    const sheet = page.frameLocator('.paper');
    await sheet.getByRole('heading', { name: 'New batch' }).waitFor();
    expect(await sheet.locator('body').innerText()).toContain('feldspar');
    await page.evaluate(`
      document.querySelector('.paper').contentWindow.print = () => { document.title = 'printed'; };
    `);
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    expect(await page.title()).toBe('printed');
  });
});

describe('keepers’ jobs', () => {
  it('are one press away, and no long way down', async () => {
    const page = await phone('Warden', 'keeper');
    await page.getByRole('button', { name: 'All jobs' }).click();
    await page.getByRole('button', { name: 'For keepers' }).click();
    const box = await page.locator('.all-jobs [data-path="bucket add"]').boundingBox();
    expect(box && box.y + box.height).toBeLessThan(844);
    const tall = await page.locator('dialog').evaluate((node) => node.scrollHeight);
    expect(tall).toBeLessThan(1_500);
  });

  it('are not offered to members, neither in the list nor under a keeper’s answer', async () => {
    const [keeper, member] = [await phone('Holder', 'keeper'), await phone('Visitor')];
    const held = await typeLine(keeper, '/bucket hold bucket:"bog iron" why:"crumbs in it"');
    await held.getByRole('button', { name: 'Release it' }).waitFor();
    const seen = member.locator(`.tile[data-no="${await held.getAttribute('data-no')}"]`);
    await seen.waitFor();
    expect(await seen.getByRole('button', { name: 'Release it' }).count()).toBe(0);
    await member.getByRole('button', { name: 'All jobs' }).click();
    expect(await member.getByRole('button', { name: 'For keepers' }).count()).toBe(0);
    expect(await member.locator('.all-jobs [data-path="bucket hold"]').count()).toBe(0);
    await typeLine(keeper, '/bucket release bucket:"bog iron"').catch(() => undefined);
  });
});

describe.each(['light', 'dark'] as const)('access, %s', (colorScheme) => {
  it('axe finds nothing in old answers, struck entries, an enlarged chart and the keepers’ jobs', async () => {
    const page = await phoneAt(browser, `http://127.0.0.1:${demo.port}/`, { colorScheme });
    await enterDemo(page, `Reader ${colorScheme}`, 'keeper');
    const found: string[] = [];
    const check = async () => void found.push(...(await axeFindings(page)));
    for (const line of [
      '/water-or-stir sandbar',
      '/water-or-stir sandbar',
      '/stirred bucket:lichen minutes:1',
    ])
      await typeLine(page, line);
    await answers(page).last().getByRole('button', { name: 'Undo' }).click();
    await page.locator('.taken-back').last().waitFor();
    await page.locator('.old').last().scrollIntoViewIfNeeded();
    await check();
    const card = await typeLine(page, '/bucket show gull grey');
    await card.locator('.picture').click();
    await check();
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'All jobs' }).click();
    await page.getByRole('button', { name: 'For keepers' }).click();
    await check();
    expect(found).toEqual([]);
  }, 90_000);
});

describe('a bucket that is renamed', () => {
  it('is called by its new name in what is said from then on', async () => {
    const page = await phone('Renamer', 'keeper');
    await typeLine(page, '/bucket change bucket:tansy name:"Tansy Meadow"');
    const tile = await typeLine(page, '/stirred bucket:10 minutes:2');
    expect(await tile.locator('.did').textContent()).toBe('I stirred, Tansy Meadow, 2 min');
  });
});
