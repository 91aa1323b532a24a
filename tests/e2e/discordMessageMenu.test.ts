import { afterEach, expect, test } from 'vitest';
import { speak } from '../../src/desk/speak.ts';
import { commands } from '../../src/start/registry.ts';
import { instant, streamNo } from '../../src/studio/ids.ts';
import { press, submit } from '../helpers/discord/discordInteraction.ts';
import { fromMenu, written } from '../helpers/discord/discordMenu.ts';
import { openDiscordRoom, type DiscordRoom } from '../helpers/discord/discordRoom.ts';

let room: DiscordRoom;

afterEach(async () => {
  expect(room.discord.problems).toEqual([]);
  await room.stop();
});

const hour = 3_600_000;

/** A studio whose bucket was set up long ago. */
const openWithBucket = async (): Promise<void> => {
  room = await openDiscordRoom(commands);
  const { ports, discord } = room;
  const studio = await ports.people.studioOf('discord', discord.world.guildId, 'Wrackline Clay Co-op');
  const member = await ports.people.memberOf(studio, 'discord', '1', 'Ilse');
  const who = { studio, member, role: 'keeper', now: instant(ports.clock.now() - 400 * hour) } as const;
  const line = '/bucket add name:"Gull Grey" nick:gg gravity:1.42-1.46 seconds:12-16 cup:ford4';
  expect((await speak(line, 'test:setup', who, ports)).kind).toBe('answer');
};

const entries = async () => {
  const studio = await room.ports.people.studioOf('discord', room.discord.world.guildId, '');
  return room.store.books.read(studio, (book) => book.entries(streamNo(1), { most: 20 }));
};

test('a message becomes a reading by two presses, at the time when it was written', async () => {
  await openWithBucket();
  const { place, discord } = room;
  expect(discord.world.commands.get('global')?.at(-1)).toMatchObject({ type: 3, name: 'Log as a reading' });
  const message = written(discord.world, place, 'gul grey **1.46** 13 sec stirred', { ago: 2 * hour });
  const draft = await discord.reply(fromMenu(place, message));
  expect(draft.ephemeral).toBe(true);
  expect(draft.message.content).toMatch(/Gull Grey: gravity 1\\\.46, 13 sec, stirred\. Log it\?/);
  expect(await entries()).toHaveLength(1);
  const [pressed, again] = [press(place, draft, 'Log it'), press(place, draft, 'Log it')];
  const logged = await discord.use(pressed);
  await discord.until(() => logged.followUps.length > 0, 'what was logged');
  const [last] = await entries();
  expect(last?.event).toMatchObject({ kind: 'reading', gravity: { value: 1.46 }, stirred: true });
  expect(last?.at).toBe(Date.parse(message.timestamp));
  // Pressed again, it is the same act.
  await discord.use(again);
  expect(await entries()).toHaveLength(2);
});

test('a message of days ago is asked about, with its age', async () => {
  await openWithBucket();
  const { place, discord } = room;
  const message = written(discord.world, place, 'gg 1.46', { ago: 72 * hour });
  const { message: draft, ephemeral } = await discord.reply(fromMenu(place, message));
  expect(ephemeral).toBe(true);
  expect(draft.content).toMatch(/That was said .*Log it for that time\?/);
});

test('a message can be put right in a form before it is logged', async () => {
  await openWithBucket();
  const { place, discord } = room;
  const draft = await discord.reply(fromMenu(place, written(discord.world, place, 'gg 13 sec')));
  const form = await discord.use(press(place, draft, 'Change it'));
  await discord.reply(submit(place, form, { seconds: '14' }));
  expect((await entries())[0]?.event).toMatchObject({ kind: 'reading', flow: { seconds: 14 } });
});

test.each([
  ['a picture', '', { picture: true }, /can’t read pictures/],
  ['nothing', '  ', {}, /no words that I can read/],
  ['a bot’s words', 'gull grey 1.46', { bot: true }, /A bot wrote that/],
  ['a chat about something else', 'see you on friday!', {}, /found nothing to log/],
  ['a story', 'so then I said '.repeat(60), {}, /too long to find a reading in/],
  ['an unknown bucket', 'bucket 7 1.46', {}, /There is no bucket .?“?7/],
  ['what hides', '\u202e@everyone <@1> `gull grey` 1.46', {}, /Gull Grey/],
] as const)(
  '%s is answered to whoever chose it alone, and nothing is logged',
  async (_, content, how, answer) => {
    await openWithBucket();
    const { place, discord } = room;
    const { message, ephemeral, allowedMentions } = await discord.reply(
      fromMenu(place, written(discord.world, place, content, how)),
    );
    expect(ephemeral).toBe(true);
    expect(allowedMentions).toEqual({ parse: [] });
    expect(message.content).toMatch(answer);
    expect(await entries()).toHaveLength(1);
  },
);

test('an emergency in a message is answered first', async () => {
  await openWithBucket();
  const { place, discord } = room;
  const cry = written(discord.world, place, 'gull grey 1.46 and she got it in her eye');
  expect((await discord.reply(fromMenu(place, cry))).message.content).toMatch(/^\**Rinse the eye/);
});

test('a server that the bot does not serve, and a menu of before, are told so', async () => {
  room = await openDiscordRoom(commands, {}, { admits: () => Promise.resolve(false) });
  const { place, discord } = room;
  const message = written(discord.world, place, 'gull grey 1.46');
  expect((await discord.reply(fromMenu(place, message))).message.content).toMatch(
    /not set up for this server/,
  );
  expect((await discord.reply(fromMenu(place, message, 'Log it'))).message.content).toMatch(/has changed/);
});
