import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import Sqlite from 'better-sqlite3';
import { systemClock } from '../../src/clock.ts';
import { openStore } from '../../src/store/openStore.ts';
import { instant, later, minutes } from '../../src/studio/ids.ts';
import { DiscordDouble } from '../helpers/discord/discordDouble.ts';
import { openReminderStudio } from '../helpers/room/reminderStudio.ts';
import { percentile } from './load.ts';

/**
 * A million pending reminders, then many that are due at one moment: the cost of a look when nothing is due, and the
 * delay of the last one. Discord's client sends at most 50 requests a second; a reminder takes two, one to open the
 * direct channel and one to write in it.
 */
const quick = process.argv.includes('--quick');
const WAITING = 1_000_000;
const STUDIOS = quick ? 10 : 100;
const COATS = 100;
const LOOKS = 5_000;
const SETS_IN = minutes(15);

const folder = mkdtempSync(join(tmpdir(), 'bench-reminders-'));
const file = join(folder, 'studio.db');
const discord = await DiscordDouble.start({ lean: true });

const fill = async (): Promise<void> => {
  const store = await openStore(file, { clock: systemClock });
  const studio = await store.people.studioOf('discord', 'waiting', 'Waiting');
  await store.close();
  const sqlite = new Sqlite(file);
  const now = systemClock.now();
  sqlite
    .prepare(
      `insert into reminders (studio_id, member_id, key, subject, about, status, due_at, next_at, good_until,
         nonce, claimed, tries)
       with recursive n(i) as (select 1 union all select i + 1 from n where i < ?)
       select ?, 'm-' || (i % 400), 'c-' || i || '-ready', 'c-' || i, '{"kind":"ready","coat":' || i || '}',
         'pending', ? + i, ? + i, ? + i, 'nonce-' || i, 0, 0 from n`,
    )
    .run(WAITING, studio, now + 86_400_000, now + 86_400_000, now + 10 * 86_400_000);
  sqlite.close();
};

const looks = async (): Promise<number[]> => {
  const store = await openStore(file, { clock: systemClock });
  const took: number[] = [];
  for (let n = 0; n < LOOKS; n += 1) {
    const began = performance.now();
    const now = systemClock.now();
    const due = await store.reminders.claim(now, later(now, minutes(2)), 20);
    took.push(performance.now() - began);
    if (due.length > 0) throw new Error('something was due');
  }
  await store.close();
  return took;
};

/** Wax coats that are all ready at one moment. */
const coats = async (readyAt: number): Promise<void> => {
  const store = await openStore(file, { clock: systemClock });
  for (let n = 0; n < STUDIOS; n += 1) {
    const { say, studio } = await openReminderStudio(store, `guild-${n}`);
    const keeper = await store.people.memberOf(studio, 'discord', `keeper-${n}`, 'Tove');
    await say(keeper, readyAt - SETS_IN, '/studio reminders quiet:none', 'keeper');
    await Promise.all(
      Array.from({ length: COATS }, async () => {
        const { id } = discord.person('Potter');
        const member = await store.people.memberOf(studio, 'discord', id, 'Potter');
        await say(member, readyAt - SETS_IN, '/coat on kind:hot-wax pieces:"3 bowls"');
      }),
    );
  }
  await store.close();
};

const resident = (pid: number | undefined): number =>
  Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024;

const fillBegan = performance.now();
await fill();
console.log(
  `${WAITING} reminders that wait, written in ${((performance.now() - fillBegan) / 1000).toFixed(1)} s`,
);
const took = await looks();
console.log(
  `a look when nothing is due: p50 ${percentile(took, 0.5).toFixed(3)} ms, p99 ${percentile(took, 0.99).toFixed(3)} ms (aim: 1 ms)`,
);

const due = STUDIOS * COATS;
const readyAt = instant(systemClock.now() + due * 3 + 5_000);
await coats(readyAt);
const child = spawn(process.execPath, [fileURLToPath(new URL('../../dist/run/main.js', import.meta.url))], {
  stdio: ['ignore', 'ignore', 'inherit'],
  env: {
    PATH: process.env['PATH'],
    TZ: 'UTC',
    NODE_ENV: 'production',
    LOG_LEVEL: 'error',
    ROOM: 'off',
    DISCORD_API: discord.api,
    DISCORD_TOKEN: discord.token,
    DATABASE_FILE: file,
  },
});
await discord.until(() => discord.gateway.connected, 'the bot to connect', 60_000);
await sleep(Math.max(0, readyAt - systemClock.now()));
const sent = () => discord.world.messages.size;
const memory: number[] = [];
while (sent() < due) {
  await sleep(1_000);
  if (sent() > due * 0.05) memory.push(resident(child.pid));
}
await sleep(2_000);
const lateness = [...discord.world.messages.values()].map(
  ({ message }) => (Date.parse(message.timestamp) - readyAt) / 1000,
);
const last = Math.max(...lateness);
console.log(`${due} due at one moment: ${sent()} sent, ${(due / last).toFixed(1)} a second`);
console.log(
  `late by p50 ${percentile(lateness, 0.5).toFixed(1)} s, p99 ${percentile(lateness, 0.99).toFixed(1)} s, the last ${last.toFixed(1)} s`,
);
const quarters = [0, 0.25, 0.5, 0.75, 1].map(
  (part) => memory[Math.min(memory.length - 1, Math.floor(part * memory.length))] ?? 0,
);
console.log(`memory while sending, by quarters: ${quarters.map((mib) => mib.toFixed(0)).join(', ')} MiB`);
child.kill('SIGTERM');
await once(child, 'exit');
await discord.stop();
rmSync(folder, { recursive: true });
if (sent() !== due) process.exitCode = 1;
