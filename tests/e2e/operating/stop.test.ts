import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { Agent, request, type ClientRequest, type IncomingMessage } from 'node:http';
import { setTimeout as sleep } from 'node:timers/promises';
import { expect, onTestFinished, test } from 'vitest';
import { systemClock } from '../../../src/clock.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { DiscordDouble } from '../../helpers/discord/discordDouble.ts';
import { slash } from '../../helpers/discord/discordInteraction.ts';
import { runProgram, type Program } from '../../helpers/operating.ts';
import { openReminderStudio } from '../../helpers/room/reminderStudio.ts';
import { gullGrey, Phone } from '../../helpers/room/roomServer.ts';
import { storeFile } from '../../helpers/store/storeFile.ts';

/** Its exit code, or that it is still running after the time that a service manager is told to allow. */
const stopped = async ({ child }: Program): Promise<unknown> => {
  child.kill('SIGTERM');
  const exited = once(child, 'exit').then(([code]: unknown[]) => code);
  return Promise.race([exited, sleep(5_000, 'still running', { ref: false })]);
};

/** Sends half of a line; returns how to send the rest, and what comes back. */
const halfSaid = (phone: Phone, port: number, line: string) => {
  const body = JSON.stringify({ id: 'half-0123456789abcdef0123', line });
  const host = `127.0.0.1:${port}`;
  const headers = {
    host,
    origin: `http://${host}`,
    cookie: `room=${phone.cookie('room') ?? ''}`,
    'content-type': 'application/json',
    'content-length': String(Buffer.byteLength(body)),
  };
  const agent = new Agent({ keepAlive: true });
  const sent: ClientRequest = request({
    agent,
    host: '127.0.0.1',
    port,
    method: 'POST',
    path: '/api/say',
    headers,
  });
  const answered = once(sent, 'response') as Promise<[IncomingMessage]>;
  sent.write(body.slice(0, 20));
  return { rest: () => void sent.end(body.slice(20)), answered };
};

const keeperOf = async (program: Program): Promise<Phone> => {
  const phone = new Phone(await program.roomPort());
  const [, code = ''] = /#keeper=([\w-]+)/.exec(program.said.join('')) ?? [];
  const signed = await phone.signIn({ name: 'Odile', secret: 'a bucket of nine eels', code, keeper: true });
  expect(signed.status).toBe(200);
  return phone;
};

test('a request that is under way is answered, phones that listen are let go, and what was logged is there', async () => {
  const program = runProgram();
  const port = await program.roomPort();
  const phone = await keeperOf(program);
  await phone.say(gullGrey);
  const listening = await phone.listen();
  const half = halfSaid(phone, port, '/stirred bucket:gg');
  await sleep(200);
  const ending = stopped(program);
  await sleep(200);
  half.rest();
  const [answer] = await half.answered;
  expect(answer.statusCode).toBe(200);
  answer.resume();
  expect(await ending).toBe(0);
  expect(listening.message.complete).toBe(true);
  const store = await openStore(program.file, { clock: systemClock });
  const [studio] = await store.people.studios();
  if (!studio) throw new Error('no studio');
  const [bucket] = await store.books.read(studio.id, (book) => book.buckets());
  expect(bucket?.stir).toBeDefined();
  await store.close();
});

test('phones that never finish what they send do not keep it up', async () => {
  const program = runProgram();
  const port = await program.roomPort();
  const phone = await keeperOf(program);
  const half = halfSaid(phone, port, '/help');
  half.answered.catch(() => undefined);
  await sleep(200);
  expect(await stopped(program)).toBe(0);
});

test('ending npm, whose shell passes no signal on, ends the program that it started', async () => {
  const file = storeFile();
  // A process group of its own, so that a program left behind can be ended.
  const npm = spawn('npm', ['start'], {
    detached: true,
    stdio: ['ignore', 'pipe', 'ignore'],
    env: { PATH: process.env['PATH'], TZ: 'UTC', DATABASE_FILE: file, ROOM_PORT: '0', MONITOR_PORT: 'off' },
  });
  const { pid } = npm;
  if (pid === undefined) throw new Error('npm did not start');
  const groupIsThere = (signal: 0 | 'SIGKILL') => {
    try {
      return process.kill(-pid, signal);
    } catch {
      return false;
    }
  };
  onTestFinished(() => void groupIsThere('SIGKILL'));
  let said = '';
  npm.stdout.on('data', (data) => (said += String(data)));
  await expect.poll(() => said, { timeout: 60_000 }).toMatch(/the room is at/);
  expect(groupIsThere(0)).toBe(true);
  npm.kill('SIGTERM');
  await expect.poll(() => groupIsThere(0)).toBe(false);
  const again = await openStore(file, { clock: systemClock });
  await again.close();
});

test('a Discord that answers nothing any more does not keep it up: commands, reminders, and the connection hang', async () => {
  const discord = await DiscordDouble.start();
  const file = storeFile();
  const store = await openStore(file, { clock: systemClock });
  const { say } = await openReminderStudio(store, discord.world.guildId);
  const [{ id: studio } = { id: undefined }] = await store.people.studios();
  if (studio === undefined) throw new Error('no studio');
  const mara = discord.person('Mara');
  const member = await store.people.memberOf(studio, 'discord', mara.id, 'Mara');
  const now = systemClock.now();
  await say(member, now - 20 * 60_000, '/studio reminders quiet:none', 'keeper');
  await say(member, now - 20 * 60_000, '/coat on kind:hot-wax pieces:"nine bowls"');
  await store.close();
  discord.plant('hang', ({ path }) => !path.startsWith('/applications'), 1_000);
  const program = runProgram({ DISCORD_TOKEN: discord.token, DISCORD_API: discord.api }, file);
  await discord.until(() => discord.gateway.connected, 'the bot to connect', 20_000);
  const reminding = () =>
    discord.calls.some(({ path }) => path.startsWith('/users/@me') || path.endsWith('/messages'));
  await discord.until(reminding, 'a reminder to hang', 20_000);
  discord.deliver(slash({ by: mara, channel: discord.channel() }, ['help']));
  await discord.until(
    () => discord.calls.some(({ path }) => path.endsWith('/callback')),
    'an answer to hang',
    20_000,
  );
  expect(await stopped(program)).toBe(0);
  const again = await openStore(file, { clock: systemClock });
  await again.close();
  await discord.stop();
});
