import { describe, expect, it, onTestFinished } from 'vitest';
import { openGlazeRoom } from '../helpers/room/glazeRoom.ts';
import { phoneOf, testRoom } from '../helpers/room/roomServer.ts';

const wrensNumber = '123456789012345678';

/** Wren, a Discord user, and Mallory, who has chosen a display name. */
const roomWith = async (mallorysName: string) => {
  const room = await openGlazeRoom();
  onTestFinished(() => expect(room.bugs).toEqual([]));
  const { people } = room.store;
  // The member who was met first is first in every list.
  const mallory = await people.memberOf(room.studio, 'discord', '999999999999999999', mallorysName);
  const wren = await people.memberOf(room.studio, 'discord', wrensNumber, 'Wren');
  const keepers = async () => (await room.store.books.read(room.studio, (book) => book.studio())).keepers;
  return { ...room, wren, mallory, keepers };
};

describe('naming a keeper', () => {
  it.each([`<@${wrensNumber}>`, `<@!${wrensNumber}>`, wrensNumber])(
    'takes the mention %s for the member of that number, not for one who took it as her name',
    async (typed) => {
      const { keeper, keepers, wren } = await roomWith(wrensNumber);
      expect(await keeper(1, `/studio keeper member:${typed}`)).toMatchObject({ ok: true });
      expect(await keepers()).toEqual([wren]);
    },
  );

  it('names nobody by the number of somebody whom the bot never met', async () => {
    const { keeper, keepers } = await roomWith('111111111111111111');
    const reply = await keeper(1, '/studio keeper member:<@111111111111111111>');
    expect(reply).toMatchObject({ ok: false });
    expect(reply.title).toContain('know that member');
    expect(await keepers()).toEqual([]);
  });

  it('asks when only the beginning of a name was typed, however few it fits', async () => {
    const { keeper, keepers, mallory } = await roomWith('Wrenny');
    expect(await keeper(1, '/studio keeper member:Wren is:keeper')).toMatchObject({ ok: true });
    const asked = await keeper(2, '/studio keeper member:Wrenn');
    expect(asked).toMatchObject({ kind: 'choice', actions: [{ line: '/studio keeper member:Wrenny' }] });
    expect(await keepers()).toHaveLength(1);
    expect(await keeper(3, asked.actions[0]?.line ?? '')).toMatchObject({ ok: true });
    expect(await keepers()).toContain(mallory);
  });

  // The last two contain a Cyrillic letter: U+051C for W, U+0435 for e.
  it.each(['Wren', 'WREN', '\u051Cren', 'Wr\u0435n'])(
    'asks when another member is called %j, and each answer leads to one of them',
    async (alike) => {
      const { keeper, keepers, wren, mallory } = await roomWith(alike);
      const asked = await keeper(1, '/studio keeper member:Wren');
      expect(asked.kind).toBe('choice');
      expect(asked.actions).toHaveLength(2);
      expect(await keepers()).toEqual([]);
      for (const { line } of asked.actions) expect(await keeper(2, line)).toMatchObject({ ok: true });
      expect(new Set(await keepers())).toEqual(new Set([wren, mallory]));
    },
  );
});

describe('naming other things', () => {
  it('asks which weighing cup is meant when two begin with what was typed', async () => {
    const { keeper, say } = await roomWith('Tove');
    for (const name of ['steel cup', 'steel mug'])
      await keeper(1, `/studio vessel name:"${name}" tare:85.4g water:100.2g`);
    await keeper(2, '/bucket add name:"Gull Grey" pail:19l volume:15l gravity:1.42-1.46');
    const asked = await say(3, '/reading bucket:1 weight:229.9g vessel:steel');
    expect(asked).toMatchObject({ kind: 'choice', actions: [{}, {}] });
    expect(await say(4, asked.actions[0]?.line ?? '')).toMatchObject({ ok: true });
  });

  it('releases no name that several of another platform have', async () => {
    const open = await testRoom();
    for (const n of ['222222222222222222', '333333333333333333'])
      await open.app.store.people.memberOf(open.studio, 'discord', n, 'Odile');
    const keeper = await phoneOf(open, 'Warden', { code: open.keeperCode, passcode: '' });
    const got = await keeper.post('/api/door/release', { name: 'Odile' });
    expect(got).toMatchObject({ status: 400, json: { why: 'several' } });
  });
});
