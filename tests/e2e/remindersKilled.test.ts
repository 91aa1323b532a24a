import { once } from 'node:events';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { systemClock } from '../../src/clock.ts';
import { openStore } from '../../src/store/openStore.ts';
import { DiscordDouble } from '../helpers/discord/discordDouble.ts';
import { openReminderStudio } from '../helpers/room/reminderStudio.ts';
import { runBuilt } from '../helpers/runBuilt.ts';
import { storeFile } from '../helpers/store/storeFile.ts';

const KILLS = 20;
const COATS = 150;
const SETS_IN = 15 * 60_000;
/** Longer than what failed twice is put off: 15 s, then 30 s. */
const patience = 90_000;

let discord: DiscordDouble;

beforeEach(async () => {
  discord = await DiscordDouble.start();
});
afterEach(() => discord.stop());

/** Reminders in the Discord stand-in, by the pieces that they name. */
const shown = (): string[] =>
  [...discord.world.messages.values()].map(({ message }) => /bowl \d+/.exec(message.content)?.[0] ?? '?');

/** Wax coats that become ready one after another from now on. */
const coats = async (file: string): Promise<void> => {
  const store = await openStore(file, { clock: systemClock });
  const { say, studio } = await openReminderStudio(store, discord.world.guildId);
  const member = await store.people.memberOf(studio, 'discord', discord.person('Mara').id, 'Mara');
  const start = systemClock.now();
  await say(member, start - SETS_IN, '/studio reminders quiet:none', 'keeper');
  for (let n = 1; n <= COATS; n += 1)
    await say(member, start - SETS_IN + n * 40, `/coat on kind:hot-wax pieces:"bowl ${n}"`);
  await store.close();
};

test(`each reminder comes once, though the program is killed ${KILLS} times while it says them`, async () => {
  const file = storeFile();
  await coats(file);
  const start = () =>
    runBuilt({
      DISCORD_TOKEN: discord.token,
      DISCORD_API: discord.api,
      DATABASE_FILE: file,
      ROOM: 'off',
    });
  for (let life = 0; life < KILLS; life += 1) {
    const until = shown().length + 1 + ((life * 7) % 6);
    const { child, said } = start();
    // The worst moment: Discord has the message, but the program has not heard so.
    await discord
      .until(() => shown().length >= until, `${until} reminders`, patience)
      .catch((error: unknown) => {
        throw new Error(`life ${life}, exit ${child.exitCode}: ${said.join('')}`, { cause: error });
      });
    child.kill('SIGKILL');
    await once(child, 'exit');
  }
  const { child, said } = start();
  await discord
    .until(() => new Set(shown()).size === COATS, 'all of them', patience)
    .catch((error: unknown) => {
      throw new Error(`${new Set(shown()).size} shown, exit ${child.exitCode}: ${said.join('')}`, {
        cause: error,
      });
    });
  await sleep(1_000);
  child.kill('SIGTERM');
  await once(child, 'exit');

  const posts = discord.calls.filter(({ method, path }) => method === 'POST' && path.endsWith('/messages'));
  // Some must have been sent again, or the test would prove nothing.
  expect(posts.length).toBeGreaterThan(COATS);
  expect(shown().toSorted()).toEqual(Array.from({ length: COATS }, (_, i) => `bowl ${i + 1}`).toSorted());
  expect(discord.problems).toEqual([]);
}, 600_000);
