import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openApp } from '../../src/start/app.ts';
import { instant } from '../../src/studio/ids.ts';
import { percentile } from './load.ts';

/** How long a keeper waits for the round of forty buckets that all need something, with questions, coats and a log. */
const BUCKETS = 40;
const ROUNDS = process.argv.includes('--quick') ? 20 : 100;
const AIM = 100;

const folder = mkdtempSync(join(tmpdir(), 'bench-round-'));
const start = Date.UTC(2026, 2, 1, 12);
const app = await openApp({
  file: join(folder, 'studio.db'),
  clock: { now: () => instant(start) },
  onBug: (error) => {
    throw error;
  },
});
const studio = await app.store.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
const member = await app.store.people.memberOf(studio, 'terminal', 'Tove', 'Tove');
let lines = 0;
const run = (path: string[], typed: Record<string, string>, minutes: number) =>
  app.desk.dispatch({
    key: `bench:${++lines}`,
    studio,
    member,
    role: 'keeper',
    now: instant(start + minutes * 60_000),
    path,
    typed,
  });

for (let n = 1; n <= BUCKETS; n += 1) {
  await run(
    ['bucket', 'add'],
    { name: `Bench Glaze ${n}`, pail: '19l', volume: '15l', gravity: '1.42-1.46' },
    0,
  );
  for (let at = 1; at <= 12; at += 1) {
    const bucket = String(n);
    await run(['stirred'], { bucket }, at * 60);
    await run(
      ['reading'],
      { bucket, gravity: n % 2 === 0 ? '1.44' : '1.52', look: 'right', stirred: 'yes' },
      at * 60,
    );
  }
  await run(['ask'], { question: `banana bread with walnuts, recipe ${n}` }, 12 * 60);
  await run(['coat', 'on'], { kind: 'tape', pieces: `${n} bowls` }, 12 * 60);
}

/** The time on a busy machine, and the processor's own, which other programs do not add to. */
const measure = async (what: string, path: string[]): Promise<void> => {
  const took: number[] = [];
  const worked: number[] = [];
  for (let n = 0; n < ROUNDS; n += 1) {
    const [began, before] = [performance.now(), process.cpuUsage()];
    const reply = await run(path, {}, 9 * 24 * 60 + n);
    const { user, system } = process.cpuUsage(before);
    took.push(performance.now() - began);
    worked.push((user + system) / 1000);
    if (reply.kind !== 'answer') throw new Error(JSON.stringify(reply.title));
  }
  const ms = (all: readonly number[], part: number) => `${percentile(all, part).toFixed(1)} ms`;
  console.log(
    `${what}: the first ${(took[0] ?? 0).toFixed(1)} ms, then ${ms(took, 0.5)}, ${ms(took, 0.95)} for 95 in 100 (aim: ${AIM} ms); of the processor ${ms(worked, 0.5)}, ${ms(worked, 0.95)}`,
  );
  if (percentile(worked, 0.95) > AIM) process.exitCode = 1;
};
await measure(`the round of ${BUCKETS} buckets`, ['round']);
await measure('a page of the log of all buckets', ['bucket', 'log']);
await app.store.close();
rmSync(folder, { recursive: true });
