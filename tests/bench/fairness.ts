import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

/** What one member's ten requests a second cost another member: the other's answers must stay fast. */
const quick = process.argv.includes('--quick');
const SECONDS = quick ? 5 : 30;
const A_SECOND = 10;

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'bench-fairness-'));
const server = spawn(process.execPath, [join(root, 'dist/run/main.js')], {
  cwd: folder,
  env: { PATH: process.env['PATH'], ROOM_PORT: '0', LOG_LEVEL: 'error' },
  stdio: ['ignore', 'pipe', 'inherit'],
});
process.on('exit', () => server.kill());
const port = await new Promise<number>((resolve) =>
  server.stdout.on('data', (data: Buffer) => {
    const [, found] = /127\.0\.0\.1:(\d+)/.exec(data.toString()) ?? [];
    if (found !== undefined) resolve(Number(found));
  }),
);

/** One member's phone, with its own address. */
const phone = async (name: string, localAddress: string, keeper = false) => {
  const agent = new Agent({ keepAlive: true, maxSockets: 30 });
  let cookie = '';
  const ask = (method: string, path: string, body?: object): Promise<{ status: number; text: string }> =>
    new Promise((resolve) => {
      const host = `127.0.0.1:${port}`;
      const headers = { host, origin: `http://${host}`, cookie, 'content-type': 'application/json' };
      const sent = request({ agent, host: '127.0.0.1', localAddress, port, method, path, headers }, (got) => {
        let text = '';
        got.on('data', (data) => (text += String(data)));
        got.on('end', () => {
          for (const line of got.headers['set-cookie'] ?? []) cookie += `${line.split(';')[0] ?? ''}; `;
          resolve({ status: got.statusCode ?? 0, text });
        });
      });
      // A kept-alive connection may be closed just as it is used.
      sent.on('error', () => resolve({ status: 0, text: '' }));
      sent.end(body && JSON.stringify(body));
    });
  await ask('POST', '/api/sign-in', { name, keeper });
  const say = (line: string) => ask('POST', '/api/say', { id: randomBytes(16).toString('hex'), line });
  return { ask, say };
};

// A keeper may run the most commands. Each load has a new member, so that no debt carries over.
let hog = await phone('Hog', '127.0.0.1', true);
const other = await phone('Other', '127.0.0.2');

const words = Array.from({ length: 700 }, (_, i) => `glaze${i} pinhole thick`).join(' ');
const typed = { bucket: 'g'.repeat(190) };

/** Requests that an attacker, or a faulty phone, could repeat. */
const loads: Record<string, () => Promise<{ status: number; text: string }>> = {
  'nothing at all': async () => ({ status: 200, text: '' }),
  'a bucket’s name of 4,900 characters': () => hog.say(`/water-or-stir bucket:${'gull '.repeat(980)}`),
  'a bucket’s name of 190': () => hog.say(`/water-or-stir bucket:"${'gull grey '.repeat(19)}"`),
  'a question of 4,900 characters': () => hog.say(`/ask question:"${words.slice(0, 4_900)}"`),
  'a recipe of 1,900': () =>
    hog.say(`/batch plan recipe:"${'feldspar 40, '.repeat(39)}" gravity:1.44 volume:15l`),
  'a line of options that there are none of': () => hog.say(`/reading ${'wieght: '.repeat(600)}`),
  'the longest log': () => hog.say('/bucket log bucket:1 most:200'),
  'a bucket’s card': () => hog.say('/bucket show bucket:1'),
  'a chart': async () => {
    const { text } = await hog.say('/bucket show bucket:1');
    const { no } = JSON.parse(text) as { no?: number };
    return no === undefined ? { status: 429, text } : hog.ask('GET', `/api/post/${no}/chart.svg`);
  },
  'all faults': () => hog.say('/faults'),
  'everything as a file': () => hog.say('/export'),
  'the page': () => hog.ask('GET', '/'),
  'the wall': () => hog.ask('GET', '/api/board'),
  suggestions: () => hog.ask('POST', '/api/suggest', { path: ['reading'], typed, option: 'bucket' }),
  completions: () => hog.ask('POST', '/api/complete', { line: `/reading bucket:${'g'.repeat(190)}` }),
  readings: () => hog.say('/reading bucket:1 gravity:1.44 seconds:14 stirred:yes'),
};

let hogs = 0;
const at = (values: readonly number[], part: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(part * values.length))] ?? NaN;
const wanted = process.argv.slice(2).filter((word) => !word.startsWith('--'))[1];

for (const [name, load] of Object.entries(loads)) {
  if (wanted !== undefined && !name.includes(wanted)) continue;
  hog = await phone(`Hog ${String.fromCharCode(97 + (hogs += 1))}`, '127.0.0.1', true);
  const alone = performance.now();
  await load();
  const cost = performance.now() - alone;
  const counted: Record<number, number> = {};
  const took: number[] = [];
  const underWay: Promise<void>[] = [];
  let going = true;
  const hogging = (async () => {
    for (; going; await sleep(1_000 / A_SECOND))
      underWay.push(
        load().then(
          ({ status }) => void (counted[status] = (counted[status] ?? 0) + 1),
          () => undefined,
        ),
      );
  })();
  for (const ends = performance.now() + SECONDS * 1_000; performance.now() < ends; await sleep(100)) {
    const began = performance.now();
    const { status } = await other.say('/water-or-stir lichen');
    if (status === 200) took.push(performance.now() - began);
  }
  going = false;
  await hogging;
  await Promise.race([Promise.all(underWay), sleep(5_000)]);
  const statuses = Object.entries(counted).map(([status, times]) => `${status}: ${times}`);
  const [p50, p99, worst] = [0.5, 0.99, 1].map((part) => at(took, part).toFixed(0));
  console.log(
    `${name.padEnd(42)} once ${cost.toFixed(0).padStart(5)} ms; another's p50 ${p50}, p99 ${p99}, worst ${worst} ms; ${statuses.join(', ')}`,
  );
  await sleep(500);
}
console.log('aim: another’s p99 is at most 50 ms');
server.removeAllListeners('exit');
server.kill();
await new Promise((resolve) => server.once('exit', resolve));
rmSync(folder, { recursive: true });
