import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Reply } from '../../src/contract/contract.ts';
import type { MemberId, StudioId } from '../../src/studio/ids.ts';
import { t } from '../../src/words/text/text.ts';
import { serverError } from '../helpers/discord/discordDouble.ts';
import type { Person } from '../helpers/discord/discordWorld.ts';
import { type DiscordRoom, openDiscordRoom } from '../helpers/discord/discordRoom.ts';

const REMINDER: Reply = { kind: 'answer', title: t`Your wax is dry enough to glaze.`, data: {} };
const NONCE = 'Zm9yIHRlc3RzIG9ubHkhIQ';

let room: DiscordRoom;
let studio: StudioId;
let member: MemberId;

beforeEach(async () => {
  room = await openDiscordRoom();
  studio = await room.store.people.studioOf('discord', room.discord.world.guildId, '');
  member = await room.store.people.memberOf(studio, 'discord', room.place.by.id, 'Mara');
  reach(room.place.by);
});

afterEach(async () => {
  expect(room.discord.problems).toEqual([]);
  await room.stop();
});

const reach = (user: Person | undefined, channel?: string): void => {
  const address = { ...(user ? { user: user.id } : {}), ...(channel === undefined ? {} : { channel }) };
  room.ports.addressOf = () => Promise.resolve(address);
};
const speak = (): Promise<string> => room.bot.voice.speak(studio, member, REMINDER, NONCE);
const direct = (): string =>
  [...room.discord.world.channels.values()].find((one) => one.kind === 'dm')?.id ?? '';
const isPost = ({ path }: { path: string }): boolean => path.endsWith('/messages');

describe('a reminder', () => {
  test('is said directly, pinging nobody else', async () => {
    expect(await speak()).toBe('said');
    const [message] = room.discord.messagesIn(direct());
    expect(message?.content).toBe('Your wax is dry enough to glaze.');
    expect(room.discord.message(message?.id).allowedMentions).toEqual({ parse: [] });
  });

  test('for somebody who has no account here is another platform’s', async () => {
    reach(undefined);
    expect(await speak()).toBe('not-mine');
  });

  test('for somebody who takes no direct messages goes to the channel, pinging that member only', async () => {
    const shy = room.discord.person('Teo', { dmClosed: true });
    reach(shy, room.place.channel.id);
    expect(await speak()).toBe('said');
    const [message] = room.discord.messagesIn(room.place.channel.id);
    expect(message?.content).toBe(`<@${shy.id}> Your wax is dry enough to glaze.`);
    expect(room.discord.message(message?.id).allowedMentions).toEqual({ parse: [], users: [shy.id] });
  });

  test('for somebody who takes none, in a studio without a channel, is closed', async () => {
    reach(room.discord.person('Teo', { dmClosed: true }));
    expect(await speak()).toBe('closed');
  });

  test('for a channel that is deleted, or where the bot may not write, is gone', async () => {
    const shy = room.discord.person('Teo', { dmClosed: true });
    for (const lost of [{ deleted: true }, { forbidden: true }]) {
      reach(shy, room.discord.channel(lost).id);
      expect(await speak()).toBe('gone');
    }
  });

  test('whose connection broke is unsure, and said again is the same message', async () => {
    room.discord.plant({ cut: 'after', how: 'closed' }, isPost);
    expect(await speak()).toBe('unsure');
    expect(await speak()).toBe('said');
    expect(room.discord.messagesIn(direct())).toHaveLength(1);
  });

  test('that only meets server errors is unsure, not lost', async () => {
    room.discord.plant(serverError, isPost, 10);
    expect(await speak()).toBe('unsure');
  });

  test('is for later when the platform cannot be reached', async () => {
    await room.discord.unreachable(async () => expect(await speak()).toBe('later'));
  });
});
