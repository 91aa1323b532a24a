import {
  BasicMessageResponseSchema,
  InteractionCallbackResponseSchema,
  PrivateChannelResponseSchema,
} from 'discord-api-spec/zod';
import { Client, Events, Routes, TextInputStyle, type Interaction as Received } from 'discord.js';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { DiscordDouble, rateLimited, serverError } from '../helpers/discord/discordDouble.ts';
import { type Place, pick, press, slash, submit, typing } from '../helpers/discord/discordInteraction.ts';

const QUIET = { parse: [] };

let discord: DiscordDouble;
let client: Client;
let place: Place;

beforeEach(async () => {
  discord = await DiscordDouble.start();
  place = { by: discord.person('Mara'), channel: discord.channel() };
});

afterEach(async () => {
  await client.destroy();
  await discord.stop();
});

const bot = async (hear: (interaction: Received) => Promise<unknown>): Promise<void> => {
  client = new Client({ intents: [], rest: { api: discord.api, retries: 1 } });
  client.on(Events.InteractionCreate, (interaction) => void hear(interaction).catch(() => undefined));
  const ready = new Promise((resolve) => client.once(Events.ClientReady, resolve));
  await client.login(discord.token);
  await ready;
};

const silent = (): Promise<void> => bot(() => Promise.resolve());
const callbackOf = (one: { id: string; token: string }) => Routes.interactionCallback(one.id, one.token);
const say = (content: string) => ({ type: 4, data: { content, allowed_mentions: QUIET } });

describe('a plain bot on the real client', () => {
  test('answers a command, and its body breaks no rule', async () => {
    await bot(async (interaction) => {
      if (!interaction.isChatInputCommand()) return;
      await interaction.reply({
        content: `${interaction.options.getSubcommand()} ${interaction.options.getString('name')}`,
        allowedMentions: QUIET,
      });
    });
    const { message } = await discord.reply(slash(place, ['bucket', 'add'], { name: 'Gull Grey' }));
    expect(message.content).toBe('add Gull Grey');
    expect(discord.problems).toEqual([]);
  });

  test('completes options, opens forms, reads them, and hears buttons and menus', async () => {
    const row = (component: object) => ({ type: 1, components: [component] });
    await bot(async (interaction) => {
      if (interaction.isAutocomplete())
        await interaction.respond([{ name: interaction.options.getFocused().toUpperCase(), value: 'gg' }]);
      if (interaction.isChatInputCommand())
        await client.rest.post(callbackOf(interaction), {
          auth: false,
          body: {
            type: 9,
            data: {
              custom_id: 'form',
              title: 'Reading',
              components: [
                {
                  type: 18,
                  label: 'Weight',
                  component: { type: 4, custom_id: 'weight', style: TextInputStyle.Short, value: '246 g' },
                },
              ],
            },
          },
        });
      if (interaction.isModalSubmit())
        await interaction.reply({
          content: interaction.fields.getTextInputValue('weight'),
          allowedMentions: QUIET,
          components: [
            row({ type: 2, style: 1, label: 'Again', custom_id: 'again' }),
            row({ type: 3, custom_id: 'which', options: [{ label: 'Kelp', value: 'k' }] }),
          ],
        });
      if (interaction.isButton()) await interaction.update({ content: 'pressed', allowedMentions: QUIET });
      if (interaction.isStringSelectMenu())
        await interaction.reply({ content: interaction.values.join(), flags: 64, allowedMentions: QUIET });
    });
    const completed = await discord.use(typing(place, ['reading'], 'bucket', { bucket: 'gu' }));
    expect(completed.acknowledged).toMatchObject({
      type: 8,
      data: { choices: [{ name: 'GU', value: 'gg' }] },
    });
    const opened = await discord.use(slash(place, ['reading']));
    const sent = await discord.reply(submit(place, opened, { weight: '250 g' }));
    expect(sent.message.content).toBe('250 g');
    const picked = await discord.reply(pick(place, sent, 'Kelp'));
    expect(picked).toMatchObject({ ephemeral: true, message: { content: 'k' } });
    const pressed = await discord.reply(press(place, sent, 'Again'));
    expect(pressed.message).toMatchObject({ id: sent.message.id, content: 'pressed' });
    expect(discord.problems).toEqual([]);
  });

  test('survives a dropped socket, a request to reconnect and a lost session, missing nothing of a resumed one', async () => {
    await bot(async (interaction) => {
      if (interaction.isChatInputCommand())
        await interaction.reply({ content: 'here', allowedMentions: QUIET });
    });
    discord.gateway.dropSocket();
    await discord.until(() => !discord.gateway.connected || discord.gateway.resumes === 1, 'the drop');
    const missed = discord.deliver(slash(place, ['reading']));
    await discord.until(() => missed.acknowledged !== undefined, 'the replayed command');
    expect(discord.gateway.resumes).toBe(1);
    discord.gateway.askToReconnect();
    await discord.until(() => discord.gateway.resumes === 2, 'the second resume');
    // The client breaks if it loses its session while it resumes, so wait until it has resumed.
    await discord.use(slash(place, ['reading']));
    discord.gateway.invalidateSession(false);
    await discord.until(() => discord.gateway.identifies.length === 2, 'a new session');
    await discord.use(slash(place, ['reading']));
  });
});

describe('the double answers as the published description says', () => {
  test('messages, callbacks and direct channels pass its schemas', async () => {
    await silent();
    const used = discord.deliver(slash(place, ['reading']));
    const response = await client.rest.post(callbackOf(used), {
      auth: false,
      query: new URLSearchParams({ with_response: 'true' }),
      body: {
        type: 4,
        data: {
          ...say('x').data,
          components: [{ type: 1, components: [{ type: 2, style: 2, label: 'I stirred', custom_id: 's' }] }],
        },
      },
    });
    expect(InteractionCallbackResponseSchema.safeParse(response).error).toBeUndefined();
    const direct = await client.rest.post(Routes.userChannels(), { body: { recipient_id: place.by.id } });
    expect(PrivateChannelResponseSchema.safeParse(direct).error).toBeUndefined();
    const message = await client.rest.post(Routes.channelMessages(place.channel.id), {
      body: { content: 'x', allowed_mentions: QUIET, attachments: [{ id: '0', description: 'a chart' }] },
      files: [{ name: 'chart.png', data: Buffer.from('png') }],
    });
    expect(BasicMessageResponseSchema.safeParse(message).error).toBeUndefined();
    expect(message).toMatchObject({
      attachments: [{ filename: 'chart.png', description: 'a chart', size: 3 }],
    });
  });
});

describe('the double keeps the platform’s rules', () => {
  test('a first answer after three seconds finds no interaction', async () => {
    await silent();
    const used = discord.deliver(slash(place, ['reading']));
    discord.pass(3_001);
    const late = client.rest.post(callbackOf(used), { auth: false, body: say('late') });
    await expect(late).rejects.toMatchObject({ code: 10062, status: 404 });
  });

  test('a second acknowledgement is refused', async () => {
    await silent();
    const used = discord.deliver(slash(place, ['reading']));
    await client.rest.post(callbackOf(used), { auth: false, body: say('one') });
    const second = client.rest.post(callbackOf(used), { auth: false, body: say('two') });
    await expect(second).rejects.toMatchObject({ code: 40060 });
  });

  test('a token is no good before the first answer, nor a quarter of an hour later', async () => {
    await silent();
    const used = discord.deliver(slash(place, ['reading']));
    const followUp = () =>
      client.rest.post(Routes.webhook(discord.world.applicationId, used.token), {
        auth: false,
        body: say('x').data,
      });
    await expect(followUp()).rejects.toMatchObject({ code: 10015 });
    await client.rest.post(callbackOf(used), { auth: false, body: { type: 5 } });
    await followUp();
    expect(used.waiting).toBe(false);
    discord.pass(15 * 60_000);
    await expect(followUp()).rejects.toMatchObject({ code: 50027 });
  });

  test('autocomplete takes choices only, a command no update', async () => {
    await silent();
    const completing = discord.deliver(typing(place, ['reading'], 'bucket', { bucket: '' }));
    await expect(
      client.rest.post(callbackOf(completing), { auth: false, body: say('x') }),
    ).rejects.toMatchObject({ code: 50035 });
    const used = discord.deliver(slash(place, ['reading']));
    await expect(
      client.rest.post(callbackOf(used), { auth: false, body: { type: 7, data: say('x').data } }),
    ).rejects.toMatchObject({ code: 50035 });
  });

  test('one nonce makes one message for a few minutes', async () => {
    await silent();
    const post = () =>
      client.rest.post(Routes.channelMessages(place.channel.id), {
        body: { ...say('dry').data, nonce: 'A'.repeat(22), enforce_nonce: true },
      });
    expect(await post()).toMatchObject(await post().then((one) => ({ id: (one as { id: string }).id })));
    expect(discord.messagesIn(place.channel.id)).toHaveLength(1);
    discord.pass(6 * 60_000);
    await post();
    expect(discord.messagesIn(place.channel.id)).toHaveLength(2);
  });

  test('closed direct messages, missing permission and deleted channels have their codes', async () => {
    await silent();
    const shy = discord.person('Teo', { dmClosed: true });
    const direct = await client.rest.post(Routes.userChannels(), { body: { recipient_id: shy.id } });
    const post = (id: string) => client.rest.post(Routes.channelMessages(id), { body: say('x').data });
    await expect(post((direct as { id: string }).id)).rejects.toMatchObject({ code: 50007 });
    await expect(post(discord.channel({ forbidden: true }).id)).rejects.toMatchObject({ code: 50013 });
    await expect(post(discord.channel({ deleted: true }).id)).rejects.toMatchObject({ code: 10003 });
  });

  test('the client waits out a rate limit and tries a server error again, but not a closed connection', async () => {
    await silent();
    const post = () => client.rest.post(Routes.channelMessages(place.channel.id), { body: say('x').data });
    discord.plant(rateLimited(0.05), () => true);
    discord.plant(serverError, () => true);
    await post();
    expect(discord.calls).toHaveLength(3);
    discord.plant({ cut: 'after', how: 'closed' }, () => true);
    await expect(post()).rejects.toThrow(/other side closed/);
    expect(discord.messagesIn(place.channel.id)).toHaveLength(2);
  });

  test('a token that was revoked and intents that were not granted close the socket for good', async () => {
    await silent();
    const closed = new Promise<number>((resolve) =>
      client.once(Events.ShardDisconnect, ({ code }) => resolve(code)),
    );
    client.on(Events.ShardError, () => undefined);
    discord.gateway.close(4014);
    expect(await closed).toBe(4014);
  });
});
