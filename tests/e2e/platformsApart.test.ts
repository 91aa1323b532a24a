import type { ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { openApp } from '../../src/start/app.ts';
import { systemClock } from '../../src/clock.ts';
import { DiscordDouble } from '../helpers/discord/discordDouble.ts';
import { slash, type Place } from '../helpers/discord/discordInteraction.ts';
import { runBuilt } from '../helpers/runBuilt.ts';

let discord: DiscordDouble;
let api: string;
let keeper: Place;
let folder: string;
let child: ChildProcess | undefined;
let said: string[];

beforeEach(async () => {
  discord = await DiscordDouble.start();
  ({ api } = discord);
  keeper = { by: discord.person('Ilse', { manages: true }), channel: discord.channel() };
  folder = await mkdtemp(join(tmpdir(), 'glaze-room-'));
});

afterEach(async () => {
  if (child?.exitCode === null) {
    child.kill('SIGKILL');
    await once(child, 'exit');
  }
  await discord.stop();
  await rm(folder, { recursive: true });
});

const file = () => join(folder, 'studio.db');

/** Creates the server's studio, so that the room can start beside Discord. */
const knownStudio = async (): Promise<void> => {
  const app = await openApp({ file: file(), clock: systemClock, onBug: () => undefined });
  await app.store.people.studioOf('discord', discord.world.guildId, 'Wrackline Clay Co-op');
  await app.store.close();
};

const start = (env: Record<string, string> = {}): void => {
  ({ child, said } = runBuilt({
    DISCORD_TOKEN: discord.token,
    DISCORD_API: api,
    DATABASE_FILE: file(),
    ROOM_PORT: '0',
    ...env,
  }));
};

const hears = (words: RegExp) => expect.poll(() => said.join('')).toMatch(words);
const roomAt = (): string => /the room is at (\S+)/.exec(said.join(''))?.[1] ?? '';

/** A Discord API that answers, and a gateway that closes every connection. */
const deafGateway = async () => {
  const seen = { asked: 0, tried: 0 };
  const server = createServer((_request, response) => {
    seen.asked += 1;
    const limit = { total: 1000, remaining: 999, reset_after: 86_400_000, max_concurrency: 1 };
    response.writeHead(200, { 'content-type': 'application/json' });
    response.end(JSON.stringify({ url: `ws://127.0.0.1:${port}`, shards: 1, session_start_limit: limit }));
  });
  server.on('upgrade', (_request, socket) => {
    seen.tried += 1;
    socket.destroy();
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  const close = () => {
    server.closeAllConnections();
    server.close();
  };
  return { seen, port, api: `http://127.0.0.1:${port}/api`, close };
};

test('a room lives on while Discord cannot be reached, with the passcode that it showed, and Discord is connected when it can be', async () => {
  await knownStudio();
  await discord.unreachable(async () => {
    start();
    await hears(/Discord cannot be reached/);
    await hears(/the room is at/);
    expect(said.join('')).toMatch(/passcode, for joining/);
    expect((await fetch(roomAt())).status).toBe(200);
  });
  await discord.until(() => discord.gateway.connected, 'the bot to connect');
  const help = await discord.reply(slash(keeper, ['help']));
  expect(help.message.content).not.toMatch(/went wrong/);
  expect((await fetch(roomAt())).status).toBe(200);
});

test('a gateway that takes no connection is given up, and nothing of the attempt goes on beside the next', async () => {
  const { seen, api: deaf, close } = await deafGateway();
  start({ DISCORD_API: deaf, ROOM: 'off' });
  await hears(/Discord cannot be reached/);
  const before = { ...seen };
  await expect.poll(() => seen.asked).toBe(before.asked + 2);
  // Each of our connections includes six tries of the client's own.
  expect(seen.tried - before.tried).toBeLessThanOrEqual(12);
  child?.kill('SIGTERM');
  const [code]: unknown[] = child ? await once(child, 'exit') : [];
  expect(code).toBe(0);
  close();
});

test('a wrong token is said in a sentence, and the room goes on', async () => {
  await knownStudio();
  start({ DISCORD_TOKEN: 'not-a-token-that-is-right' });
  await hears(/Discord refuses the token in DISCORD_TOKEN.*The room keeps running without Discord/);
  await hears(/the room is at/);
  expect((await fetch(roomAt())).status).toBe(200);
  expect(child?.exitCode).toBeNull();
});

test('a port that is taken leaves Discord as it is', async () => {
  await knownStudio();
  const { port, close } = await deafGateway();
  start({ ROOM_PORT: String(port) });
  await hears(new RegExp(`port ${port} is in use`));
  await discord.until(() => discord.gateway.connected, 'the bot to connect');
  await discord.reply(slash(keeper, ['help']));
  close();
  await hears(/the room is at/);
});
