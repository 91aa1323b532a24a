import { expect, test } from 'vitest';
import { DiscordDouble } from '../../helpers/discord/discordDouble.ts';
import { slash } from '../../helpers/discord/discordInteraction.ts';
import { ask, runProgram } from '../../helpers/operating.ts';
import { Phone, gullGrey } from '../../helpers/room/roomServer.ts';

const token = '9f4c1f0a7d3be58266d10c7ab94e3f5d8e21a6bb703c95f4d2e8170c6a5b39ef';
const bearer = (given: string) => ({ headers: { authorization: `Bearer ${given}` } });

const json = (text: string): unknown => JSON.parse(text);

test('a program that works says so, and what nobody wants is no trouble', async () => {
  const program = runProgram();
  const port = await program.monitorPort();
  await program.roomPort();
  const { status, type, text } = await ask(port, '/healthz');
  expect([status, type]).toEqual([200, 'application/json']);
  expect(json(text)).toEqual({
    ready: true,
    parts: { store: 'ok', discord: 'off', room: 'ok', reminders: 'ok' },
    wrong: [],
  });
  expect((await ask(port, '/healthz', { method: 'HEAD' })).text).toBe('');
  expect((await ask(port, '/elsewhere')).status).toBe(404);
  expect((await ask(port, '/metrics', { method: 'POST' })).status).toBe(405);
});

test('without Discord the program is not ready, says what is wrong, and is ready again when Discord is back', async () => {
  const discord = await DiscordDouble.start();
  const env = { DISCORD_TOKEN: discord.token, DISCORD_API: discord.api, ROOM: 'off' };
  const program = runProgram(env);
  const port = await program.monitorPort();
  await expect.poll(async () => (await ask(port, '/healthz')).status).toBe(200);
  expect((await ask(port, '/metrics')).text).toContain('\nglaze_room_discord_connected 1\n');
  await discord.unreachable(async () => {
    discord.gateway.dropSocket();
    await expect.poll(async () => (await ask(port, '/healthz')).status).toBe(503);
    expect(json((await ask(port, '/healthz')).text)).toEqual({
      ready: false,
      parts: { store: 'ok', discord: 'wrong', room: 'off', reminders: 'ok' },
      wrong: ['Discord is not connected; the log says why.'],
    });
    expect((await ask(port, '/metrics')).text).toContain('\nglaze_room_discord_connected 0\n');
  });
  await expect.poll(async () => (await ask(port, '/healthz')).status, { timeout: 60_000 }).toBe(200);
  await discord.stop();
});

test('what happens is counted by command, kind and platform, and nobody’s name or word is among it', async () => {
  const discord = await DiscordDouble.start();
  const program = runProgram({ DISCORD_TOKEN: discord.token, DISCORD_API: discord.api, ROOM: 'on' });
  const port = await program.monitorPort();
  await discord.until(() => discord.gateway.connected, 'the bot to connect');
  const keeper = { by: discord.person('Ilse', { manages: true }), channel: discord.channel() };
  await discord.reply(
    slash(keeper, ['bucket', 'add'], { name: 'Plumtide', nick: 'pt', gravity: '1.42-1.46' }),
  );
  await discord.reply(slash(keeper, ['stirred'], { bucket: 'Plumtide' }));
  await discord.reply(slash(keeper, ['stirred'], { bucket: 'nosuchpail' }));
  const { type, text } = await ask(port, '/metrics');
  expect(type).toBe('text/plain; version=0.0.4; charset=utf-8');
  expect(text).toContain(
    'glaze_room_commands_total{command="bucket add",kind="answer",platform="discord"} 1\n',
  );
  expect(text).toContain('glaze_room_commands_total{command="stirred",kind="answer",platform="discord"} 1\n');
  expect(text).toContain(
    'glaze_room_commands_total{command="stirred",kind="refusal",platform="discord"} 1\n',
  );
  expect(text).toContain('glaze_room_command_seconds_count{command="stirred"} 2\n');
  expect(text).toMatch(/glaze_room_store_wait_seconds_count\{work="write"\} [1-9]/);
  expect(text).not.toMatch(/Plumtide|nosuchpail|Ilse/);
  for (const { id } of discord.world.people.values()) expect(text).not.toContain(id);
  await discord.stop();
});

test('phones that listen, and requests that are refused, are counted', async () => {
  const program = runProgram();
  const [port, roomPort] = [await program.monitorPort(), await program.roomPort()];
  const said = program.said.join('');
  const [, keeper = ''] = /#keeper=([\w-]+)/.exec(said) ?? [];
  const phone = new Phone(roomPort);
  expect((await phone.get('/api/board')).status).toBe(401);
  const signed = await phone.signIn({
    name: 'Odile',
    secret: 'a bucket of nine eels',
    code: keeper,
    keeper: true,
  });
  expect(signed.status).toBe(200);
  await phone.say(gullGrey);
  const listening = await phone.listen();
  const { text } = await ask(port, '/metrics');
  expect(text).toContain('\nglaze_room_phones_listening 1\n');
  expect(text).toContain('glaze_room_refused_requests_total{status="401"} 1\n');
  expect(text).toContain('glaze_room_commands_total{command="bucket add",kind="answer",platform="room"} 1\n');
  listening.message.destroy();
});

test('with a token nobody reads anything without it, from this machine neither', async () => {
  const program = runProgram({ MONITOR_TOKEN: token });
  const port = await program.monitorPort();
  await program.roomPort();
  for (const path of ['/healthz', '/metrics', '/elsewhere']) {
    expect((await ask(port, path)).status).toBe(401);
    expect((await ask(port, path, bearer(token.slice(0, -1)))).status).toBe(401);
    expect((await ask(port, path, bearer(`${token}0`))).status).toBe(401);
  }
  expect((await ask(port, '/healthz', bearer(token))).status).toBe(200);
  expect(program.said.join('')).not.toContain(token);
});

test('a page elsewhere that points its own name here reads nothing', async () => {
  const program = runProgram();
  const port = await program.monitorPort();
  const at = (host: string) => ask(port, '/metrics', { headers: { host } });
  expect((await at(`elsewhere.example:${port}`)).status).toBe(421);
  expect((await at(`localhost:${port}`)).status).toBe(200);
});
