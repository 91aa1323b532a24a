import { afterEach, expect, test } from 'vitest';
import { speak } from '../../src/desk/speak.ts';
import { commands } from '../../src/start/registry.ts';
import { press, slash, type Place } from '../helpers/discord/discordInteraction.ts';
import { openDiscordRoom, type DiscordRoom } from '../helpers/discord/discordRoom.ts';
import type { StoredMessage } from '../helpers/discord/discordWorld.ts';
import { everyComponent } from '../helpers/discord/discordMessageRules.ts';

let room: DiscordRoom;

afterEach(async () => {
  expect(room.discord.problems).toEqual([]);
  await room.stop();
});

/** Says lines at the desk, as a keeper of the server's studio. */
const say = async (lines: readonly string[]): Promise<void> => {
  const { ports, discord } = room;
  const studio = await ports.people.studioOf('discord', discord.world.guildId, 'Wrackline Clay Co-op');
  const member = await ports.people.memberOf(studio, 'discord', '1', 'Ilse');
  for (const line of lines) {
    const who = { studio, member, role: 'keeper', now: ports.clock.now() } as const;
    const reply = await speak(line, `test:${line}:${Math.random()}`, who, ports);
    expect(reply.kind, line).toBe('answer');
  }
};

/** Presses what shows the rest until there is none; answers all messages one after another. */
const readOn = async (place: Place, first: StoredMessage, label: string): Promise<string[]> => {
  const read = [first.message.content];
  let last = first;
  const goesOn = () => everyComponent(last.message.components).some((one) => one['label'] === label);
  while (goesOn() && read.length < 20) {
    last = await room.discord.reply(press(place, last, label));
    read.push(last.message.content);
  }
  return read;
};

const named = (no: number) => `Glaze number ${no} of the back shelf`;

test('every bucket of a long list can be read, each once', async () => {
  room = await openDiscordRoom(commands);
  const numbers = Array.from({ length: 35 }, (_, i) => i + 1);
  await say(numbers.map((no) => `/bucket add name:"${named(no)}"`));
  const { place, discord } = room;
  const pages = await readOn(place, await discord.reply(slash(place, ['bucket', 'list'])), 'More');
  expect(pages.length).toBeGreaterThan(1);
  const found = pages.flatMap((page) =>
    [...page.matchAll(/Glaze number (\d+) /g)].map(([, no]) => Number(no)),
  );
  expect(found).toEqual(numbers);
});

test('every entry of a long log can be read, each once, and each moment stands there once', async () => {
  room = await openDiscordRoom(commands);
  const notes = Array.from(
    { length: 45 },
    (_, i) => `note ${i + 1} of many that say what was done to this bucket`,
  );
  await say(['/bucket add name:"Gull Grey"', ...notes.map((note) => `/stirred bucket:1 note:"${note}"`)]);
  const { place, discord } = room;
  const first = await discord.reply(slash(place, ['bucket', 'log'], { bucket: '1' }));
  const pages = await readOn(place, first, 'Older');
  const text = pages.join('\n');
  const found = [...text.matchAll(/note (\d+) of many/g)].map(([, no]) => Number(no));
  expect(found).toEqual(notes.map((_, i) => notes.length - i));
  expect(text).not.toMatch(/<t:\d+:\w> <t:/);
  expect(text).toMatch(/<t:\d+:f>/);
});

test('all of the help can be read', async () => {
  room = await openDiscordRoom(commands);
  const { place, discord } = room;
  const pages = await readOn(place, await discord.reply(slash(place, ['help'])), 'More');
  const { jobs } = room.ports.words.help;
  const text = pages.join('\n');
  for (const { job } of jobs.filter(({ keeper }) => !keeper)) expect(text).toContain(`**${job}**`);
});
