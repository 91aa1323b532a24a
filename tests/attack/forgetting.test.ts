import { describe, expect, it } from 'vitest';
import { checkStates } from '../../src/store/states/checkStates.ts';
import { standsIn } from '../helpers/store/fileBytes.ts';
import { openRoomWithGullGrey } from '../helpers/room/glazeRoom.ts';
import { phoneOf, testRoom } from '../helpers/room/roomServer.ts';

const text = 'Ask Xanthippe for the key. She keeps it behind the vuvuzela, on the shelf by the door.';

describe('a note of the studio’s own', () => {
  it.each([
    ['removed', '/note remove note:n-1'],
    ['changed', '/note change note:n-1 title:"the key" text:"It hangs by the door." words:door'],
  ])('that is %s leaves nothing of what it said in anybody’s page, nor in the file', async (_how, line) => {
    const open = await testRoom();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    const wren = await phoneOf(open, 'Wren');
    // A line is stored up to 500 characters, so the end of this one is cut.
    const padded = `${'x'.repeat(410)} ${text}`;
    await keeper.say(`/note add title:"where the xylophone is" text:"${text}" words:"zither, spare key"`);
    await keeper.say(`/note add title:"another" text:"${padded}"`);
    await wren.say('/note list');
    await wren.say('/ask question:"where the xylophone is"');
    const words = ['Xanthippe', 'vuvuzela', 'xylophone', 'zither'];
    for (const word of words) expect((await wren.get('/api/start')).text, word).toContain(word);
    await keeper.say(line);
    await keeper.say(line.replace('n-1', 'n-2').replace('the key', 'another key'));
    await open.app.store.erased();
    for (const phone of [wren, keeper]) {
      const page = (await phone.get('/api/start')).text;
      for (const word of words) expect(page, word).not.toContain(word);
    }
    await open.room.stop();
    const file = open.file;
    for (const word of words) expect(standsIn(file, word), word).toBe(false);
  });
});

describe('somebody’s name in what things are called', () => {
  it('is taken out of every entry, and what refers to one another still does', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, '/studio vessel name:"Xanthippe\'s mug" tare:85.4g water:100.2g');
    await room.keeper(1, '/studio cup name:"cup of Xanthippe" kind:own');
    await room.keeper(1, '/studio session day:monday hours:18:00-21:00 name:"Xanthippe, beginners"');
    await room.keeper(
      2,
      '/bucket add name:"Xanthippe Blue" pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:"cup of Xanthippe"',
    );
    await room.keeper(3, '/bucket change bucket:2 name:"Sea Blue"');
    await room.say(4, '/reading bucket:2 weight:229.9g seconds:14 stirred:yes');
    const asked = await room.keeper(5, '/redact name:Xanthippe');
    expect(asked).toMatchObject({ kind: 'refusal', actions: [{ line: '/redact name:Xanthippe sure:yes' }] });
    expect(await room.say(5, '/redact name:Xanthippe sure:yes')).toMatchObject({ ok: false });
    expect(await room.keeper(6, '/redact name:Xanthippe sure:yes')).toMatchObject({ ok: true });
    await room.store.erased();
    expect(standsIn(room.store.file, 'Xanthippe')).toBe(false);
    const { vessels, cups, sessions } = await room.store.books.read(room.studio, (book) => book.studio());
    expect(vessels.map(({ name }) => name)).toEqual(["…'s mug"]);
    expect(sessions.map(({ name }) => name)).toEqual(['…, beginners']);
    const buckets = await room.store.books.read(room.studio, (book) => book.buckets());
    expect(buckets[1]?.settings).toMatchObject({ name: 'Sea Blue', cup: cups[0]?.name });
    expect(await checkStates(room.store.file)).toMatchObject({ differing: [] });
    // The cup has another name now, but readings still refer to it.
    expect(await room.say(7, '/reading bucket:2 weight:229.9g seconds:14 stirred:yes')).toMatchObject({
      ok: true,
    });
    expect(room.bugs).toEqual([]);
  });

  it('stays where two things would be called the same without it', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, '/studio vessel name:"Xanthippe" tare:85.4g water:100.2g');
    await room.keeper(1, '/studio vessel name:"…" tare:90.4g water:100.2g');
    const refused = await room.keeper(2, '/redact name:Xanthippe sure:yes');
    expect(refused).toMatchObject({ ok: false });
    expect(refused.title).toContain('have the same');
  });

  it.each(['x', '…', '   '])('is not %j, which would be everywhere', async (name) => {
    const room = await openRoomWithGullGrey();
    expect(await room.keeper(1, `/redact name:"${name}" sure:yes`)).toMatchObject({ ok: false });
  });
});
