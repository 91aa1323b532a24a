import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { systemClock } from '../../src/clock.ts';
import { connectDiscord } from '../../src/start/connectDiscord.ts';
import { openStore } from '../../src/store/openStore.ts';
import { DiscordDouble } from '../helpers/discord/discordDouble.ts';
import { slash } from '../helpers/discord/discordInteraction.ts';
import type { Person } from '../helpers/discord/discordWorld.ts';
import { standsIn } from '../helpers/store/fileBytes.ts';
import { gullGrey, Phone, phoneOf, sayAsKeeper, testRoom } from '../helpers/room/roomServer.ts';

const secret = 'oyster catcher';
const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };

/** A studio with a Discord server and a local room, in one file. */
const bothPlatforms = async () => {
  const double = await DiscordDouble.start();
  const folder = mkdtempSync(join(tmpdir(), 'people-'));
  const file = join(folder, 'studio.db');
  const store = await openStore(file, { clock: systemClock });
  await store.people.studioOf('discord', double.world.guildId, 'Wrackline Clay Co-op');
  await store.close();
  const open = await testRoom({ folder });
  const { app, room } = open;
  const bot = await connectDiscord(
    { ...app, desk: room.postingDesk(app.desk) },
    { token: double.token, api: double.api },
    { log: quiet, draw: async () => Buffer.from('png'), fatal: () => undefined },
  );
  onTestFinished(async () => {
    await bot.stop();
    await double.stop();
    expect(double.problems).toEqual([]);
  });
  const channel = double.channel();
  const say = (by: Person, path: string[], typed: Record<string, string | boolean> = {}) =>
    double.reply(slash({ by, channel }, path, typed));
  const codeOf = async (by: Person) => {
    const { message, ephemeral } = await say(by, ['link']);
    expect(ephemeral).toBe(true);
    return /[2-9a-hjkmnp-z]{4}-[2-9a-hjkmnp-z]{4}/.exec(message.content)?.[0] ?? '';
  };
  await sayAsKeeper(open, gullGrey);
  return { open, app, file, double, say, codeOf };
};

const meOn = async (phone: Phone) => (await phone.get('/api/start')).json['me'];

describe('a Discord member in the room', () => {
  it('comes in by the code of /link under their own name, with a word of their own, and is one member', async () => {
    const { open, double, say, codeOf } = await bothPlatforms();
    const wren = double.person('Wren');
    await say(wren, ['coat', 'on'], { kind: 'wax', pieces: '3 bowls' });
    const phone = new Phone(open.port);
    const taken = await phone.signIn({ name: 'Wren', secret, passcode: open.passcode });
    expect(taken.json).toMatchObject({ why: 'name-taken' });
    const code = await codeOf(wren);
    expect((await phone.signIn({ name: 'Wren', secret, passcode: code.toUpperCase() })).status).toBe(200);
    expect(await meOn(phone)).toMatchObject({ name: 'Wren', keeper: false });
    expect((await phone.say('/coat list')).text).toContain('3 bowls');
    // The code is used up, so nobody else can sign in with it.
    const other = await new Phone(open.port).signIn({ name: 'Knot', secret, code });
    expect(other.json).toMatchObject({ why: 'code-used' });
    // From now on the name and its password sign in, with the studio's passcode as for everybody.
    const again = new Phone(open.port);
    expect((await again.signIn({ name: 'Wren', secret, passcode: open.passcode })).status).toBe(200);
    expect((await again.say('/coat list')).text).toContain('3 bowls');
    const thief = await new Phone(open.port).signIn({
      name: 'Wren',
      secret: 'not the word',
      passcode: open.passcode,
    });
    expect(thief.status).toBe(401);
  });

  it('is told apart from whoever has the name already, and from whoever has no code', async () => {
    const { open, double, codeOf } = await bothPlatforms();
    await phoneOf(open, 'Tern', { secret });
    const wren = double.person('Wren');
    const code = await codeOf(wren);
    const phone = new Phone(open.port);
    for (const name of ['Tern', 'TERN', 'Warden'])
      expect((await phone.signIn({ name, secret, code })).json, name).toMatchObject({ why: 'name-taken' });
    expect((await phone.signIn({ name: 'Wren', secret: 'short', code })).json).toMatchObject({
      why: 'short-secret',
    });
    for (const wrong of ['aaaa-aaaa', '2345-6789', `${code}x`])
      expect((await phone.signIn({ name: 'Wren', secret, passcode: wrong })).status, wrong).toBe(401);
    // A failed attempt does not use the code up.
    expect((await phone.signIn({ name: 'Wren the elder', secret, code })).status).toBe(200);
  });

  it('who forgot their word takes a new one by a code', async () => {
    const { open, double, codeOf } = await bothPlatforms();
    const wren = double.person('Wren');
    const first = new Phone(open.port);
    await first.signIn({ name: 'Wren', secret, code: await codeOf(wren) });
    const second = new Phone(open.port);
    const given = { name: 'Wren', secret: 'another word' };
    expect((await second.signIn({ ...given, code: await codeOf(wren) })).status).toBe(200);
    const third = new Phone(open.port);
    expect((await third.signIn({ ...given, passcode: open.passcode })).status).toBe(200);
    expect((await third.signIn({ name: 'Wren', secret, passcode: open.passcode })).status).toBe(401);
  });

  it('who was in the room under another name stays signed in, and their posts and rights go along', async () => {
    const { open, double, say, codeOf } = await bothPlatforms();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    const room = await phoneOf(open, 'Wrennie', { secret });
    await keeper.say('/studio keeper member:Wrennie');
    await room.say('/coat on kind:wax pieces:"4 mugs"');
    const heard = await room.listen();
    await heard.until(1);
    const wren = double.person('Wren');
    await say(wren, ['stirred'], { bucket: 'gg', minutes: '3' });
    const line = `/link code:${await codeOf(wren)} sure:yes`;
    const linked = await room.say(line, 'sent-twice-0123456789');
    expect(linked.json).toMatchObject({ name: 'Wren', private: true, reply: { kind: 'answer' } });
    // A phone that missed the answer sends the line again, with the same key.
    expect((await room.say(line, 'sent-twice-0123456789')).json).toEqual(linked.json);
    expect(await meOn(room)).toMatchObject({ name: 'Wren', keeper: true });
    // Earlier private posts are still visible to the member, and to nobody else.
    const start = await room.get('/api/start');
    expect(start.text).toContain('4 mugs');
    expect((await keeper.get('/api/start')).text).not.toContain('4 mugs');
    expect((await room.say('/undo entry:1-2')).json).toMatchObject({ reply: { kind: 'answer' } });
    const list = await say(wren, ['coat', 'list']);
    expect(list.message.content).toContain('4 mugs');
    expect((await say(wren, ['bucket', 'hold'], { bucket: 'gg', why: 'frozen' })).ephemeral).toBe(false);
    heard.message.destroy();
  });
});

describe('the demo', () => {
  it('links nobody: anybody can be anybody there', async () => {
    const open = await testRoom({ demo: true });
    const phone = await phoneOf(open, 'Wren', { secret: '', passcode: '' });
    for (const line of ['/link', '/link code:abcd-2345'])
      expect((await phone.say(line)).json, line).toMatchObject({ reply: { kind: 'refusal' } });
  });
});

describe('being forgotten', () => {
  it('reaches room, stream, restart and bytes, from whichever platform it is asked', async () => {
    const { open, app, file, double, say, codeOf } = await bothPlatforms();
    const quill = double.person('Quillfeather');
    const phone = new Phone(open.port);
    await phone.signIn({ name: 'Quillfeather', secret, code: await codeOf(quill) });
    const other = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    await phone.say('/stirred bucket:gg note:"left my xylophone here"');
    await phone.say('/coat on kind:wax pieces:"4 zithers"');
    await say(quill, ['stirred'], { bucket: 'gg', note: 'and a vuvuzela' });
    await other.say('/bucket log bucket:gg');
    await other.say('/export');
    expect((await other.get('/api/start')).text).toContain('Quillfeather');
    const heard = await phone.listen();
    const cut = new Promise((resolve) => heard.message.once('close', resolve));
    heard.message.resume();
    const asked = await say(quill, ['forget-me']);
    expect(asked.ephemeral).toBe(true);
    expect(await meOn(phone)).toBeDefined();
    expect((await say(quill, ['forget-me'], { sure: true })).message.content).toContain(
      'You are forgotten here.',
    );
    await cut;
    expect(await meOn(phone)).toBeUndefined();
    await app.store.erased();
    const words = ['Quillfeather', 'xylophone', 'zithers', 'vuvuzela'];
    const replayed = await other.listen();
    await replayed.until(2);
    const seen = [(await other.get('/api/start')).text, JSON.stringify(replayed.posts)].join('\n');
    replayed.message.destroy();
    const files = await Promise.all(
      replayed.posts.map(({ no }) => other.get(`/api/post/${Number(no)}/file`)),
    );
    for (const word of words) {
      expect(seen, word).not.toContain(word);
      for (const { text } of files) expect(text, word).not.toContain(word);
      expect(standsIn(file, word), word).toBe(false);
    }
    const after = await open.again();
    const next = new Phone(after.port);
    next.setCookie('room', phone.cookie('room') ?? '');
    expect(await meOn(next)).toBeUndefined();
    for (const word of words) expect(standsIn(file, word), word).toBe(false);
    await after.room.stop();
    await after.app.store.close();
  });

  it('lets the name be taken by somebody new, who is nobody’s heir', async () => {
    const { open, app } = await bothPlatforms();
    const phone = await phoneOf(open, 'Quillfeather', { secret });
    await phone.say('/coat on kind:wax pieces:"4 zithers"');
    expect((await phone.say('/forget-me sure:yes')).json).toMatchObject({ reply: { kind: 'answer' } });
    await app.store.erased();
    const next = await phoneOf(open, 'Quillfeather', { secret: 'another word' });
    expect((await next.say('/coat list')).text).not.toContain('zithers');
    expect((await next.get('/api/start')).json).toMatchObject({
      me: { name: 'Quillfeather', keeper: false },
    });
  });
});

describe('taking the data out', () => {
  it('hands the file over on Discord, to the keeper alone', async () => {
    const { double, say } = await bothPlatforms();
    const keeper = double.person('Odile', { manages: true });
    const { files, ephemeral } = await say(keeper, ['export'], { as: 'csv' });
    expect(ephemeral).toBe(true);
    expect(files.map(({ name }) => name)).toEqual([
      expect.stringMatching(/^glaze-room-\d{4}-\d\d-\d\d\.csv$/),
    ]);
    const refused = await say(double.person('Wren'), ['export']);
    expect(refused.message.content).toContain('for keepers');
    expect(refused.files).toEqual([]);
  });

  it('hands it over in the room by a link that is the keeper’s alone, and keeps it off the disk', async () => {
    const { open, file } = await bothPlatforms();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    await keeper.say('/stirred bucket:gg note:"a xylophone"');
    const { json } = await keeper.say('/export');
    expect(json).toMatchObject({ private: true, reply: { file: expect.stringMatching(/\.json$/) } });
    const path = `/api/post/${Number(json['no'])}/file`;
    const got = await keeper.get(path);
    expect(got.headers['content-disposition']).toMatch(/^attachment; filename="glaze-room-.*\.json"$/);
    expect(got.json).toMatchObject({
      format: 1,
      members: expect.arrayContaining([expect.objectContaining({ name: 'Odile' })]),
    });
    const wren = await phoneOf(open, 'Wren', { secret });
    expect((await wren.get(path)).status).toBe(404);
    await open.room.stop();
    expect(standsIn(file, '"exportedAt"')).toBe(false);
    expect(standsIn(file, 'exportedAt')).toBe(false);
  });
});
