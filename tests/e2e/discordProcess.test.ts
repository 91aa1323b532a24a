import type { ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { text } from '../helpers/discord/discordBody.ts';
import { DiscordDouble } from '../helpers/discord/discordDouble.ts';
import { type Place, press, slash, submit, typing } from '../helpers/discord/discordInteraction.ts';
import { everyComponent } from '../helpers/discord/discordMessageRules.ts';
import { renderPdf } from '../helpers/labels/renderPdf.ts';
import { runBuilt } from '../helpers/runBuilt.ts';

let discord: DiscordDouble;
let keeper: Place;
let member: Place;
let folder: string;
let child: ChildProcess;
let said: string[];

beforeEach(async () => {
  discord = await DiscordDouble.start();
  const channel = discord.channel();
  keeper = { by: discord.person('Ilse', { manages: true }), channel };
  member = { by: discord.person('Mara'), channel };
  folder = await mkdtemp(join(tmpdir(), 'glaze-room-'));
  await start();
});

afterEach(async () => {
  if (child.exitCode === null) {
    child.kill('SIGKILL');
    await once(child, 'exit');
  }
  await discord.stop();
  await rm(folder, { recursive: true });
  expect(discord.problems).toEqual([]);
});

/** Waits for its identify message: the socket of a killed process may stay open for a moment. */
const start = async (): Promise<void> => {
  const { identifies } = discord.gateway;
  const before = identifies.length;
  ({ child, said } = runBuilt({
    DISCORD_TOKEN: discord.token,
    DISCORD_API: discord.api,
    DATABASE_FILE: join(folder, 'studio.db'),
    ROOM: 'off',
  }));
  await discord.until(
    () => identifies.length > before && discord.gateway.connected,
    'the bot to connect',
    20_000,
  );
};

const exit = async (): Promise<unknown> => {
  if (child.exitCode !== null) return child.exitCode;
  const [code]: unknown[] = await once(child, 'exit');
  return code;
};

const GULL_GREY = {
  name: 'Gull Grey',
  nick: 'gg',
  pail: '19l',
  volume: '15l',
  gravity: '1.42-1.46',
  seconds: '12-16',
  cup: 'ford4',
};

describe('the whole program on Discord', () => {
  test('sets a bucket up, reads it, and carries out what it advised', async () => {
    const added = await discord.reply(slash(keeper, ['bucket', 'add'], GULL_GREY));
    expect(added.message.content).toMatch(/Gull Grey/);
    const opened = await discord.use(slash(member, ['reading']));
    const read = await discord.reply(submit(member, opened, { weight: '', stirred: 'yes', seconds: '20' }));
    expect(read.message.content).toMatch(/^Gull Grey/);
    const asked = await discord.reply(
      slash(member, ['reading'], { bucket: 'gg', gravity: '1.55', seconds: '20', stirred: true }),
    );
    expect(asked.ephemeral).toBe(false);
    const before = discord.messagesIn(member.channel.id).length;
    const labels = everyComponent(asked.message.components).map((one) => text(one['label']));
    const label = labels.find((one) => one.startsWith('I poured')) ?? '';
    const pressed = await discord.use(press(member, asked, label));
    await discord.until(() => pressed.followUps.length === 1, 'the addition');
    expect(discord.messagesIn(member.channel.id)).toHaveLength(before + 1);
    const completed = await discord.use(typing(member, ['water-or-stir'], 'bucket', { bucket: 'gu' }));
    expect(JSON.stringify(completed.acknowledged)).toContain('Gull Grey');
  });

  test('draws a bucket’s chart as a picture with its description', async () => {
    await discord.reply(slash(keeper, ['bucket', 'add'], GULL_GREY));
    for (const gravity of ['1.50', '1.47'])
      await discord.reply(
        slash(member, ['reading'], { bucket: 'gg', gravity, seconds: '14', stirred: true }),
      );
    const shown = await discord.reply(slash(member, ['bucket', 'show'], { bucket: 'gg' }));
    expect(shown.message.attachments).toMatchObject([{ filename: 'chart.png', content_type: 'image/png' }]);
    expect(shown.message.attachments[0]?.description).toMatch(/\w/);
    // The PNG signature (ISO/IEC 15948, 5.2).
    expect([...(shown.files[0]?.bytes.slice(0, 8) ?? [])]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
  });

  test('sends a sheet of labels as a PDF, with the line to type where there is no room', async () => {
    await discord.reply(slash(keeper, ['bucket', 'add'], GULL_GREY));
    const sheet = await discord.reply(slash(keeper, ['bucket', 'labels'], { paper: 'letter' }));
    expect(sheet.message.attachments).toMatchObject([
      { filename: 'labels-letter.pdf', content_type: 'application/pdf' },
    ]);
    const [page] = await renderPdf(Buffer.from(sheet.files[0]?.bytes ?? []).toString('latin1'));
    expect(page?.texts.map(({ text: printed }) => printed)).toEqual(
      expect.arrayContaining(['1', 'Gull Grey “gg”', '/reading', 'bucket:1']),
    );
  });

  test('registers its commands once, however often it is started', async () => {
    const registered = () => discord.calls.filter(({ method }) => method === 'PUT').length;
    await discord.until(() => registered() === 1, 'the registration');
    child.kill('SIGTERM');
    expect(await exit()).toBe(0);
    await start();
    await discord.reply(slash(keeper, ['help']));
    expect(registered()).toBe(1);
  });

  test('killed in the middle keeps what it had answered', async () => {
    await discord.reply(slash(keeper, ['bucket', 'add'], GULL_GREY));
    await discord.reply(slash(member, ['reading'], { bucket: 'gg', gravity: '1.50', stirred: true }));
    child.kill('SIGKILL');
    await exit();
    await start();
    const log = await discord.reply(slash(member, ['bucket', 'log'], { bucket: 'gg' }));
    expect(log.message.content).toMatch(/1\.50/);
  });

  test('connects anew when Discord has closed the connection for good, and says so', async () => {
    await discord.reply(slash(keeper, ['help']));
    const { identifies } = discord.gateway;
    discord.gateway.close(4014);
    await discord.until(() => identifies.length === 2 && discord.gateway.connected, 'a new connection');
    await discord.reply(slash(keeper, ['help']));
    expect(said.join('')).toMatch(/4014.*Discord ended the connection/);
    expect(child.exitCode).toBeNull();
  });

  test('says in a sentence that the token is wrong, when there is nothing else to run', async () => {
    child.kill('SIGTERM');
    await exit();
    ({ child, said } = runBuilt({
      DISCORD_TOKEN: 'not-a-token-that-is-right',
      DISCORD_API: discord.api,
      DATABASE_FILE: join(folder, 'studio.db'),
      ROOM: 'off',
    }));
    expect(await exit()).toBe(2);
    expect(said.join('')).toMatch(/^Discord refuses the token.*\n$/);
  });

  test('outlives what the client cannot read: it is written down once and skipped', async () => {
    const about = { v: 10, t: 'INTERACTION_CREATE', op: 0 };
    for (const bad of ['{"op":0,"t":', '[]', 'null', JSON.stringify({ ...about, s: 3, d: null })])
      for (let times = 0; times < 3; times += 1) discord.gateway.say(bad);
    await discord.reply(slash(keeper, ['help']));
    expect(child.exitCode).toBeNull();
    const lines = said.join('').split('\n');
    const messages = lines
      .filter((line) => /"level":50/.test(line))
      .map((line) => /"message":"([^"]*)/.exec(line)?.[1]);
    expect(messages.length).toBeGreaterThan(0);
    expect(new Set(messages).size).toBe(messages.length);
  });

  test('ends at the first signal, also while it tries to connect', async () => {
    child.kill('SIGTERM');
    await exit();
    discord.gateway.refusing = 4014;
    const before = discord.gateway.identifies.length;
    ({ child, said } = runBuilt({
      DISCORD_TOKEN: discord.token,
      DISCORD_API: discord.api,
      DATABASE_FILE: join(folder, 'studio.db'),
      ROOM: 'off',
    }));
    await discord.until(() => discord.gateway.identifies.length > before, 'an attempt');
    child.kill('SIGTERM');
    expect(await exit()).toBe(0);
  });

  test('outlives a session that ends in the moment of its resumption', async () => {
    await discord.reply(slash(keeper, ['help']));
    const tripped = () => /ended just after it was resumed/.test(said.join(''));
    discord.gateway.onResumed = () => discord.gateway.invalidateSession(false);
    // Whether the client fails depends on timing, so on a busy machine it may need several attempts.
    for (let tries = 0; tries < 4 && !tripped(); tries += 1) {
      const known = discord.gateway.identifies.length;
      discord.gateway.dropSocket();
      await discord.until(() => discord.gateway.identifies.length > known, 'a new session', 20_000);
      await discord.reply(slash(keeper, ['help']));
      expect(child.exitCode).toBeNull();
    }
    expect(tripped()).toBe(true);
  });

  test('writes no token of Discord’s into its log', async () => {
    discord.plant(
      { refuse: { status: 400, body: { code: 50035, message: 'Invalid Form Body' } } },
      ({ path }) => path.includes('/callback'),
      2,
    );
    const used = discord.deliver(slash(keeper, ['help']));
    await expect.poll(() => said.join('')).toMatch(/refused a reply/);
    expect(said.join('')).not.toContain(used.token);
    expect(said.join('')).not.toContain(discord.token);
  });
});
