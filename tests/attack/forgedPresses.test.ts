import { beforeEach, describe, expect, it } from 'vitest';
import { commands } from '../../src/start/registry.ts';
import { days, later, type StudioId } from '../../src/studio/ids.ts';
import { openDiscordRoom, type DiscordRoom } from '../helpers/discord/discordRoom.ts';
import { forge, slash, type Place } from '../helpers/discord/discordInteraction.ts';
import type { StoredMessage } from '../helpers/discord/discordWorld.ts';
import { savedIn } from './permissions/savedIn.ts';

let room: DiscordRoom;
let member: Place;
let shown: StoredMessage;
/** A studio on another server, whose people this one’s know nothing of. */
let elsewhere: StudioId;

beforeEach(async () => {
  room = await openDiscordRoom(commands);
  const { discord, store, place } = room;
  member = place;
  const keeper = { by: discord.person('Ilse', { manages: true }), channel: place.channel };
  await discord.reply(slash(keeper, ['bucket', 'add'], { name: 'Gull Grey' }));
  shown = await discord.reply(slash(member, ['water-or-stir'], { bucket: '1' }));
  elsewhere = await store.people.studioOf('discord', '600000000000000001', 'Elsewhere');
  return async () => {
    await room.stop();
    expect(discord.problems).toEqual([]);
  };
});

/** What the presser reads after a forged id; nothing is saved. */
const refused = async (id: string, place: Place = member): Promise<string> => {
  const before = await savedIn(room.file);
  const { message, ephemeral } = await room.discord.reply(forge(place, shown, id));
  expect(await savedIn(room.file)).toBe(before);
  expect(ephemeral).toBe(true);
  return message.content;
};

describe('a button that nobody was offered', () => {
  it.each([
    ['/bucket retire bucket:1', 'for keepers'],
    ['/studio keeper member:Mara is:keeper', 'for keepers'],
    ['/export', 'for keepers'],
    ['/redact name:"Gull" sure:yes', 'for keepers'],
    ['/undo entry:1-1', 'A keeper can retire'],
    ['/stirred bucket:1 after:999', 'no entry 999'],
  ])('does no more than its presser may: %s', async (line, why) => {
    expect(await refused(`r//${line}`)).toMatch(new RegExp(why, 'i'));
  });

  it.each([
    '',
    'r',
    'x//\u002fhelp',
    'r*',
    'r*none',
    'r//',
    'r//no command',
    `r//${'/'.repeat(90)}`,
    'rr//\u002fhelp',
    '../../help',
  ])('with an id that means nothing is told so: %j', async (id) => {
    expect(await refused(id)).toMatch(/too old|Type|type/);
  });
});

describe('a button of another studio', () => {
  it('shows and does nothing here, though its line is stored in the same file', async () => {
    const { heldLines } = room.store;
    const until = later(room.ports.clock.now(), days(1));
    const held = heldLines.hold(elsewhere, '/ask question:"the secret of Elsewhere"', until);
    for (const press of ['r', 'e', 'f1']) {
      const said = await refused(`${press}*${held}`);
      expect(said).toMatch(/too old/);
      expect(said).not.toMatch(/Elsewhere|secret/);
    }
  });

  it('does nothing there for somebody of this server, in a channel or in a direct message', async () => {
    const line = '/stirred bucket:1';
    expect(await refused(`r/${elsewhere}/${line}`)).toMatch(/too old/);
    const direct: Place = { by: member.by, channel: { id: '900000000000000001', kind: 'dm' } };
    expect(await refused(`r/${elsewhere}/${line}`, direct)).toMatch(/not on it any more|server/);
    expect(await refused('r/no-such-studio//stirred bucket:1', direct)).toMatch(/not on it any more|server/);
  });
});
