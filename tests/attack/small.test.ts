import { existsSync, writeFileSync } from 'node:fs';
import Sqlite from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { withoutSecrets } from '../../src/contract/withoutSecrets.ts';
import { parseLine, leafAt } from '../../src/contract/parseLine.ts';
import { commands } from '../../src/start/registry.ts';
import { openStore } from '../../src/store/openStore.ts';
import { demoStudio } from '../helpers/demoStudio.ts';
import { standsIn } from '../helpers/store/fileBytes.ts';
import { openGlazeRoom, openRoomWithGullGrey } from '../helpers/room/glazeRoom.ts';
import { phoneOf, testRoom } from '../helpers/room/roomServer.ts';
import { openTestStore, settableClock, storeFile } from '../helpers/store/storeFile.ts';

describe('the store', () => {
  it('lets a turn within a turn throw, which would wait for itself for ever', async () => {
    const { books, people } = await openTestStore();
    const studio = await people.studioOf('terminal', 'here', 'Elsewhere');
    const inner = () => books.read(studio, (book) => book.studio());
    await expect(books.read(studio, inner)).rejects.toThrow('within a turn');
    await expect(
      books.writeOnce(studio, 'key', async () => ({ keep: true, value: await inner() })),
    ).rejects.toThrow('within a turn');
    // Later transactions, also concurrent ones, work as before.
    expect(await Promise.all([inner(), inner()])).toHaveLength(2);
  });

  it('lets only so many wait, and says so', async () => {
    const { books, people } = await openTestStore();
    const studio = await people.studioOf('terminal', 'here', 'Elsewhere');
    const asked = Array.from({ length: 4_050 }, () => books.read(studio, async () => 'read'));
    const done = await Promise.allSettled(asked);
    const refused = done.filter(({ status }) => status === 'rejected');
    expect(refused.length).toBeGreaterThan(0);
    expect(refused.length).toBeLessThanOrEqual(50);
    expect(refused[0]).toMatchObject({ reason: { kind: 'crowded' } });
  });

  it('leaves no lock beside a database of another program', async () => {
    const file = storeFile();
    const other = new Sqlite(file);
    other.exec('create table cats (name text)');
    other.close();
    const clock = settableClock();
    await expect(openStore(file, { clock })).rejects.toMatchObject({ kind: 'not-ours' });
    expect(existsSync(`${file}.lock`)).toBe(false);
    const broken = storeFile();
    writeFileSync(broken, 'no database, but long enough to be looked into '.repeat(40));
    await expect(openStore(broken, { clock })).rejects.toMatchObject({ kind: 'corrupt' });
    expect(existsSync(`${broken}.lock`)).toBe(false);
  });
});

describe('a code of /link', () => {
  it.each([
    ['/link code:abcd-2345', '/link code:"…"'],
    ['/link abcd-2345 sure:yes', '/link code:"…" sure:yes'],
    ['link CODE:"abcd 2345"', '/link code:"…"'],
    ['/link cdoe:abcd-2345', '/link …'],
    ['\0/link code:abcd-2345', '/link code:"…"'],
    ['/link code:abcd-2345 code:abcd-2345', '/link …'],
    ['/stirred bucket:gg', '/stirred bucket:gg'],
  ])('typed as %s is kept as %s', (line, kept) => {
    expect(withoutSecrets(line, commands)).toBe(kept);
  });

  it('stands in no post and in no answer that the file keeps', async () => {
    const open = await testRoom();
    const keeper = await phoneOf(open, 'Odile', { code: open.keeperCode, passcode: '' });
    const wren = await phoneOf(open, 'Wren');
    const { text } = await wren.say('/link');
    const [, code = 'none'] = /"([2-9a-hjkmnp-z]{4}-[2-9a-hjkmnp-z]{4})"/.exec(text) ?? [];
    expect((await keeper.say(`/link code:${code}`)).json).toMatchObject({ reply: { kind: 'refusal' } });
    await keeper.say(`/link cdoe:${code}`);
    await keeper.say(`/link code:${code} sure:no`);
    expect((await keeper.get('/api/start')).text).not.toContain(`code:${code}\\"`);
    await open.room.stop();
    expect(standsIn(open.file, code)).toBe(false);
  });
});

describe('what is said and offered', () => {
  it('a member is offered nothing that is for keepers, and no caution twice', async () => {
    const { app, as, now, close } = await demoStudio('2026-05-20T21:00:00Z');
    const wren = await as('Wren');
    const asked = [
      ...Array.from({ length: 12 }, (_, i) => ['bucket', 'show', String(i + 1)] as const),
      ...Array.from({ length: 12 }, (_, i) => ['water-or-stir', '', String(i + 1)] as const),
      ...Array.from({ length: 12 }, (_, i) => ['dose', '', String(i + 1)] as const),
    ];
    for (const [name, leaf, bucket] of asked) {
      const path = leaf === '' ? [name] : [name, leaf];
      const reply = await app.desk.dispatch({ ...wren, key: '', now, path, typed: { bucket } });
      for (const { line } of reply.actions ?? []) {
        const parsed = parseLine(line, commands);
        expect(parsed.ok && leafAt(commands, parsed.value.path)?.who, line).toBe('member');
      }
      const cautions = (reply.cautions ?? []).map((one) => JSON.stringify(one));
      expect(new Set(cautions).size, path.join()).toBe(cautions.length);
    }
    await close();
  });

  it('the studio’s card shows the keepers’ role and the reminders’ channel', async () => {
    const { keeper, say } = await openGlazeRoom();
    const [role, channel] = ['123456789012345678', '223456789012345678'];
    await keeper(1, `/studio set role:<@&${role}> channel:<#${channel}>`);
    const card = await say(2, '/studio show');
    expect(card.facts.map(({ text }) => text)).toEqual(
      expect.arrayContaining([`<@&${role}>`, `<#${channel}>`]),
    );
    // A member mention is no role, and a role mention is no channel.
    for (const typed of [`role:<@${role}>`, `role:<#${role}>`, `channel:<@&${channel}>`])
      expect(await keeper(3, `/studio set ${typed}`), typed).toMatchObject({ ok: false });
  });

  it('a batch by volume is told what mixed glaze is called', async () => {
    const { say } = await openRoomWithGullGrey();
    const refused = await say(1, '/added bucket:gg what:batch amount:"5 l"');
    expect(refused).toMatchObject({ ok: false });
    expect(refused.title).toContain('what:glaze');
  });

  it.each([
    ['gravity', '1.44', '1.42-1.46'],
    ['seconds', '14', '12-16'],
  ])('a %s that is no range gets an example of its own', async (option, typed, example) => {
    const { keeper } = await openGlazeRoom();
    const refused = await keeper(1, `/bucket add name:Heron ${option}:${typed}`);
    expect(refused.title).toContain(`such as ${example}`);
  });
});
