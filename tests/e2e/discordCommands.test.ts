import { afterEach, describe, expect, test } from 'vitest';
import type { Action, Command } from '../../src/contract/contract.ts';
import { seq } from '../../src/studio/ids.ts';
import { said, t } from '../../src/words/text/text.ts';
import { list, text } from '../helpers/discord/discordBody.ts';
import { pick, press, slash, submit, typing } from '../helpers/discord/discordInteraction.ts';
import { everyComponent } from '../helpers/discord/discordMessageRules.ts';
import { type DiscordRoom, openDiscordRoom, testCommands } from '../helpers/discord/discordRoom.ts';

let room: DiscordRoom;

const open = async (...given: Parameters<typeof openDiscordRoom>): Promise<DiscordRoom> => {
  room = await openDiscordRoom(...given);
  return room;
};

afterEach(async () => {
  // In every test: no request body may break Discord's rules.
  expect(room.discord.problems).toEqual([]);
  await room.stop();
});

const offering = (kind: 'answer' | 'choice', ...actions: Action[]): Command[] =>
  testCommands({ kind, actions });
const poured = (label: string, line: string, way: Action['press'] = 'run'): Action => ({
  label: t`${said(label)}`,
  line,
  press: way,
});
const WATER = { what: 'water', amount: '450 ml' };

describe('commands', () => {
  test('are registered once, and again only when they changed', async () => {
    const { discord, ports } = await open();
    const registered = () => discord.calls.filter((call) => call.method === 'PUT');
    expect(registered()).toHaveLength(1);
    const { registerCommands } = await import('../../src/discord/connection/registerCommands.ts');
    const { REST } = await import('discord.js');
    const rest = new REST({ api: discord.api }).setToken(discord.token);
    await registerCommands(rest, discord.world.applicationId, undefined, ports);
    expect(registered()).toHaveLength(1);
    const fewer = { ...ports, desk: { ...ports.desk, commands: ports.desk.commands.slice(1) } };
    await registerCommands(rest, discord.world.applicationId, undefined, fewer);
    expect(registered()).toHaveLength(2);
    expect([...discord.world.commands.keys()]).toEqual(['global']);
  });

  test('go to one server only while developing', async () => {
    const { discord } = await open(undefined, { devGuild: '42' });
    expect([...discord.world.commands.keys()]).toEqual(['42']);
  });

  test('a group’s leaves become subcommands, a form’s options optional, the others needed first', async () => {
    const { discord } = await open();
    const commands = discord.world.commands.get('global') ?? [];
    const options = (name: string) => list(commands.find((one) => one['name'] === name)?.['options']);
    expect(options('odd').map((one) => one['name'])).toEqual(['slow', 'stuck', 'refuse', 'break', 'keepers']);
    expect(
      options('pour').map((one) => [one['name'], one['required'], one['autocomplete'] ?? false]),
    ).toEqual([
      ['what', false, false],
      ['amount', false, false],
      ['bucket', false, true],
      ['all', false, false],
    ]);
    expect(options('look')).toMatchObject([{ name: 'bucket', required: true, autocomplete: true }]);
    expect(commands.every((one) => JSON.stringify(one['contexts']) === '[0]')).toBe(true);
  });

  test('the bot asks for no intents', async () => {
    const { discord } = await open();
    expect(discord.gateway.identifies).toEqual([{ intents: 0 }]);
  });
});

describe('a command', () => {
  test('that logs is answered to all, and what a member typed shows as typed', async () => {
    const { discord, place, entries } = await open();
    const { message, ephemeral, allowedMentions } = await discord.reply(
      slash(place, ['pour'], { what: 'water', amount: '@everyone **450** ml' }),
    );
    expect(message.content).toBe(
      'Poured @\u200beveryone \\*\\*450\\*\\* ml of water into a bucket: 1 in all.',
    );
    expect(ephemeral).toBe(false);
    expect(allowedMentions).toEqual({ parse: [] });
    expect(await entries()).toBe(1);
  });

  test('that asks, and one that is refused or breaks, is answered to the asker only', async () => {
    const { discord, place } = await open();
    const hidden = async (path: string[], typed = {}) => {
      const { ephemeral, message } = await discord.reply(slash(place, path, typed));
      expect(ephemeral).toBe(true);
      return message.content;
    };
    expect(await hidden(['look'], { bucket: 'gorse' })).toBe('Looked at gorse as member.');
    expect(await hidden(['odd', 'keepers'])).toMatch(/keepers/);
    expect(await hidden(['odd', 'break'])).toMatch(/bug-1/);
  });

  test('is a keeper’s when the sender may manage the server, or holds the studio’s keeper role', async () => {
    const { discord, place, store } = await open();
    const as = async (by: typeof place.by) =>
      (await discord.reply(slash({ ...place, by }, ['odd', 'keepers']))).message.content;
    expect(await as(discord.person('Ilse', { manages: true }))).toBe('Hello, keeper.');
    const potter = discord.person('Teo', { roles: ['77'] });
    expect(await as(potter)).toMatch(/for keepers/);
    const studio = await store.people.studioOf('discord', discord.world.guildId, '');
    const member = await store.people.memberOf(studio, 'discord', place.by.id, 'Mara');
    const now = room.ports.clock.now();
    await store.books.writeOnce(studio, 'role', async (book) => {
      await book.logStudio({ kind: 'keeper-role', role: '77' }, { at: now, loggedAt: now, by: member });
      return { keep: true, value: null };
    });
    expect(await as(potter)).toBe('Hello, keeper.');
  });

  test('that is slow is announced at once, to those who will see its answer', async () => {
    const { discord, place } = await open();
    const slow = await discord.reply(slash(place, ['odd', 'slow']));
    expect(slow.interaction.acknowledged).toMatchObject({ type: 5, data: { flags: 64 } });
    expect(slow.message.content).toBe('Drawn.');
  });

  test('that turns out to be slow is announced before the platform gives up', async () => {
    const { discord, place } = await open();
    const stuck = await discord.reply(slash(place, ['odd', 'stuck']));
    expect(stuck.interaction.acknowledged).toMatchObject({ type: 5 });
    expect(stuck.message.content).toBe('At last.');
  });

  test('that was announced to all and is then refused leaves nothing in the channel', async () => {
    const { discord, place } = await open();
    const used = await discord.use(slash(place, ['odd', 'refuse']));
    await discord.until(() => used.followUps.length === 1, 'the refusal');
    expect(discord.message(used.followUps[0])).toMatchObject({
      ephemeral: true,
      message: { content: 'Not today.' },
    });
    expect(discord.world.messages.has(used.original ?? '')).toBe(false);
  });
});

describe('completion', () => {
  test('offers at most 25 rows of what fits', async () => {
    const { discord, place } = await open();
    const used = await discord.use(typing(place, ['look'], 'bucket', { bucket: 'go' }));
    expect(used.acknowledged).toEqual({ type: 8, data: { choices: [{ name: 'gorse', value: 'gorse' }] } });
  });
});

describe('a form', () => {
  test('opens when a command that has one comes with nothing typed, and logs when it is sent', async () => {
    const { discord, place, entries } = await open();
    const opened = await discord.use(slash(place, ['pour']));
    expect(opened.acknowledged).toMatchObject({ type: 9, data: { title: '/pour' } });
    expect(await entries()).toBe(0);
    const { message } = await discord.reply(submit(place, opened, { ...WATER, bucket: 'gorse' }));
    expect(message.content).toBe('Poured 450 ml of water into gorse: 1 in all.');
  });

  test('opens filled in when an action is to be changed first, and keeps what it does not ask', async () => {
    const line = '/pour what:water amount:"450 ml" bucket:"a much longer name" all:yes';
    const { discord, place } = await open(offering('answer', poured('Change it', line, 'edit')));
    const looked = await discord.reply(slash(place, ['look'], { bucket: 'gorse' }));
    const opened = await discord.use(press(place, looked, 'Change it'));
    const fields = everyComponent(
      (opened.acknowledged?.['data'] as { components: unknown } | undefined)?.components,
    );
    const given = (name: string) => fields.find((one) => one['custom_id'] === name);
    expect(given('amount')?.['value']).toBe('450 ml');
    expect(list(given('what')?.['options']).filter((one) => one['default'] === true)).toEqual([
      { label: 'Water', value: 'water', default: true },
    ]);
    // The typed value is not among the suggestions, and a select menu would lose it.
    expect(given('bucket')?.['value']).toBe('a much longer name');
    const sent = await discord.use(submit(place, opened, { amount: '500 ml' }));
    await discord.until(() => sent.followUps.length === 1, 'the log');
    expect(discord.message(sent.followUps[0]).message.content).toMatch(
      /^Poured 500 ml of water into a much longer name/,
    );
  });
});

describe('a button', () => {
  test('logs for all to see, and cannot be pressed twice', async () => {
    const { discord, place, entries } = await open(
      offering('answer', poured('I poured 450 ml', '/pour what:water amount:450ml')),
    );
    const looked = await discord.reply(slash(place, ['look'], { bucket: 'gorse' }));
    const pressed = await discord.use(press(place, looked, 'I poured 450 ml'));
    await discord.until(() => pressed.followUps.length === 1, 'the log');
    expect(discord.message(pressed.followUps[0])).toMatchObject({
      ephemeral: false,
      message: { content: expect.stringMatching(/^Poured 450ml/) },
    });
    const before = discord.message(looked.message.id);
    expect(before.message).toMatchObject({ content: 'Looked at gorse as member.', components: [] });
    expect(await entries()).toBe(1);
  });

  test('stays when what it did was refused', async () => {
    const { discord, place } = await open(offering('answer', poured('Do', '/pour amount:"5 ml"')));
    const looked = await discord.reply(slash(place, ['look'], { bucket: 'gorse' }));
    const pressed = await discord.reply(press(place, looked, 'Do'));
    expect(pressed.ephemeral).toBe(true);
    expect(discord.message(looked.message.id).message.components).toHaveLength(1);
  });

  test('works with a line too long for its id, and says so when that has expired', async () => {
    const long = `/pour what:water amount:"${'9'.repeat(120)} ml"`;
    const { discord, place } = await open(offering('answer', poured('I poured it', long)));
    const looked = await discord.reply(slash(place, ['look'], { bucket: 'gorse' }));
    const pressed = await discord.use(press(place, looked, 'I poured it'));
    await discord.until(() => pressed.followUps.length === 1, 'the log');
    const again = await discord.reply(slash(place, ['look'], { bucket: 'gorse' }));
    discord.pass(31 * 86_400_000);
    const late = await discord.reply(press(place, again, 'I poured it'));
    expect(late.message.content).toMatch(/too old/);
  });

  test('carries the entry that it was worked out from', async () => {
    const seen: unknown[] = [];
    const { discord, place, ports } = await open(
      offering('answer', poured('I poured it', '/pour what:water amount:1l after:41')),
    );
    const dispatch = ports.desk.dispatch;
    ports.desk.dispatch = (request) => {
      seen.push(request.after);
      return dispatch(request);
    };
    const looked = await discord.reply(slash(place, ['look'], { bucket: 'gorse' }));
    await discord.use(press(place, looked, 'I poured it'));
    expect(seen).toEqual([undefined, seq(41)]);
  });

  test('in a direct message knows its studio', async () => {
    const { discord, place, bot, store, entries, ports } = await open();
    ports.addressOf = () => Promise.resolve({ user: place.by.id });
    const studio = await store.people.studioOf('discord', discord.world.guildId, '');
    const member = await store.people.memberOf(studio, 'discord', place.by.id, 'Mara');
    const reminder = {
      kind: 'answer' as const,
      title: t`Your wax is dry.`,
      actions: [poured('I poured it', '/pour what:water amount:1l')],
      data: {},
    };
    expect(await bot.voice.speak(studio, member, reminder, 'A'.repeat(22))).toBe('said');
    const direct = [...discord.world.channels.values()].find((one) => one.kind === 'dm');
    const [message] = discord.messagesIn(direct?.id ?? '');
    const there = { by: place.by, channel: { id: direct?.id ?? '', kind: 'dm' as const } };
    const pressed = await discord.use(press(there, discord.message(message?.id), 'I poured it'));
    await discord.until(() => pressed.followUps.length === 1, 'the log');
    expect(await entries()).toBe(1);
  });
});

describe('a choice', () => {
  const names = (n: number) =>
    Array.from({ length: n }, (_, i) => poured(`bucket ${i}`, `/look bucket:"bucket ${i}"`));

  test('of a few is a row of buttons', async () => {
    const { discord, place } = await open(offering('choice', ...names(5)));
    const asked = await discord.reply(slash(place, ['look'], { bucket: 'b' }));
    const chosen = await discord.reply(press(place, asked, 'bucket 3'));
    expect(chosen.message.content).toBe('Looked at bucket 3 as member.');
  });

  test('of many is a menu', async () => {
    const { discord, place } = await open(offering('choice', ...names(30)));
    const asked = await discord.reply(slash(place, ['look'], { bucket: 'b' }));
    const menu = everyComponent(asked.message.components).find((one) => text(one['custom_id']) === 'pick');
    expect(list(menu?.['options'])).toHaveLength(25);
    const chosen = await discord.reply(pick(place, asked, 'bucket 24'));
    expect(chosen.message.content).toBe('Looked at bucket 24 as member.');
  });
});
