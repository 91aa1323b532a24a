import type { Browser, Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { axeFindings, sticksOut } from '../../helpers/room/browser.ts';
import { phoneAt } from '../../helpers/room/demoPhone.ts';
import { gullGrey, phoneOf, sayAsKeeper, testRoom, type TestRoom } from '../../helpers/room/roomServer.ts';
import { withBrowser } from '../../helpers/room/withDemo.ts';

let browser: Browser;
withBrowser((opened) => (browser = opened));

const openStudio = async () => {
  const open = await testRoom();
  await sayAsKeeper(open, '/studio set zone:America/St_Johns');
  await sayAsKeeper(open, gullGrey);
  return open;
};

const keeperOf = (open: TestRoom) => phoneOf(open, 'Odile', { code: open.keeperCode });

const entriesOf = ({ app, studio }: TestRoom) =>
  app.store.books.read(studio, async (book) => {
    const [bucket] = await book.buckets();
    return bucket ? (await book.entries(bucket.no, { most: 50 })).length : 0;
  });

const base64 = (text: string | Buffer) => Buffer.from(text).toString('base64');
const sheet = 'date,bucket,gravity,seconds\n2026-03-01,Gull Grey,1.45,14\n2026-03-02,gg,1.44,15\n';

const openSheetOf = async (page: Page) => {
  await page.getByRole('button', { name: 'All jobs' }).click();
  await page.getByRole('button', { name: 'For keepers' }).click();
  await page.locator('dialog').getByRole('button', { name: 'Bring a notebook in' }).click();
};

it('a keeper pastes a notebook on a phone, sees what it becomes, brings it in, and takes it all back', async () => {
  const open = await openStudio();
  const page = await phoneAt(browser, `http://127.0.0.1:${open.port}/#keeper=${open.keeperCode}`);
  await page.getByLabel('Your name').fill('Odile');
  await page.getByLabel('Your own password').fill('first keeper here');
  await page.getByRole('button', { name: 'Come in' }).click();
  await page.getByText('live', { exact: true }).waitFor();
  const before = await entriesOf(open);
  await openSheetOf(page);
  await page
    .getByLabel('Or paste it here')
    .fill('day,pail,SG,thing\n1/2/2026,Gull Grey,1.45,ok\n3/2/2026,gg,1.44,\n');
  await page.getByRole('button', { name: 'See what it becomes' }).click();
  await page.getByLabel(/What does the column “thing” hold/).selectOption('a note');
  await page.getByLabel(/Which stands first in a date/).selectOption('the day');
  await page.getByRole('button', { name: 'Look again' }).click();
  await page.getByText('2 lines can be brought in. Nothing is logged yet.').waitFor();
  await page.getByText('2 · Gull Grey: gravity 1.45').waitFor();
  expect(await entriesOf(open)).toBe(before);
  expect(await sticksOut(page)).toBe(0);
  expect(await axeFindings(page)).toEqual([]);
  await page.getByRole('button', { name: 'Bring it in' }).click();
  await page.getByText('2 lines are in the logbook now.').waitFor();
  expect(await entriesOf(open)).toBe(before + 2);
  await page.getByRole('button', { name: 'Take all of it back' }).click();
  await page.getByText('All of it is taken back: 2 entries.').waitFor();
  expect(await entriesOf(open)).toBe(before + 4);
}, 60_000);

it('a file with one line that can’t be read brings nothing in', async () => {
  const open = await openStudio();
  const keeper = await keeperOf(open);
  const before = await entriesOf(open);
  const file = base64(`${sheet}2026-03-03,Sandbar,1.45,14\n=HYPERLINK("x"),gg,1.4,14\n`);
  const got = await keeper.post('/api/notebook', { file, keep: true });
  expect(got.json).toMatchObject({
    said: '2 lines of 4 can’t be read, so nothing is brought in. Correct them in the file, or take them out.',
    fits: false,
    refused: ['4 · there is no bucket “Sandbar”', '5 · its date can’t be read'],
  });
  expect(got.json['no']).toBeUndefined();
  expect(await entriesOf(open)).toBe(before);
});

it('a formula in a note stays the text that it is', async () => {
  const open = await openStudio();
  const keeper = await keeperOf(open);
  const file = base64('date,bucket,gravity,note\n2026-03-01,gg,1.45,"=1+1"\n');
  expect((await keeper.post('/api/notebook', { file, keep: true })).json).toMatchObject({ no: 1 });
  const log = await keeper.say('/bucket log gg');
  expect(log.text).toContain('=1+1');
});

it('makes buckets that are not there only when a keeper says so', async () => {
  const open = await openStudio();
  const keeper = await keeperOf(open);
  const file = base64('date,bucket,gravity\n2026-03-01,Sandbar,1.45\n');
  const asked = await keeper.post('/api/notebook', { file });
  expect(asked.json['questions']).toMatchObject([{ of: 'newBuckets' }]);
  const told = await keeper.post('/api/notebook', { file, newBuckets: 'yes' });
  expect(told.json).toMatchObject({
    fits: true,
    about: ['Sandbar will be a new bucket.', expect.any(String)],
  });
  const kept = await keeper.post('/api/notebook', { file, newBuckets: 'yes', keep: true });
  expect(kept.json).toMatchObject({ no: 1, said: '1 line is in the logbook now.' });
});

it.each([
  ['a zip archive', Buffer.from('PK\u0003\u0004rest of it'), /zip archive/],
  ['a text with NUL', Buffer.from('date,bucket\n2026-03-01,g\u0000g\n'), /line 2 has a character/],
  ['a million columns', Buffer.from(`date${','.repeat(200_000)}\n`), /is longer than|columns/],
  [
    'more lines than fit',
    Buffer.from(`date,bucket,gravity\n${'2026-03-01,gg,1.45\n'.repeat(2_001)}`),
    /2000 are the most/,
  ],
  ['nothing', Buffer.from(' '), /no lines/],
  ['no names of columns', Buffer.from('2026-03-01,gg,1.45\n2026-03-02,gg,1.45\n'), /must name the columns/],
])('%s is answered in words, and nothing is brought in', async (_name, bytes, said) => {
  const open = await openStudio();
  const keeper = await keeperOf(open);
  const before = await entriesOf(open);
  const got = await keeper.post('/api/notebook', { file: base64(bytes), keep: true });
  expect(got.status).toBe(200);
  expect(got.json).toMatchObject({ said: expect.stringMatching(said), fits: false });
  expect(await entriesOf(open)).toBe(before);
});

it('reads a notebook of another encoding', async () => {
  const open = await openStudio();
  const keeper = await keeperOf(open);
  const latin = Buffer.from('date,bucket,gravity,note\n2026-03-01,gg,1.45,caf\xe9\n', 'latin1');
  await keeper.post('/api/notebook', { file: base64(latin), keep: true });
  expect((await keeper.say('/bucket log gg')).text).toContain('café');
});

it('is a keeper’s alone, from the room’s own page, and no larger than said', async () => {
  const open = await openStudio();
  const keeper = await keeperOf(open);
  const member = await phoneOf(open, 'Wren');
  expect((await member.post('/api/notebook', { file: base64(sheet) })).status).toBe(403);
  // A member's body is no longer than a line.
  expect((await member.post('/api/notebook', { file: 'A'.repeat(20_000) })).status).toBe(413);
  // Refused by its length alone, before any of it is read.
  const { statusCode } = await keeper.open('POST', '/api/notebook', {
    'content-type': 'application/json',
    'content-length': '800000',
  });
  expect(statusCode).toBe(413);
  for (const file of ['not base64!', 7, undefined])
    expect((await keeper.post('/api/notebook', { file })).status).toBe(400);
  expect((await keeper.post('/api/notebook', { file: base64(sheet), columns: { a: 1 } })).status).toBe(400);
  expect((await keeper.post('/api/notebook/undo', { no: 1.5 })).status).toBe(400);
  expect((await keeper.post('/api/notebook/undo', { no: 9 })).json['said']).toMatch(/taken back already/);
  keeper.origin = 'http://elsewhere.example';
  expect((await keeper.post('/api/notebook', { file: base64(sheet) })).status).toBe(403);
});
