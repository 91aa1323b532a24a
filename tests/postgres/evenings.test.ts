import { expect, it, onTestFinished } from 'vitest';
import { parseLine } from '../../src/contract/parseLine.ts';
import { speak } from '../../src/desk/speak.ts';
import { commands } from '../../src/start/registry.ts';
import { instant, minutes } from '../../src/studio/ids.ts';
import { en } from '../../src/words/en.ts';
import { slash } from '../helpers/discord/discordInteraction.ts';
import { openDiscordRoom } from '../helpers/discord/discordRoom.ts';
import { nowIn } from '../helpers/discord/discordWorld.ts';
import { evening, linesIn, setUp } from '../helpers/evening.ts';
import { newDatabase } from '../helpers/postgres/databases.ts';
import { phoneOf, sayAsKeeper, testRoom } from '../helpers/room/roomServer.ts';
import { settableClock } from '../helpers/store/storeFile.ts';

it('an evening with ten buckets over Discord is answered line by line, on a database', async () => {
  const room = await openDiscordRoom(commands);
  onTestFinished(room.stop);
  const { discord, store, ports, place } = room;
  const studio = await store.people.studioOf('discord', discord.world.guildId, '');
  const tove = await store.people.memberOf(studio, 'discord', discord.person('Tove').id, 'Tove');
  const afternoon = instant(nowIn(discord.world) - 5 * 3_600_000);
  for (const [i, line] of linesIn(setUp).entries()) {
    const speaker = { studio, member: tove, role: 'keeper', now: afternoon } as const;
    expect((await speak(line, `set up:${i}`, speaker, { desk: ports.desk, words: en })).kind, line).toBe(
      'answer',
    );
  }
  for (const [script, , title] of evening) {
    if (script.startsWith('@')) discord.world.ahead += minutes(10);
    const [line = ''] = linesIn(script);
    const parsed = parseLine(line, commands);
    if (!parsed.ok) throw new Error(line);
    const { message } = await discord.reply(slash(place, parsed.value.path, parsed.value.typed));
    expect(message.content, line).toMatch(new RegExp(title.source.slice(1), title.flags));
  }
  expect(discord.problems).toEqual([]);
});

it('an evening with ten buckets in a room is answered line by line, by two processes in turn', async () => {
  const clock = settableClock();
  const file = await newDatabase('empty_logbook');
  const one = await testRoom({ file, clock });
  const other = { ...(await testRoom({ file, clock })), passcode: one.passcode };
  clock.set(Date.UTC(2026, 4, 20, 17));
  for (const line of linesIn(setUp)) await sayAsKeeper(one, line);
  clock.set(Date.UTC(2026, 4, 20, 22));
  const phones = [await phoneOf(one, 'Wren'), await phoneOf(other, 'Mara')] as const;
  const watcher = await (await phoneOf(other, 'Odile')).listen();
  let logged = 0;
  for (const [i, [script, step]] of evening.entries()) {
    if (script.startsWith('@')) clock.set(Date.UTC(2026, 4, 20, 22, 10));
    const [line = ''] = linesIn(script);
    const { status, json } = await phones[i % 2 === 0 ? 0 : 1].say(line);
    expect({ line, status }).toEqual({ line, status: 200 });
    expect(json['reply'], line).toMatchObject({ step });
    if (json['private'] === false) logged += 1;
  }
  await watcher.until(logged);
  // The two questions were private; everybody else was told of all the rest, in order.
  expect(logged).toBe(evening.length - 2);
  const numbers = watcher.posts.map(({ no }) => Number(no));
  expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
  expect(new Set(numbers).size).toBe(logged);
});
