import { join } from 'node:path';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openApp } from '../../src/start/app.ts';
import { systemClock } from '../../src/clock.ts';
import { readConfig } from '../../src/start/config.ts';
import { connectDiscord } from '../../src/start/connectDiscord.ts';
import { roomStudio } from '../../src/start/roomStudio.ts';
import { t } from '../../src/words/text/text.ts';
import { DiscordDouble } from '../helpers/discord/discordDouble.ts';
import { press, slash } from '../helpers/discord/discordInteraction.ts';

const token = 'a-token-for-loopback-only';
const stranger = '444444444444444444';

const openFile = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'strangers-'));
  const app = await openApp({
    file: join(folder, 'studio.db'),
    clock: systemClock,
    onBug: (error) => {
      throw error;
    },
  });
  onTestFinished(async () => {
    await app.store.close();
    rmSync(folder, { recursive: true });
  });
  return app;
};

describe('the room’s studio', () => {
  const told: string[] = [];
  const tell = (text: string) => void told.push(text);
  const settings = { ROOM: 'on', ROOM_STUDIO: undefined, DISCORD_TOKEN: token } as const;

  it('stays the same when a stranger adds the bot to a server of their own', async () => {
    const app = await openFile();
    const own = await app.store.people.studioOf('discord', '555555555555555555', 'Elsewhere');
    expect(await roomStudio(app, settings, tell)).toBe(own);
    await app.store.people.studioOf('discord', stranger, 'Elsewhere');
    expect(await roomStudio(app, settings, tell)).toBe(own);
    expect(await roomStudio(app, { ...settings, DISCORD_TOKEN: undefined }, tell)).toBe(own);
    expect(told).toEqual([]);
  });

  it('of a file from before is the one whose room people have come into', async () => {
    const app = await openFile();
    const { people } = app.store;
    await people.studioOf('discord', stranger, 'Elsewhere');
    const own = await people.studioOf('discord', '555555555555555555', 'Elsewhere');
    const member = await people.memberOf(own, 'room', 'wren', 'Wren');
    await app.store.room(own).door.take('wren', { member, name: 'Wren', secret: 'sealed' });
    expect(await roomStudio(app, settings, tell)).toBe(own);
  });

  it('is asked for when nobody can tell, rather than left out without a word', async () => {
    const app = await openFile();
    for (const server of [stranger, '555555555555555555'])
      await app.store.people.studioOf('discord', server, server);
    expect(await roomStudio(app, settings, tell)).toBeUndefined();
    expect(told.join()).toContain('ROOM_STUDIO');
    const named = await roomStudio(app, { ...settings, ROOM_STUDIO: stranger }, tell);
    // Once admitted, a server stays admitted.
    expect(await roomStudio(app, settings, tell)).toBe(named);
  });

  it('is asked for among thousands of servers too, and not all of them are printed', async () => {
    const app = await openFile();
    const several = (from: number) =>
      Promise.all(
        Array.from({ length: 900 }, (_, n) =>
          app.store.people.studioOf('discord', `${from + n}`, 'Elsewhere'),
        ),
      );
    // More than may wait for a turn at the file at once.
    for (let from = 0; from < 4_500; from += 900) await several(from);
    const heard: string[] = [];
    expect(await roomStudio(app, settings, (text) => void heard.push(text))).toBeUndefined();
    expect(heard.join().split('\n').at(-1)).toBe('  and 4480 more');
  });
});

/** The program on Discord, with the operator's setting for servers. */
const onDiscord = async (servers: string | undefined, known: boolean) => {
  const discord = await DiscordDouble.start();
  const app = await openFile();
  if (known) await app.store.people.studioOf('discord', discord.world.guildId, 'Elsewhere');
  const { DISCORD_SERVERS } = readConfig({
    DISCORD_SERVERS: servers?.replace('here', discord.world.guildId),
  });
  const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const bot = await connectDiscord(
    app,
    { token: discord.token, api: discord.api, ...(DISCORD_SERVERS && { servers: DISCORD_SERVERS }) },
    { log: quiet, draw: () => Promise.reject(new Error('no pictures here')), fatal: () => undefined },
  );
  onTestFinished(async () => {
    await bot.stop();
    await discord.stop();
    expect(discord.problems).toEqual([]);
  });
  const place = { by: discord.person('Mara', { manages: true }), channel: discord.channel() };
  return { discord, app, bot, place };
};

describe('a server that nobody let in', () => {
  it.each([
    ['off', false, false],
    ['off', true, true],
    [stranger, true, false],
    [`${stranger}, here`, false, true],
    [undefined, false, true],
  ])('with DISCORD_SERVERS=%s, known: %s, is served: %s', async (servers, known, served) => {
    const { discord, app, place } = await onDiscord(servers, known);
    const { message, ephemeral } = await discord.reply(slash(place, ['bucket', 'list']));
    expect(ephemeral).toBe(true);
    if (served) expect(message.content).not.toContain('is not set up for this server');
    else expect(message.content).toContain('is not set up for this server');
    // A server that is not admitted leaves nothing in the file.
    expect(await app.store.people.studios()).toHaveLength(known || served ? 1 : 0);
  });

  it('is named when the setting is no list of numbers', () => {
    expect(() => readConfig({ DISCORD_SERVERS: 'my server' })).toThrow('DISCORD_SERVERS');
  });
});

describe('a button in a direct message', () => {
  it('does nothing any more for whoever has left the server', async () => {
    const { discord, app, bot, place } = await onDiscord(undefined, true);
    const { people, books } = app.store;
    const studio = await people.studioOf('discord', discord.world.guildId, '');
    const mara = discord.person('Tern');
    const member = await people.memberOf(studio, 'discord', mara.id, 'Tern');
    await discord.reply(slash(place, ['bucket', 'add'], { name: 'Gull Grey' }));
    const line = '/stirred bucket:1 minutes:3';
    const actions = [{ label: t`I stirred it`, line, press: 'run' as const }];
    const reminder = { kind: 'answer' as const, title: t`Stir it.`, actions, data: {} };
    expect(await bot.voice.speak(studio, member, reminder, 'A'.repeat(22))).toBe('said');
    const direct = [...discord.world.channels.values()].find(({ kind }) => kind === 'dm');
    const [message] = discord.messagesIn(direct?.id ?? '');
    const there = { by: mara, channel: { id: direct?.id ?? '', kind: 'dm' as const } };
    const entries = () =>
      books.read(studio, async (book) => {
        const [bucket] = await book.buckets();
        return bucket ? (await book.entries(bucket.no, { most: 9 })).length : 0;
      });
    mara.left = true;
    const refused = await discord.reply(press(there, discord.message(message?.id), 'I stirred it'));
    expect(refused.message.content).toContain('not on it any more');
    expect(await entries()).toBe(1);
    mara.left = false;
    await discord.use(press(there, discord.message(message?.id), 'I stirred it'));
    await discord.until(() => discord.messagesIn(direct?.id ?? '').length > 1, 'the log');
    expect(await entries()).toBe(2);
  });
});
