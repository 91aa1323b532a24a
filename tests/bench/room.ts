import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { openBrowser, phoneSize } from '../helpers/room/browser.ts';
import { pageWeight } from './pageWeight.ts';
import { roomCrowd } from './roomCrowd.ts';

/**
 * The local room from a phone's view: what it loads, when the first reply is readable, how long an answer takes in a
 * full room.
 */
const quick = process.argv.includes('--quick');
const LINES = quick ? 40 : 300;
const LOADS = quick ? 3 : 7;
const FLOOD = 10_000;
const FLOOD_SECONDS = quick ? 2 : 20;

const root = fileURLToPath(new URL('../..', import.meta.url));

const folder = mkdtempSync(join(tmpdir(), 'bench-room-'));
const server = spawn(process.execPath, [join(root, 'dist/run/main.js')], {
  cwd: folder,
  env: { PATH: process.env['PATH'], ROOM_PORT: '0', LOG_LEVEL: 'error' },
  stdio: ['ignore', 'pipe', 'inherit'],
});
process.on('exit', () => server.kill());
const port = await new Promise<number>((resolve, reject) => {
  server.once('exit', (code) => reject(new Error(`the room ended with ${code}`)));
  server.stdout.on('data', (data: Buffer) => {
    const [, found] = /127\.0\.0\.1:(\d+)/.exec(data.toString()) ?? [];
    if (found !== undefined) resolve(Number(found));
  });
});
const url = `http://127.0.0.1:${port}`;

const sorted = (values: readonly number[]) => [...values].sort((a, b) => a - b);
const at = (values: readonly number[], part: number) =>
  sorted(values)[Math.min(values.length - 1, Math.floor(part * values.length))] ?? NaN;
const ms = (value: number) => `${value.toFixed(value < 10 ? 1 : 0)} ms`;
const print = (what: string, figure: string, aim = '') =>
  console.log(`${what.padEnd(58)} ${figure.padStart(12)}  ${aim}`);

const { scripts, styles } = await pageWeight(url);
print('all scripts, gzip', `${(scripts / 1024).toFixed(1)} KiB`, 'aim: at most 60 KiB');
print('style sheet, gzip', `${(styles / 1024).toFixed(1)} KiB`);

const browser = await openBrowser();
const context = await browser.newContext(phoneSize);
const page = await context.newPage();
await page.goto(url);
await page.fill('#name', 'Bench Phone');
await page.click('button[type=submit]');
await page.waitForSelector('.jobs');
await page.fill('#line', '/water-or-stir gull grey');
await page.press('#line', 'Enter');
await page.waitForSelector('.tile[data-no]');
const storageState = await context.storageState();

/** Polls from outside: the page's security policy forbids evaluating code in it. */
const until = async (page: Page, condition: string): Promise<void> => {
  while (!(await page.evaluate<boolean>(condition))) await sleep(5);
};

const figures: Record<string, number[]> = {};
const note = (name: string, value: number) => (figures[name] ??= []).push(value);
for (let i = 0; i < LOADS; i += 1) {
  const cold = await browser.newContext({ ...phoneSize, storageState });
  const slow = await cold.newPage();
  const wire = await cold.newCDPSession(slow);
  await wire.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  // A slow 4G connection: 150 ms round trip, 1.6 Mbit/s down, 0.75 up.
  await wire.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: 150,
    downloadThroughput: (1.6 * 1024 * 1024) / 8,
    uploadThroughput: (0.75 * 1024 * 1024) / 8,
  });
  await slow.addInitScript(`
    window.seen = { shift: 0, blocked: 0 };
    new PerformanceObserver((list) => list.getEntries().forEach((e) => (seen.largest = e.startTime))).observe({ type: 'largest-contentful-paint', buffered: true });
    new PerformanceObserver((list) => list.getEntries().forEach((e) => (seen.shift += e.value))).observe({ type: 'layout-shift', buffered: true });
    new PerformanceObserver((list) => list.getEntries().forEach((e) => (seen.blocked += e.duration - 50))).observe({ type: 'longtask', buffered: true });
    const watch = () => document.querySelector('.tile[data-no] h2') ? requestAnimationFrame(() => (seen.reply = performance.now())) : requestAnimationFrame(watch);
    requestAnimationFrame(watch);
  `);
  await slow.goto(url);
  await until(slow, 'window.seen.reply !== undefined && window.seen.largest !== undefined');
  const seen = await slow.evaluate<Record<string, number>>(
    '({ ...seen, painted: performance.getEntriesByName("first-contentful-paint")[0].startTime })',
  );
  for (const [name, value] of Object.entries(seen)) note(name, value);
  await slow.locator('#line').fill('/water-or-stir lichen');
  const before = await slow.locator('.tile[data-no]').count();
  const began = performance.now();
  await slow.press('#line', 'Enter');
  await until(slow, `document.querySelectorAll('.tile[data-no]').length > ${before}`);
  note('answer', performance.now() - began);
  await cold.close();
}
const middle = (name: string) => at(figures[name] ?? [], 0.5);
const slowly = '4× slower processor, slow 4G, nothing cached:';
print(`${slowly} first paint`, ms(middle('painted')));
print(`${slowly} largest paint`, ms(middle('largest')));
print(`${slowly} first reply can be read`, ms(middle('reply')), 'aim: at most 1000 ms');
print(`${slowly} worst of ${LOADS}`, ms(Math.max(...(figures['reply'] ?? []))));
print(`${slowly} blocked`, ms(middle('blocked')));
print(`${slowly} layout shift`, middle('shift').toFixed(3));
print(`${slowly} sent line to its answer`, ms(middle('answer')));

const crowd = await roomCrowd(port, 49);
await page.bringToFront();
const shown = await page.evaluate<number[]>(`(async () => {
  const list = document.querySelector('.posts');
  const input = document.getElementById('line');
  const took = [];
  for (let i = 0; i < ${LINES}; i += 1) {
    const line = i % 3 === 0 ? '/stirred bucket:lichen minutes:2' : '/water-or-stir lichen';
    const mine = '.tile.mine[data-no]';
    const last = () => [...list.querySelectorAll(mine)].at(-1)?.dataset.no;
    const before = last();
    const began = performance.now();
    await new Promise((resolve) => {
      const watch = new MutationObserver(() => {
        if (last() === before) return;
        watch.disconnect();
        resolve();
      });
      watch.observe(list, { childList: true });
      input.value = line;
      input.form.requestSubmit();
    });
    took.push(performance.now() - began);
    await new Promise((resolve) => setTimeout(resolve, 130));
  }
  return took;
})()`);
const { answers, heard } = await crowd.stop();
print(`50 phones, ${LINES} lines in a page: line to answer, p50`, ms(at(shown, 0.5)));
print('… p99', ms(at(shown, 0.99)), 'aim: at most 50 ms');
print(`the other 49, ${answers.length} lines: line to answer, p50`, ms(at(answers, 0.5)));
print('… p99', ms(at(answers, 0.99)));
print(`… heard by the others, ${heard.length} times, p99`, ms(at(heard, 0.99)));

const few = await roomCrowd(port, 10);
const flood = spawn(process.execPath, [
  fileURLToPath(new URL('./flood.ts', import.meta.url)),
  ...[port, FLOOD, FLOOD_SECONDS].map(String),
]);
let flooded = '';
flood.stdout.on('data', (data: Buffer) => (flooded += data.toString()));
await once(flood, 'exit');
const amid = await few.stop();
const { sent, statuses } = JSON.parse(flooded) as { sent: number; statuses: Record<string, number> };
const counted = Object.entries(statuses).map(([status, times]) => `${status}: ${times}`);
print(`${FLOOD} requests/s from one address for ${FLOOD_SECONDS} s`, `${sent}`, counted.join(', '));
print(`ten phones amid them, ${amid.answers.length} lines, all answered, p50`, ms(at(amid.answers, 0.5)));
print('… p99', ms(at(amid.answers, 0.99)));

await browser.close();
server.removeAllListeners('exit');
server.kill();
await new Promise((resolve) => server.once('exit', resolve));
rmSync(folder, { recursive: true });
