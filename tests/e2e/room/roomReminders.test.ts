import { expect, it, onTestFinished } from 'vitest';
import { startReminders } from '../../../src/reminders/startReminders.ts';
import { handbook } from '../../helpers/handbook.ts';
import { en } from '../../../src/words/en.ts';
import { openBrowser, openPage, phoneSize } from '../../helpers/room/browser.ts';
import { at } from '../../helpers/room/reminderRoom.ts';
import { typeLine } from '../../helpers/room/demoPhone.ts';
import { gullGrey, phoneOf, sayAsKeeper, testRoom } from '../../helpers/room/roomServer.ts';
import { settableClock } from '../../helpers/store/storeFile.ts';

const secret = 'oyster catcher';
const hour = 3_600_000;

/** Sunday, 19:00 in St John's. The wax is dry at 08:00 on Monday, when the studio opens. */
const evening = at('2026-03-01T22:30:00Z');
const morning = at('2026-03-02T11:30:00Z');

const roomAtEvening = async () => {
  const clock = settableClock();
  clock.set(evening);
  const open = await testRoom({ clock });
  await sayAsKeeper(open, '/studio set zone:America/St_Johns');
  const { store } = open.app;
  const fail = (about: object, message: string) => {
    throw new Error(`${message}: ${JSON.stringify(about)}`);
  };
  const reminders = await startReminders(
    {
      queue: store.reminders,
      books: store.books,
      words: en,
      handbook,
      clock,
      log: { info: () => undefined, warn: fail, error: fail },
      voices: [open.room.voice],
    },
    // The test calls tick() itself.
    { every: 1e8 },
  );
  onTestFinished(() => reminders.stop());
  const tick = (now: number) => {
    clock.set(now);
    return reminders.tick();
  };
  return { open, tick };
};

it('a coat put on in the room is told dry in the morning, to its member’s phones alone, and again to one that was away', async () => {
  const { open, tick } = await roomAtEvening();
  const mara = await phoneOf(open, 'Mara', { secret });
  const wren = await phoneOf(open, 'Wren', { secret });
  const [first, second, other] = [await mara.listen(), await mara.listen(), await wren.listen()];
  await mara.say('/coat on kind:wax pieces:"3 bowls"');
  await Promise.all([first.until(1), second.until(1)]);
  expect(await tick(morning - 1)).toBe(0);
  second.message.destroy();
  expect(await tick(morning)).toBe(1);
  await first.until(2);
  const told = {
    private: true,
    line: '',
    reply: {
      title: ['The ', 'wax emulsion', ' on ', { said: '3 bowls' }, ' is dry: you can glaze now.'],
    },
  };
  expect(first.posts[1]).toMatchObject(told);
  const back = await mara.listen(Number(first.posts[0]?.['no']));
  await back.until(1);
  expect(back.posts).toMatchObject([told]);
  expect(await tick(morning + 25 * hour)).toBe(0);
  expect(other.posts).toEqual([]);
  for (const { message } of [first, back, other]) message.destroy();
});

it('a plan that is too early is warned of on the phone, before it', async () => {
  const { open, tick } = await roomAtEvening();
  await sayAsKeeper(open, '/studio reminders lead:1h');
  const browser = await openBrowser();
  onTestFinished(() => browser.close());
  const { page, complaints } = await openPage(browser);
  await page.goto(await open.room.invitation('join'));
  await page.fill('#name', 'Mara');
  await page.fill('#secret', secret);
  await page.click('button[type=submit]');
  await page.fill('#line', '/coat on kind:wax pieces:"3 bowls" for:"tonight 9pm"');
  await page.press('#line', 'Enter');
  await page.waitForSelector('.tile.mine[data-no]');
  // 21:00 there, less the hour of notice that the studio set.
  expect(await tick(at('2026-03-01T23:29:59Z'))).toBe(0);
  expect(await tick(at('2026-03-01T23:30:00Z'))).toBe(1);
  const warning = page.locator('.tile.private', { hasText: 'Don’t glaze 3 bowls' });
  await warning.waitFor();
  expect(await warning.innerText()).toContain('is not dry before');
  expect(complaints).toEqual([]);
});

it('a reminder that was asked for stands above the posts once it has come, until it is dealt with', async () => {
  const { open, tick } = await roomAtEvening();
  await sayAsKeeper(open, gullGrey);
  const browser = await openBrowser();
  onTestFinished(() => browser.close());
  const { page, complaints } = await openPage(browser, phoneSize);
  await page.goto(await open.room.invitation('join'));
  await page.fill('#name', 'Mara');
  await page.fill('#secret', secret);
  await page.click('button[type=submit]');
  await page.getByText('live', { exact: true }).waitFor();
  const asked = await typeLine(page, '/remind me bucket:gg in:10min');
  // Ten minutes after 19:00 in St John's.
  expect(await asked.locator('h2').textContent()).toMatch(/^Gull Grey: I’ll tell you here at (?:19:10|7:10)/);
  const standing = page.locator('.standing');
  expect(await standing.isVisible()).toBe(false);
  expect(await tick(evening + hour / 6)).toBe(1);
  await standing.getByText('1 thing waits for you').click();
  await standing.getByText('to look again, as you asked').waitFor();
  await standing.getByRole('button', { name: 'I took care of it' }).click();
  await standing.waitFor({ state: 'hidden' });
  expect(complaints).toEqual([]);
});
