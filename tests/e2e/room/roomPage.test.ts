import type { Browser, Page } from 'playwright-core';
import { describe, expect, it, onTestFinished } from 'vitest';
import { answersAtOnce, type Leaf } from '../../../src/contract/contract.ts';
import { axeFindings, openPage, phoneSize, sticksOut } from '../../helpers/room/browser.ts';
import { phoneOf, testRoom, type TestRoom } from '../../helpers/room/roomServer.ts';
import { withDemo } from '../../helpers/room/withDemo.ts';

let browser: Browser;
let demo: TestRoom;
withDemo((...opened) => ([browser, demo] = opened));

const url = ({ port }: TestRoom, path = '/') => `http://127.0.0.1:${port}${path}`;

/** A phone in the demo under its own name. Its console must stay empty. */
const enter = async (
  name: string,
  { keeper = false, room = demo, options = phoneSize } = {},
): Promise<Page> => {
  const { page, complaints } = await openPage(browser, options);
  onTestFinished(async () => {
    await page.context().close();
    // The browser reports a lost connection, and a chart that it has to ask for again; that is not the page's message.
    expect(complaints.filter((one) => !/net::ERR_|status of 429/.test(one))).toEqual([]);
  });
  await page.goto(url(room));
  await page.getByLabel('Your name').fill(name);
  if (keeper) await page.getByText('Try it as a keeper').click();
  await page.getByRole('button', { name: 'Come in' }).click();
  await page.getByRole('navigation', { name: 'Jobs' }).waitFor();
  await page.getByText('live', { exact: true }).waitFor();
  return page;
};

const tiles = (page: Page) => page.locator('.tile[data-no]');
const newest = (page: Page) => tiles(page).last();

/** Types a line and waits for its answer. */
const say = async (page: Page, line: string) => {
  const before = await tiles(page).count();
  await page.locator('#line').fill(line);
  await page.locator('#line').press('Enter');
  await expect.poll(() => tiles(page).count()).toBe(before + 1);
  return newest(page);
};

/** Opens a job from "all jobs", from the keepers' own if need be. */
const anyJob = async (page: Page, path: string) => {
  await page.getByRole('button', { name: 'All jobs' }).click();
  const press = page.locator(`.all-jobs [data-path="${path}"]`);
  if (!(await press.isVisible())) await page.getByRole('button', { name: 'For keepers' }).click();
  await press.click();
};

/** Opens a job's form, from the grid or from "all jobs". */
const job = async (page: Page, path: string) => {
  const tile = page.locator(`.job[data-path="${path}"]`);
  if ((await tile.count()) > 0) await tile.click();
  else {
    await anyJob(page, path);
  }
  return page.locator('dialog form');
};
const fill = (page: Page, option: string, value: string) =>
  page.locator(`dialog [data-option="${option}"]`).locator('input, textarea').fill(value);
const choose = (page: Page, option: string, value: string) =>
  page.locator(`dialog [data-option="${option}"]`).getByRole('button', { name: value, exact: true }).click();
const submit = async (page: Page) => {
  const before = await tiles(page).count();
  await page.locator('dialog button[type=submit]').click();
  await expect.poll(() => tiles(page).count()).toBe(before + 1);
  return newest(page);
};

/** Chooses where the choice is all that is asked: it is answered at once. */
const chooseToAsk = async (page: Page, option: string, value: string) => {
  const before = await tiles(page).count();
  await choose(page, option, value);
  await expect.poll(() => tiles(page).count()).toBe(before + 1);
  return newest(page);
};

describe('a phone in another zone than the studio', () => {
  it('is shown the times that it would type, and told so', async () => {
    const page = await enter('Traveller', { options: { ...phoneSize, timezoneId: 'Asia/Tokyo' } });
    expect(await page.locator('.zone').textContent()).toContain('America/St Johns');
    const tile = await say(page, '/stirred bucket:sandbar when:"yesterday 9:05am"');
    const times = await tile.locator('time').evaluateAll((all) => all.map((one) => one.title));
    expect(times.join()).toMatch(/9:05/);
    expect(await sticksOut(page)).toBe(0);
  });

  it('is told nothing where its clock shows the same', async () => {
    const page = await enter('Neighbour', { options: { ...phoneSize, timezoneId: 'America/St_Johns' } });
    expect(await page.locator('.zone').isVisible()).toBe(false);
  });
});

describe('the jobs, on a phone', () => {
  it('a reading is posted by its form, and the answer says what to do', async () => {
    const page = await enter('Reader');
    await job(page, 'reading');
    await choose(page, 'bucket', '1 · Gull Grey');
    await fill(page, 'weight', '241.9');
    await choose(page, 'look', 'right');
    await choose(page, 'stirred', 'yes');
    const tile = await submit(page);
    expect(await tile.locator('h2').textContent()).toContain('Gull Grey');
    expect(await tile.getByText('only you see this').count()).toBe(0);
  });

  it('no bucket is filled in for anybody; those named lately are first to press, until sign-out', async () => {
    const page = await enter('Recent');
    const bucket = page.locator('dialog [data-option=bucket]');
    const close = () => page.getByRole('button', { name: 'Close' }).click();
    const offered = async () => {
      await bucket.locator('input').click();
      await bucket.locator('.offered button').first().waitFor();
      return bucket.locator('.offered button').allTextContents();
    };
    for (const [number, name] of [
      ['4', 'Sandbar'],
      ['9', 'Gull Wing'],
    ]) {
      await job(page, 'water-or-stir');
      await chooseToAsk(page, 'bucket', `${number} · ${name}`);
    }
    for (const path of ['reading', 'dose', 'added', 'ask', 'fired']) {
      await job(page, path);
      expect([path, await bucket.locator('input').inputValue()]).toEqual([path, '']);
      const [first, second] = await offered();
      expect([path, first, second]).toEqual(
        ['ask', 'fired'].includes(path)
          ? [path, '1 · Gull Grey', expect.not.stringContaining('Sandbar')]
          : [path, '9 · Gull Wing', '4 · Sandbar'],
      );
      await close();
    }
    // Another member at the same tablet.
    await page.getByRole('button', { name: 'Recent' }).click();
    await page.getByRole('button', { name: 'Sign out', exact: true }).click();
    await page.getByLabel('Your name').fill('Next');
    await page.getByRole('button', { name: 'Come in' }).click();
    await page.getByRole('navigation', { name: 'Jobs' }).waitFor();
    await job(page, 'reading');
    expect(await bucket.locator('input').inputValue()).toBe('');
    expect((await offered())[0]).toBe('1 · Gull Grey');
  });

  it('an emergency is answered on the page by what to do now, whichever bucket was asked about before', async () => {
    const page = await enter('Helper');
    await say(page, '/water-or-stir gull wing');
    await job(page, 'ask');
    await fill(page, 'question', 'My chest is tight after mixing glaze');
    const tile = await submit(page);
    expect(await tile.locator('h2').textContent()).toMatch(/^Get out into fresh air/);
    expect(await tile.textContent()).not.toMatch(/Gull Wing|Gravity/);
    expect(await tile.getByText('only you see this').count()).toBe(1);
  });

  it('what was refused is put right without typing it twice', async () => {
    const page = await enter('Slipper');
    await job(page, 'reading');
    await choose(page, 'bucket', '1 · Gull Grey');
    await fill(page, 'weight', '241.9');
    await fill(page, 'seconds', '14o');
    await choose(page, 'stirred', 'yes');
    const refused = await submit(page);
    await refused.getByRole('button', { name: 'Correct it' }).click();
    const told = page.locator('dialog').getByRole('alert').filter({ hasText: '“14o”' });
    await told.waitFor();
    const field = (option: string) => page.locator(`dialog [data-option=${option}] input`);
    expect(await field('weight').inputValue()).toBe('241.9');
    await expect.poll(() => field('bucket').inputValue()).toBe('Gull Grey');
    await choose(page, 'seconds', 'won’t run');
    const logged = await submit(page);
    expect(await logged.locator('.did').textContent()).toBe(
      'Reading, Gull Grey, 241.9 g, won’t-run, stirred',
    );
    expect(await logged.getAttribute('class')).toContain('answer');
  });

  it('what is needed is asked for where it is missing', async () => {
    const page = await enter('Blank');
    await job(page, 'dip time');
    await page.locator('dialog button[type=submit]').click();
    const missing = page.locator('dialog .field', { has: page.getByText('Fill this in.') });
    expect(await missing.count()).toBe(1);
    const box = await missing.boundingBox();
    const header = await page.locator('dialog header').boundingBox();
    expect(box?.y).toBeGreaterThanOrEqual((header?.y ?? 0) + (header?.height ?? 0));
    await missing.locator('input').fill('1');
    expect(await page.getByText('Fill this in.').count()).toBe(0);
  });

  it('water or stir is asked in two presses, privately', async () => {
    const page = await enter('Asker');
    await job(page, 'water-or-stir');
    const tile = await chooseToAsk(page, 'bucket', '9 · Gull Wing');
    expect(await tile.locator('.step').textContent()).toBe('stir first');
    expect(await tile.getByText('only you see this').count()).toBe(1);
  });

  it('what was done is logged by one press of its button, once', async () => {
    const page = await enter('Stirrer');
    await say(page, '/water-or-stir gull wing');
    const before = await tiles(page).count();
    const press = newest(page).locator('.actions .stamp:not(.quiet)').first();
    await press.dblclick();
    await expect.poll(() => tiles(page).count()).toBe(before + 1);
    expect(await newest(page).locator('.did').textContent()).toBe('I stirred, Gull Wing, look right');
    expect(await page.locator('.actions').nth(-2).locator('button').first().isDisabled()).toBe(true);
  });

  it('an addition is logged with its unit switched, and taken back', async () => {
    const page = await enter('Pourer');
    await job(page, 'added');
    await choose(page, 'bucket', '4 · Sandbar');
    await choose(page, 'what', 'water').catch(() => fill(page, 'what', 'water'));
    await fill(page, 'amount', '0.4');
    await page.locator('dialog [data-option=amount] .units button', { hasText: /^l$/ }).click();
    const tile = await submit(page);
    expect(await tile.locator('.did').textContent()).toBe('I added, Sandbar, water, 0.4 l');
    expect(await tile.locator('.logged').textContent()).toMatch(/^Logged 4-\d+: .*400 ml of water/);
    const before = await tiles(page).count();
    await tile.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => tiles(page).count()).toBe(before + 1);
    expect(await newest(page).locator('.logged').textContent()).toMatch(/took back .*400 ml of water/);
    expect(await newest(page).getByRole('button', { name: 'Undo' }).count()).toBe(0);
    const struck = tiles(page).nth(-2);
    expect(await struck.getByRole('button').count()).toBe(0);
    expect(await struck.locator('.logged').textContent()).toContain('taken back');
    const line = 'getComputedStyle(document.querySelector(".taken-back .did")).textDecorationLine';
    expect(await page.evaluate(line)).toBe('line-through');
    await page.context().close();
  });

  it('a resist coat goes on, and its answer says when it is dry', async () => {
    const page = await enter('Waxer');
    await job(page, 'coat on');
    await choose(page, 'kind', 'wax emulsion');
    await fill(page, 'pieces', '3 bowls');
    const tile = await submit(page);
    expect(await tile.locator('time').count()).toBeGreaterThan(1);
  });

  it('every other job is there, made from its command', async () => {
    const page = await enter('Looker', { keeper: true });
    const { commands } = demo.app.desk;
    const all = commands.flatMap((one): [string, Leaf][] =>
      'leaves' in one ? one.leaves.map((leaf) => [`${one.name} ${leaf.name}`, leaf]) : [[one.name, one]],
    );
    for (const [path, leaf] of all) {
      // Lists open filled.
      if (answersAtOnce(leaf)) continue;
      await anyJob(page, path);
      expect(await page.locator('dialog .field').count(), path).toBeGreaterThanOrEqual(0);
      await page.getByRole('button', { name: 'Close' }).click();
    }
  }, 90_000);

  it('a keeper sets a bucket up, holds it, and sees all at a glance', async () => {
    const page = await enter('Setter', { keeper: true });
    const set = await say(page, '/bucket add name:"Page Green" pail:19l volume:12l gravity:1.40-1.44');
    expect(await set.getAttribute('class')).toContain('answer');
    await say(page, '/bucket hold bucket:"Page Green" why:"crumbs in it"');
    const list = await say(page, '/bucket list');
    expect(await list.textContent()).toContain('Page Green');
    const { page: wall } = await openPage(browser, { viewport: { width: 1920, height: 1080 } });
    await wall.goto(url(demo, '/board'));
    const cell = wall.locator('.bucket', { hasText: 'Page Green' });
    expect(await cell.locator('.state').textContent()).toBe('on hold');
    // The board refreshes itself.
    await say(page, '/bucket release bucket:"Page Green"');
    await expect.poll(() => cell.locator('.state').textContent(), { timeout: 12_000 }).not.toBe('on hold');
    // Letters readable at three metres: 1080 lines on a screen 0.6 m high, at least 16 minutes of arc (ISO 9241-303,
    // from memory).
    const pixels = await wall.evaluate<number>(
      `parseFloat(getComputedStyle(document.querySelector('.bucket .state')).fontSize)`,
    );
    const capHeight = 0.7 * pixels * (600 / 1080);
    expect(Math.atan(capHeight / 3_000) * (180 / Math.PI) * 60).toBeGreaterThan(16);
    await wall.context().close();
  }, 60_000);

  it('a chart is shown with words for it, and grows when it is pressed', async () => {
    const page = await enter('Charter');
    const tile = await say(page, '/bucket show gull grey');
    const image = tile.locator('img.chart');
    await image.scrollIntoViewIfNeeded();
    await expect
      .poll(() => page.evaluate<number>(`document.querySelector('img.chart').naturalWidth`), {
        timeout: 12_000,
      })
      .toBeGreaterThan(100);
    expect(await image.getAttribute('alt')).toContain('Gull Grey');
    await tile.locator('.picture').click();
    await page.getByRole('dialog').getByRole('img', { name: 'Gull Grey' }).waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('dialog').count()).toBe(0);
  });
});

describe('several phones', () => {
  it('see what one of them logs, and not what one of them asks', async () => {
    const [one, two] = [await enter('First'), await enter('Second')];
    const before = await tiles(two).count();
    await say(one, '/water-or-stir lichen');
    await say(one, '/stirred bucket:lichen minutes:2');
    await expect.poll(() => tiles(two).count()).toBe(before + 1);
    expect(await newest(two).locator('.did').textContent()).toBe('I stirred, Lichen, 2 min');
    expect(await newest(two).locator('.who').textContent()).toBe('First');
  });

  it('keep what is sent without a connection, also over a reload, and log it once', async () => {
    const page = await enter('Drifter');
    const before = await tiles(page).count();
    await page.context().setOffline(true);
    await page.getByText('no connection').waitFor();
    await page.locator('#line').fill('/stirred bucket:"Dory Blue" minutes:2');
    await page.locator('#line').press('Enter');
    await page.getByText('waiting to be sent').waitFor();
    await page.waitForTimeout(1_500);
    expect(await tiles(page).count()).toBe(before);
    await page.context().setOffline(false);
    await expect.poll(() => tiles(page).count()).toBe(before + 1);
    await page.reload();
    await page.getByText('live', { exact: true }).waitFor();
    expect(await tiles(page).filter({ hasText: 'Dory Blue' }).filter({ hasText: 'I stirred' }).count()).toBe(
      1,
    );
    expect(await page.getByText('waiting to be sent').count()).toBe(0);
  }, 60_000);

  it('answer a line once when its answer got lost on the way', async () => {
    const page = await enter('Loser');
    let lost = 0;
    await page.route('**/api/say', async (route) => {
      await route.fetch();
      lost += 1;
      if (lost <= 2) await route.abort('connectionreset');
      else await route.continue();
    });
    const before = await tiles(page).count();
    await page.locator('#line').fill('/stirred bucket:capelin minutes:1');
    await page.locator('#line').press('Enter');
    await expect.poll(() => lost, { timeout: 15_000 }).toBeGreaterThanOrEqual(3);
    await expect.poll(() => tiles(page).count()).toBe(before + 1);
    await page.waitForTimeout(500);
    expect(await tiles(page).count()).toBe(before + 1);
    expect(await page.locator('.waiting').count()).toBe(0);
  }, 60_000);
});

describe('coming in', () => {
  it('takes passcode, name and password, refuses what does not fit, and keeps what was typed', async () => {
    const open = await testRoom();
    const { page } = await openPage(browser);
    await page.goto(url(open));
    await page.getByLabel('the studio’s passcode').fill('not it at all');
    await page.getByLabel('Your name').fill('Wren');
    await page.getByLabel('Your own password').fill('oyster catcher');
    await page.getByRole('button', { name: 'Come in' }).click();
    await page.getByRole('alert').filter({ hasText: 'don’t match' }).waitFor();
    expect(await page.getByLabel('Your name').inputValue()).toBe('Wren');
    await page.getByLabel('the studio’s passcode').fill(open.passcode);
    await page.getByRole('button', { name: 'Come in' }).click();
    await page.getByText('live', { exact: true }).waitFor();
    const cookies = await page.context().cookies();
    expect(cookies).toMatchObject(cookies.map(() => ({ httpOnly: true, sameSite: 'Lax' })));
    expect(await page.evaluate('document.cookie')).toBe('');
    await page.getByRole('button', { name: 'Wren' }).click();
    await page.getByRole('button', { name: 'Sign out', exact: true }).click();
    // From now on the name and password are enough: the passcode is for the first sign-in.
    await page.getByLabel('Your name').fill('Wren');
    await page.getByLabel('Your own password').fill('oyster catcher');
    await page.getByRole('button', { name: 'Come in' }).click();
    await page.getByText('live', { exact: true }).waitFor();
    await page.context().close();
  });

  it('by a code in the address works once, and leaves it nowhere', async () => {
    const open = await testRoom({ url: 'http://glaze.wrackline.example' });
    const { page } = await openPage(browser);
    await page.goto(`${url(open)}#keeper=${open.keeperCode}`);
    await page.getByText('become a keeper of this room').waitFor();
    expect(page.url()).not.toContain(open.keeperCode);
    await page.getByLabel('Your name').fill('Odile');
    await page.getByLabel('Your own password').fill('first keeper here');
    await page.getByRole('button', { name: 'Come in' }).click();
    await page.getByRole('button', { name: 'Odile' }).click();
    await page.getByText('You are Odile, a keeper.').waitFor();
    await page.getByRole('dialog').getByRole('button', { name: 'Let a phone in' }).click();
    await page.getByRole('img', { name: 'A code to scan' }).waitFor();
    await page.getByRole('button', { name: 'Close' }).click();
    for (const first of ['Name and time zone', 'Calibrate a cup', 'Set a bucket up'])
      await page.locator('.steps').getByRole('button', { name: first }).waitFor();
    await page.context().close();
  });

  it('offers no code to scan that no phone could open', async () => {
    const page = await enter('Sanderling', { keeper: true });
    await page.locator('.me').click();
    await page.getByRole('button', { name: 'Let a phone in' }).click();
    await page.getByText('Only this computer can open the address').waitFor();
    expect(await page.locator('.code').count()).toBe(0);
    await page.context().close();
  });

  it('is asked for again at once on a phone whose member a keeper has released', async () => {
    const open = await testRoom();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    const { page, complaints } = await openPage(browser);
    await page.goto(url(open));
    await page.getByLabel('the studio’s passcode').fill(open.passcode.toUpperCase().replace('-', ''));
    await page.getByLabel('Your name').fill('Wren');
    await page.getByLabel('Your own password').fill('oyster catcher');
    await page.getByRole('button', { name: 'Come in' }).click();
    await page.getByText('live', { exact: true }).waitFor();
    await keeper.post('/api/door/release', { name: 'Wren' });
    await page.getByText('You were signed out').waitFor();
    expect(complaints.filter((one) => !one.includes('401'))).toEqual([]);
    await page.context().close();
  });
});

describe('what somebody typed', () => {
  it('is shown as it was typed, wherever it turns up, and never runs', async () => {
    const page = await enter('Poker', { keeper: true });
    const nasty = '<img src=x onerror="document.title=1">';
    await say(page, `/bucket add name:'${nasty}' nick:zz pail:5l gravity:1.40-1.44`);
    await say(
      page,
      `/reading bucket:zz gravity:1.42 stirred:yes note:"</script><script>document.title=2</script>"`,
    );
    await say(page, '/bucket log bucket:zz');
    await say(page, `<svg onload=document.title=3> javascript:alert(1) https://evil.example/x.png`);
    await page.reload();
    await page.getByText('live', { exact: true }).waitFor();
    expect(await page.locator('.posts').textContent()).toContain(nasty);
    expect(await page.title()).toBe('Wrackline Clay Co-op');
    expect(
      await page.locator('.posts img[src="x"], .posts script, .posts svg:not(.scale), .posts a').count(),
    ).toBe(0);
    await page.goto(url(demo, '/board'));
    await page.locator('.bucket', { hasText: nasty }).waitFor();
    expect(await page.title()).toBe('The board');
  });
});

describe('access', () => {
  const views = async (page: Page, look: string) => {
    const found: string[] = [];
    const check = async (view: string) =>
      found.push(...(await axeFindings(page)).map((one) => `${look} ${view}: ${one}`));
    await page.goto(url(demo));
    await check('join');
    await page.getByLabel('Your name').fill(`Viewer ${look}`);
    await page.getByText('Try it as a keeper').click();
    await page.getByRole('button', { name: 'Come in' }).click();
    await page.getByText('live', { exact: true }).waitFor();
    await check('room');
    for (const line of [
      '/water-or-stir gull wing',
      '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes',
      '/bucket show gull grey',
      '/reading gull',
      '/nonsense',
    ])
      await say(page, line);
    await newest(page).scrollIntoViewIfNeeded();
    for (const summary of await page.locator('summary').all()) await summary.click();
    await check('replies');
    await page.locator('#line').fill('/rea');
    await page.locator('.completion').first().waitFor();
    await check('completion');
    await page.locator('#line').fill('');
    await job(page, 'reading');
    await page.locator('dialog summary').click();
    await check('form');
    await page.getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'All jobs' }).click();
    await check('all jobs');
    await page.getByRole('button', { name: 'Close' }).click();
    await page.locator('.me').click();
    await page.getByRole('button', { name: 'Let a phone in' }).click();
    await page.getByText('Only this computer').waitFor();
    await check('door');
    await page.goto(url(demo, '/board'));
    await page.locator('.bucket').first().waitFor();
    await check('wall');
    return found;
  };

  it.each(['light', 'dark'] as const)(
    'axe finds nothing in any view, %s',
    async (look) => {
      const { page, complaints } = await openPage(browser, { ...phoneSize, colorScheme: look });
      expect(await views(page, look)).toEqual([]);
      expect(complaints).toEqual([]);
      await page.context().close();
    },
    90_000,
  );

  it('the keyboard alone is enough: write with completion, press a job, fill it, leave it', async () => {
    const page = await enter('Typist', { options: { viewport: { width: 1280, height: 800 } } });
    await page.locator('#line').focus();
    await page.keyboard.type('/water');
    await page.locator('.completion').first().waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Tab');
    expect(await page.locator('#line').inputValue()).toBe('/water-or-stir ');
    await page.keyboard.type('lichen');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Enter');
    await newest(page).filter({ hasText: 'Lichen' }).waitFor();
    await page.keyboard.press('ArrowUp');
    expect(await page.locator('#line').inputValue()).toBe('/water-or-stir lichen');
    await page.locator('.skip').focus();
    await page.keyboard.press('Enter');
    expect(await page.evaluate('document.activeElement.id')).toBe('line');
    await page.locator('#line').fill('');
    await page.locator('.job[data-path=stirred]').focus();
    await page.keyboard.press('Enter');
    // The first field has the focus already.
    await page.keyboard.type('lichen');
    const before = await tiles(page).count();
    await page.keyboard.press('Enter');
    await expect.poll(() => tiles(page).count()).toBe(before + 1);
    expect(await newest(page).locator('.did').textContent()).toBe('I stirred, Lichen');
    await page.locator('.job.all').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    expect(await page.evaluate('document.activeElement.className')).toContain('job');
  });

  it('nothing sticks out at 360 or 320 pixels, at twice the size, or on a screen of 4K', async () => {
    for (const [width, height] of [
      [360, 640],
      [320, 568],
      [195, 422],
      [844, 390],
      [3840, 2160],
    ] as const) {
      const page = await enter(`Fitter ${'abcdefghij'.charAt(width % 10)}`, {
        options: { viewport: { width, height } },
      });
      await say(page, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
      expect(await sticksOut(page), `${width}`).toBeLessThanOrEqual(0);
      await job(page, 'reading');
      expect(await sticksOut(page), `${width} form`).toBeLessThanOrEqual(0);
      await page.goto(url(demo, '/board'));
      await page.locator('.bucket').first().waitFor();
      expect(await sticksOut(page), `${width} wall`).toBeLessThanOrEqual(0);
    }
  }, 90_000);

  it('what is pressed is large enough for a wet thumb', async () => {
    const page = await enter('Thumb');
    await say(page, '/water-or-stir gull wing');
    await job(page, 'reading');
    // 44 CSS pixels: WCAG 2.2, 2.5.5 (AAA).
    const small = await page.evaluate(`
      [...document.querySelectorAll('button, summary, input, a')]
        .filter((one) => one.checkVisibility())
        .map((one) => ({ text: one.textContent, height: one.getBoundingClientRect().height }))
        .filter(({ height }) => height < 43.5)
    `);
    expect(small).toEqual([]);
  });

  it('nothing moves for whoever asked for less motion', async () => {
    const page = await enter('Still', { options: { ...phoneSize, reducedMotion: 'reduce' } });
    const moving = await page.evaluate(`
      [...document.querySelectorAll('*')]
        .filter((one) => parseFloat(getComputedStyle(one).transitionDuration) > 0).length
    `);
    expect(moving).toBe(0);
  });
});
