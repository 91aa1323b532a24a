import { describe, expect, it } from 'vitest';
import { openGlazeRoom } from '../helpers/room/glazeRoom.ts';
import { Phone, phoneOf, sayAsKeeper, testRoom } from '../helpers/room/roomServer.ts';

const secret = 'oyster catcher';

describe('the address for the first keeper', () => {
  it('of an earlier start opens nothing once there is another', async () => {
    const first = await testRoom();
    const second = await first.again();
    expect(second.keeperCode).not.toBe(first.keeperCode);
    const thief = await new Phone(second.port).signIn({ name: 'Mallory', secret, code: first.keeperCode });
    expect(thief.json).toMatchObject({ why: 'code-used' });
    const keeper = await phoneOf(second, 'Odile', { code: second.keeperCode, passcode: '' });
    expect((await keeper.get('/api/start')).json).toMatchObject({ me: { keeper: true } });
    await second.room.stop();
    await second.app.store.close();
  });

  it('opens nothing at the next start when a keeper has come in meanwhile', async () => {
    const first = await testRoom();
    await phoneOf(first, 'Odile', { secret });
    await sayAsKeeper(first, '/studio keeper member:Odile');
    const second = await first.again();
    expect(second.keeperCode).toBe('');
    const thief = await new Phone(second.port).signIn({ name: 'Mallory', secret, code: first.keeperCode });
    expect(thief.json).toMatchObject({ why: 'code-used' });
    await second.room.stop();
    await second.app.store.close();
  });
});

describe('what the studio goes by', () => {
  it('is taken back by keepers only, not by the author who was one', async () => {
    const { keeper, say } = await openGlazeRoom();
    await keeper(1, '/studio set units:us', 'Tove');
    const refused = await say(2, '/undo entry:s-1', 'Tove');
    expect(refused).toMatchObject({ ok: false });
    expect(refused.title).toContain('A keeper can take it back');
    expect(await keeper(3, '/undo entry:s-1', 'Ilse')).toMatchObject({ ok: true });
  });

  it('but how somebody is reached is theirs to take back', async () => {
    const { say } = await openGlazeRoom();
    await say(1, '/remind by way:channel');
    expect(await say(2, '/undo entry:s-1')).toMatchObject({ ok: true });
  });
});

describe('the last keeper', () => {
  const withKeepers = async (...names: string[]) => {
    const room = await openGlazeRoom();
    for (const name of names) {
      await room.member(name);
      await room.keeper(1, `/studio keeper member:${name}`, 'Warden');
    }
    const keepers = async () => (await room.store.books.read(room.studio, (book) => book.studio())).keepers;
    return { ...room, keepers };
  };

  it.each(['/studio keeper member:Odile is:member', '/undo entry:s-1', '/forget-me sure:yes'])(
    'cannot step down by %s',
    async (line) => {
      const { keeper, member, keepers } = await withKeepers('Odile');
      const reply = await keeper(2, line, 'Odile');
      expect(reply).toMatchObject({ ok: false, kind: 'refusal' });
      expect(await keepers()).toEqual([await member('Odile')]);
    },
  );

  it('can step down once another is named', async () => {
    const { keeper, member, keepers } = await withKeepers('Odile', 'Tern');
    expect(await keeper(2, '/undo entry:s-1', 'Odile')).toMatchObject({ ok: true });
    expect(await keepers()).toEqual([await member('Tern')]);
  });

  it('can be made a member again by whoever is a keeper without being named', async () => {
    const { keeper, keepers } = await withKeepers('Odile');
    expect(await keeper(2, '/studio keeper member:Odile is:member', 'Warden')).toMatchObject({ ok: true });
    expect(await keepers()).toEqual([]);
  });
});
