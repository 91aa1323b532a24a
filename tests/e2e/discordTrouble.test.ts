import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, describe, expect, test } from 'vitest';
import { t } from '../../src/words/text/text.ts';
import { asks } from '../../src/contract/contract.ts';
import { fields } from '../helpers/discord/discordBody.ts';
import { refusal } from '../helpers/discord/discordRest.ts';
import { serverError } from '../helpers/discord/discordDouble.ts';
import { pick, press, slash, submit } from '../helpers/discord/discordInteraction.ts';
import { type DiscordRoom, openDiscordRoom, testCommands } from '../helpers/discord/discordRoom.ts';

let room: DiscordRoom;

const open = async (...given: Parameters<typeof openDiscordRoom>): Promise<DiscordRoom> => {
  room = await openDiscordRoom(...given);
  return room;
};

afterEach(async () => {
  await room.stop();
});

const WATER = { what: 'water', amount: '450 ml' };
const POURED = 'Poured 450 ml of water into a bucket: 1 in all.';
const isCallback = ({ path }: { path: string }) => path.startsWith('/interactions/');
const isFollowUp = ({ path, method }: { path: string; method: string }) =>
  path.startsWith('/webhooks/') && method === 'POST';

describe('a connection that breaks', () => {
  for (const cut of ['before', 'after'] as const)
    for (const how of ['closed', 'reset'] as const)
      test(`(${how}) ${cut} the platform took the reply: logged once, told once`, async () => {
        const { discord, place, entries } = await open();
        discord.plant({ cut, how }, isCallback);
        const { message } = await discord.reply(slash(place, ['pour'], WATER));
        // The bot may still be retrying when Discord has the answer already.
        await sleep(300);
        expect(message.content).toBe(POURED);
        expect(discord.messagesIn(place.channel.id)).toHaveLength(1);
        expect(await entries()).toBe(1);
        expect(discord.problems).toEqual([]);
      });

  test('for as long as the platform waits: what was logged stays logged, and its author is told in the channel', async () => {
    const { discord, place, entries } = await open();
    discord.plant({ cut: 'before', how: 'closed' }, isCallback, 20);
    discord.deliver(slash(place, ['pour'], WATER));
    await discord.until(
      () => discord.messagesIn(place.channel.id).length === 1,
      'the message in the channel',
    );
    const [message] = discord.messagesIn(place.channel.id);
    expect(message?.content).toContain(`<@${place.by.id}>`);
    expect(message?.content).toContain(POURED);
    expect(discord.message(message?.id).allowedMentions).toEqual({ parse: [], users: [place.by.id] });
    expect(await entries()).toBe(1);
  });

  test('in a channel where the bot may not write: its author is told directly', async () => {
    const { discord, place } = await open();
    const mute = { ...place, channel: discord.channel({ forbidden: true }) };
    discord.plant({ cut: 'before', how: 'closed' }, isCallback, 20);
    discord.deliver(slash(mute, ['pour'], WATER));
    const direct = () => [...discord.world.channels.values()].find((one) => one.kind === 'dm');
    await discord.until(() => discord.messagesIn(direct()?.id ?? '').length === 1, 'the direct message');
    expect(discord.messagesIn(direct()?.id ?? '')[0]?.content).toContain(POURED);
  });

  test('after a button was pressed: it is gone, and the log is there to see', async () => {
    const action = { label: t`I poured it`, line: '/pour what:water amount:"450 ml"', press: 'run' as const };
    const { discord, place, entries } = await open(testCommands({ actions: [action] }));
    const looked = await discord.reply(slash(place, ['look'], { bucket: 'gorse' }));
    discord.plant({ cut: 'before', how: 'closed' }, isFollowUp);
    const pressed = await discord.use(press(place, looked, 'I poured it'));
    await discord.until(() => pressed.followUps.length === 1, 'the log');
    expect(await entries()).toBe(1);
  });
});

test('a server error is tried again', async () => {
  const { discord, place, entries } = await open();
  discord.plant(serverError, isCallback, 2);
  const { message } = await discord.reply(slash(place, ['pour'], WATER));
  expect(message.content).toBe(POURED);
  expect(await entries()).toBe(1);
});

test('an interaction that is delivered twice logs once, and says so once', async () => {
  const { discord, place, entries } = await open();
  const draft = slash(place, ['pour'], WATER);
  const used = await discord.use(draft);
  discord.deliverAgain(used, draft);
  discord.deliverAgain(used, draft);
  await discord.until(() => discord.calls.filter(isCallback).length === 3, 'all three answers');
  expect(await entries()).toBe(1);
  expect(discord.messagesIn(place.channel.id).map((one) => one.content)).toEqual([POURED]);
});

test('a command that arrives when the platform has given up is not run: its sender saw it fail and will try again', async () => {
  const { discord, place, entries } = await open();
  discord.gateway.dropSocket();
  await discord.until(() => discord.gateway.resumes === 1, 'the resumption');
  const used = discord.hold(slash(place, ['pour'], WATER), 4_000);
  await discord.until(() => discord.calls.some(isCallback), 'an attempt to answer');
  await discord.use(slash(place, ['look'], { bucket: 'x' }));
  expect(used.acknowledged).toBeUndefined();
  expect(await entries()).toBe(0);
});

test('a command that seems old only because the clocks differ is run all the same', async () => {
  const { discord, place, ports } = await open();
  const { now } = ports.clock;
  ports.clock.now = () => (now() + 60_000) as ReturnType<typeof now>;
  const { message } = await discord.reply(slash(place, ['pour'], WATER));
  expect(message.content).toBe(POURED);
});

test('a reply that the platform refuses is shown without its trimmings', async () => {
  const { discord, place, entries } = await open(
    testCommands({ actions: [{ label: [], line: '/pour what:water amount:1', press: 'run' }] }),
  );
  const { message } = await discord.reply(slash(place, ['pour'], WATER));
  expect(message).toMatchObject({ content: POURED, components: [] });
  expect(await entries()).toBe(1);
  expect(discord.problems.join()).toMatch(/button without label/);
});

describe('what was logged is told as logged', () => {
  const poured = { label: t`I poured it`, line: '/pour what:water amount:"450 ml"', press: 'run' as const };
  const gone = { refuse: refusal(404, 10008, 'Unknown Message') };
  const badForm = { refuse: refusal(400, 50035, 'Invalid Form Body') };
  const everything = ({ discord }: DiscordRoom) =>
    [...discord.world.messages.values()].map(({ message }) => message.content).join('\n');

  test('when the message whose button was pressed is deleted meanwhile', async () => {
    const { discord, place, entries } = await open(testCommands({ actions: [poured] }));
    const looked = await discord.reply(slash(place, ['look'], { bucket: 'gorse' }));
    discord.plant(gone, ({ path, body }) => isCallback({ path }) && fields(body)['type'] === 7);
    const { message } = await discord.reply(press(place, looked, 'I poured it'));
    expect(message.content).toBe(POURED);
    expect(await entries()).toBe(1);
  });

  test('when its buttons are gone and what should follow is refused', async () => {
    const { discord, place, entries } = await open(testCommands({ actions: [poured] }));
    const looked = await discord.reply(slash(place, ['look'], { bucket: 'gorse' }));
    discord.plant(badForm, isFollowUp, 2);
    discord.deliver(press(place, looked, 'I poured it'));
    await discord.until(() => everything(room).includes(POURED), 'what was logged');
    expect(everything(room)).not.toMatch(/nothing was changed/);
    expect(await entries()).toBe(1);
  });

  test('when the reply is refused twice: in the channel', async () => {
    const { discord, place, entries } = await open();
    discord.plant(badForm, isCallback, 4);
    discord.deliver(slash(place, ['pour'], WATER));
    await discord.until(() => everything(room).includes(POURED), 'what was logged');
    expect(everything(room)).not.toMatch(/nothing was changed/);
    expect(await entries()).toBe(1);
  });

  test('when its announcement is deleted before it is filled', async () => {
    const { discord, place, ports, entries } = await open();
    const { now } = ports.clock;
    ports.clock.now = () => (now() + 60_000) as ReturnType<typeof now>;
    discord.plant(gone, ({ method, path }) => method === 'PATCH' && path.startsWith('/webhooks/'), 4);
    discord.deliver(slash(place, ['pour'], WATER));
    await discord.until(() => everything(room).includes(POURED), 'what was logged');
    expect(everything(room)).not.toMatch(/nothing was changed/);
    expect(await entries()).toBe(1);
  });

  test('when its buttons cannot be made', async () => {
    const long = { ...poured, line: `${poured.line} bucket:"${'x'.repeat(90)}"` };
    const held = {
      hold: () => {
        throw new Error('no room for a line');
      },
      held: () => Promise.resolve(undefined),
    };
    const { discord, place, entries } = await open(testCommands({ actions: [long] }), {}, { held });
    const { message } = await discord.reply(slash(place, ['pour'], WATER));
    expect(message.content).toBe(POURED);
    expect(await entries()).toBe(1);
  });
});

describe('the same act sent again is carried out once, and answered again', () => {
  const one = (amount: number) => ({
    label: t`Pour ${amount}`,
    line: `/pour what:water amount:"${amount} ml"`,
    press: 'run' as const,
  });
  const choosing = (many: number) =>
    testCommands().map((command) =>
      command.name === 'look'
        ? asks({
            name: 'look',
            about: () => 'Ask which',
            who: 'member',
            options: {},
            run: () =>
              Promise.resolve({
                kind: 'choice',
                title: t`Which one?`,
                actions: Array.from({ length: many }, (_, i) => one(i + 1)),
                data: {},
              }),
          })
        : command,
    );

  for (const [what, many, again] of [
    ['a button of a choice', 2, press],
    ['a row of a menu', 9, pick],
  ] as const)
    test(`by ${what}`, async () => {
      const { discord, place, entries } = await open(choosing(many));
      const asked = await discord.reply(slash(place, ['look']));
      const draft = again(place, asked, 'Pour 2');
      const others = [
        again(place, asked, 'Pour 1'),
        again({ ...place, by: discord.person('Ilse') }, asked, 'Pour 2'),
      ];
      for (let times = 0; times < 2; times += 1) {
        const pressed = await discord.use(draft);
        await discord.until(() => pressed.followUps.length === 1, 'the answer');
        expect(discord.message(pressed.followUps[0]).message.content).toMatch(
          /^Poured 2 ml of water.*: 1 in all/,
        );
      }
      expect(await entries()).toBe(1);
      // Another row, or another member, is a different act.
      for (const other of others) await discord.use(other);
      await expect.poll(entries).toBe(3);
    });

  test('a form', async () => {
    const { discord, place, entries } = await open();
    const opened = await discord.use(slash(place, ['pour']));
    const filled = { what: 'water', amount: '450 ml' };
    for (let times = 0; times < 2; times += 1) {
      const { message } = await discord.reply(submit(place, opened, filled));
      expect(message.content).toBe(POURED);
    }
    expect(await entries()).toBe(1);
    const anew = await discord.use(slash(place, ['pour']));
    await discord.reply(submit(place, anew, filled));
    expect(await entries()).toBe(2);
  });
});

describe('a connection lost for good', () => {
  test.each([4004, 4010, 4011, 4012, 4013, 4014])('(%i) is told to whoever connected', async (code) => {
    const { discord, fatal } = await open();
    discord.gateway.close(code);
    await expect.poll(() => fatal.length).toBe(1);
    expect(fatal[0]).toContain(String(code));
  });

  test('is told from one that comes back', async () => {
    const { discord, place, fatal } = await open();
    discord.gateway.close(4000);
    const missed = discord.deliver(slash(place, ['look'], { bucket: 'x' }));
    await discord.until(() => missed.acknowledged !== undefined, 'the replayed command');
    discord.gateway.askToReconnect();
    await discord.until(() => discord.gateway.resumes === 2, 'the second resumption');
    expect(fatal).toEqual([]);
  });
});

test('stopping lets what is under way finish', async () => {
  const { discord, place, bot } = await open();
  const used = discord.deliver(slash(place, ['odd', 'stuck']));
  await sleep(100);
  await bot.stop();
  expect(used.original).toBeDefined();
  expect(discord.message(used.original).message.content).toBe('At last.');
});
