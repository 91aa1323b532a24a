import { afterEach, expect, test } from 'vitest';
import { speak } from '../../src/desk/speak.ts';
import { commands } from '../../src/start/registry.ts';
import { slash } from '../helpers/discord/discordInteraction.ts';
import { openDiscordRoom, type DiscordRoom } from '../helpers/discord/discordRoom.ts';

let room: DiscordRoom;

afterEach(async () => {
  expect(room.discord.problems).toEqual([]);
  await room.stop();
});

test('an emergency asked on Discord is answered to the asker alone, what to do now first, and never by a bucket’s state', async () => {
  room = await openDiscordRoom(commands);
  const { place, discord, ports } = room;
  const studio = await ports.people.studioOf('discord', discord.world.guildId, 'Wrackline Clay Co-op');
  const member = await ports.people.memberOf(studio, 'discord', '1', 'Ilse');
  for (const line of [
    '/bucket add name:"Gull Grey" gravity:1.42-1.46 seconds:12-16 cup:ford4',
    '/reading bucket:1 gravity:1.44 seconds:14 stirred:yes',
  ]) {
    const who = { studio, member, role: 'keeper', now: ports.clock.now() } as const;
    expect((await speak(line, `test:${line}`, who, ports)).kind, line).toBe('answer');
  }
  // What comes first is what first-aid courses teach: rinse, call, get out.
  for (const [typed, now] of [
    [{ question: 'i got gull grey in my eye' }, /^\**Rinse the eye/],
    [{ question: 'my kid swalowed glaze', bucket: 'gull grey' }, /^\**Rinse the mouth/],
    [{ question: 'kiln is on FIRE', bucket: '1' }, /^\**Everyone out/],
    [{ question: 'he fainted next to gull grey' }, /^\**Call 112, 911, 999/],
  ] as const) {
    const { message, ephemeral } = await discord.reply(slash(place, ['ask'], typed));
    expect(ephemeral, typed.question).toBe(true);
    const [first = ''] = message.content.split('\n');
    expect(first).toMatch(now);
    expect(message.content).toContain('not medical advice');
    expect(message.content, typed.question).not.toMatch(/gravity|window|stirred|Use it|ready/i);
    expect(message.content.length).toBeLessThanOrEqual(2_000);
  }
});
