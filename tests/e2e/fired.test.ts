import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { systemClock } from '../../src/clock.ts';
import { connectDiscord } from '../../src/start/connectDiscord.ts';
import { openStore } from '../../src/store/openStore.ts';
import { DiscordDouble } from '../helpers/discord/discordDouble.ts';
import { press, slash, submit } from '../helpers/discord/discordInteraction.ts';
import { gullGrey, phoneOf, sayAsKeeper, testRoom } from '../helpers/room/roomServer.ts';

const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };

const bothPlatforms = async () => {
  const double = await DiscordDouble.start();
  const folder = mkdtempSync(join(tmpdir(), 'fired-'));
  const store = await openStore(join(folder, 'studio.db'), { clock: systemClock });
  await store.people.studioOf('discord', double.world.guildId, 'Wrackline Clay Co-op');
  await store.close();
  const open = await testRoom({ folder });
  const bot = await connectDiscord(
    { ...open.app, desk: open.room.postingDesk(open.app.desk) },
    { token: double.token, api: double.api },
    { log: quiet, draw: async () => Buffer.from('png'), fatal: () => undefined },
  );
  onTestFinished(async () => {
    await bot.stop();
    await double.stop();
    expect(double.problems).toEqual([]);
  });
  await sayAsKeeper(open, gullGrey);
  return { open, double, channel: double.channel() };
};

it('a result told in a form on Discord is public there and in the room, and is taken back by its button', async () => {
  const { open, double, channel } = await bothPlatforms();
  const wren = { by: double.person('Wren'), channel };
  const keeper = { by: double.person('Tove', { manages: true }), channel };

  const form = await double.use(slash(wren, ['fired']));
  expect(form.acknowledged).toMatchObject({ type: 9 });
  const told = await double.reply(
    submit(wren, form, {
      bucket: 'gg',
      result: 'crawling',
      pieces: '2 of 4',
      dipped: 'now',
      note: 'like islands',
    }),
  );
  expect(told.ephemeral).toBe(false);
  expect(told.message.content).toMatch(/^Kept: 2 of 4 crawled\./);
  const phone = await phoneOf(open, 'Ines');
  const typed = await phone.say('/fired bucket:gg result:crazing pieces:3');
  expect(typed.json).toMatchObject({ private: false });
  expect(typed.text).toMatch(/all 3 crazed.*Crazing.* may come from the fit between glaze and body/);

  const refused = await double.reply(slash(wren, ['faults']));
  expect(refused.message.content).toMatch(/for keepers/);
  const seen = await double.reply(slash(keeper, ['faults'], { bucket: 'gg' }));
  expect(seen.ephemeral).toBe(true);
  expect(seen.message.content).toMatch(
    /^Too few results to say: 1 day of dipping so far\. It takes at least 6 more/,
  );
  expect(seen.message.content).toMatch(/f-1 .* 2 of 4 crawled/);

  await double.use(press(wren, told, 'Undo this'));
  await double.until(
    () => double.messagesIn(channel.id).some(({ content }) => content.startsWith('Took back f-1')),
    'the undo',
  );
  const after = await double.reply(slash(keeper, ['faults']));
  expect(after.message.content).not.toMatch(/f-1/);
});
