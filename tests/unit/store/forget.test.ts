import { describe, expect, it } from 'vitest';
import { openDesk } from '../../../src/desk/dispatch.ts';
import { speak } from '../../../src/desk/speak.ts';
import { commands } from '../../../src/start/registry.ts';
import { checkStates } from '../../../src/store/states/checkStates.ts';
import { openEngine } from '../../../src/store/engine/either/openEngine.ts';
import { migrations } from '../../../src/store/migrations/migrations.ts';
import { openDatabase } from '../../../src/store/engine/sqlite/database.ts';
import { nextErasure } from '../../../src/store/people/erasureRow.ts';
import { eraseEntries, gatherTexts } from '../../../src/store/people/eraseWords.ts';
import { forgetMember } from '../../../src/store/people/forgetMember.ts';
import { streamNo, type Role } from '../../../src/studio/ids.ts';
import { en } from '../../../src/words/en.ts';
import { isStored } from '../../helpers/store/isStored.ts';
import { onPostgres, queryAt } from '../../helpers/postgres/databases.ts';
import { handbook } from '../../helpers/handbook.ts';
import { gullGreyLine } from '../../helpers/room/glazeRoom.ts';
import { noonPlus } from '../../helpers/store/storeEvents.ts';
import { openTestStore } from '../../helpers/store/storeFile.ts';

const studioOf = async (file?: string) => {
  const store = await openTestStore(file === undefined ? {} : { file });
  const report = (error: unknown) => {
    throw error;
  };
  const desk = openDesk({ commands, books: store.books, words: en, handbook, report });
  const studio = await store.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
  let keys = 0;
  const member = (name: string) => store.people.memberOf(studio, 'terminal', name, name);
  const say = async (as: string, line: string, role: Role = 'member', minutes = 0) =>
    speak(
      line,
      `test:${store.file}:${++keys}:${Math.random()}`,
      { studio, member: await member(as), role, now: noonPlus(minutes) },
      { desk, words: en },
    );
  const buckets = () => store.books.read(studio, (book) => book.buckets());
  return { store, desk, studio, member, say, buckets };
};

/** A studio in which Quillfeather has written something everywhere that text is stored. */
const talkative = async () => {
  const open = await studioOf();
  const { say } = open;
  await say('Tove', gullGreyLine(), 'keeper');
  await say('Tove', '/studio keeper member:Tove', 'keeper');
  await say(
    'Quillfeather',
    '/reading bucket:gg gravity:1.44 stirred:yes look:right note:"left my xylophone here"',
  );
  await say('Quillfeather', '/added bucket:gg what:water amount:300ml note:"from the vuvuzela tap"');
  await say('Quillfeather', '/coat on kind:wax pieces:"4 zithers" for:"tomorrow 7pm"');
  await say('Quillfeather', '/prep piece:"tall theremin" bucket:gg');
  await say('Tove', '/bucket hold bucket:gg why:"Quillfeather knows"', 'keeper');
  await say('Quillfeather', '/bucket hold bucket:gg why:"Quillfeather dropped a glockenspiel"', 'keeper');
  await say('Tove', '/studio keeper member:Quillfeather', 'keeper');
  return open;
};
const words = ['xylophone', 'vuvuzela', 'zithers', 'theremin'];

describe('forgetting a member', () => {
  it('first says what goes and what stays, and does nothing', async () => {
    const { say, store, studio } = await talkative();
    const told = await say('Quillfeather', '/forget-me');
    expect(told).toMatchObject({ kind: 'answer', private: true, data: { forgotten: false } });
    expect(told.actions?.map(({ line }) => line)).toEqual(['/forget-me sure:yes']);
    expect((await say('Quillfeather', '/forget-me sure:no')).data).toEqual({ forgotten: false });
    const names = (await store.books.read(studio, (book) => book.members())).map(({ name }) => name);
    expect(names).toContain('Quillfeather');
  });

  it('leaves neither name nor words in the bytes of the file, and the arithmetic as it was', async () => {
    const { say, store, buckets } = await talkative();
    const before = await buckets();
    for (const word of ['Quillfeather', ...words]) expect(await isStored(store.file, word), word).toBe(true);
    expect((await say('Quillfeather', '/forget-me sure:yes')).data).toEqual({ forgotten: true });
    await store.erased();
    for (const word of words) expect(await isStored(store.file, word), word).toBe(false);
    // Another member's words are theirs, but a keeper can redact them.
    expect((await buckets())[0]?.hold?.why).toBe('… dropped a glockenspiel');
    const [log] = await store.books.read((await store.people.studios())[0]?.id ?? never(), async (book) => [
      await book.entries(streamNo(1), { most: 50 }),
    ]);
    expect(log?.length).toBe(5);
    expect(log?.every(({ note }) => note === undefined)).toBe(true);
    const bare = (state: Awaited<ReturnType<typeof buckets>>[number] | undefined) => ({
      ...state,
      hold: undefined,
    });
    expect(bare((await buckets())[0])).toEqual(bare(before[0]));
    expect(await checkStates(store.file)).toMatchObject({ outdated: 0, differing: [] });
    expect((await say('Tove', '/bucket log bucket:gg', 'keeper')).data).toMatchObject({
      entries: expect.arrayContaining([expect.objectContaining({ by: 'a former member', kind: 'reading' })]),
    });
  });

  it('takes the name itself out of the bytes where nobody else has written it', async () => {
    const { say, store } = await studioOf();
    await say('Tove', gullGreyLine(), 'keeper');
    await say('Quillfeather', '/stirred bucket:gg minutes:3 note:"a kazoo fell in"');
    await say('Tove', '/bucket log bucket:gg', 'keeper');
    await say('Tove', '/studio keeper member:Quillfeather', 'keeper');
    await say('Tove', '/studio keeper member:Tove', 'keeper');
    expect(await isStored(store.file, 'Quillfeather')).toBe(true);
    await say('Quillfeather', '/forget-me sure:yes');
    await store.erased();
    expect(await isStored(store.file, 'Quillfeather')).toBe(false);
    expect(await isStored(store.file, 'kazoo')).toBe(false);
    await store.close();
    expect(await isStored(store.file, 'Quillfeather')).toBe(false);
  });

  it('treats a member who returns as a new one, without the old rights', async () => {
    const { say, store, studio, member } = await talkative();
    const old = await member('Quillfeather');
    await say('Quillfeather', '/forget-me sure:yes');
    const fresh = await member('Quillfeather');
    expect(fresh).not.toBe(old);
    const { keepers } = await store.books.read(studio, (book) => book.studio());
    expect(keepers).toEqual([await member('Tove')]);
    expect((await say('Quillfeather', '/undo entry:1-2')).kind).toBe('refusal');
    expect((await say('Quillfeather', '/coat list')).data).toEqual({ coats: [] });
    expect((await say('Quillfeather', '/remind list')).data).toEqual({ reminders: [] });
  });

  it('plans no reminders for them when the studio changes its hours', async () => {
    const { say, store, studio, member } = await talkative();
    const old = await member('Quillfeather');
    await say('Quillfeather', '/forget-me sure:yes');
    await say('Tove', '/studio hours daily:09:00-21:00', 'keeper');
    expect(await store.books.read(studio, (book) => book.reminders(old))).toEqual([]);
  });

  it('is refused to the only keeper, who is told what to do', async () => {
    const { say, member, store, studio } = await studioOf();
    await say('Tove', '/studio keeper member:Tove', 'keeper');
    const refused = await say('Tove', '/forget-me sure:yes', 'keeper');
    expect(refused.kind).toBe('refusal');
    expect(JSON.stringify(refused.title)).toContain('/studio keeper');
    const tove = await member('Tove');
    expect(await store.books.read(studio, (book) => book.member(tove))).toBeDefined();
  });

  it('leaves the words of others alone when the name is a common word', async () => {
    const { say, store, buckets, studio } = await studioOf();
    await say('Tove', gullGreyLine({ name: 'Water Blue', nick: 'wb' }), 'keeper');
    await say('Tove', '/added bucket:wb what:water amount:300ml note:"water from the tap"', 'keeper');
    await say('Water', '/stirred bucket:wb minutes:3 note:"mine"');
    await say('Water', '/forget-me sure:yes');
    await store.erased();
    expect((await buckets())[0]?.settings.name).toBe('Water Blue');
    const entries = await store.books.read(studio, (book) => book.entries(streamNo(1), { most: 9 }));
    expect(entries.map(({ note }) => note)).toEqual([undefined, 'water from the tap', undefined]);
    const asked = await say('Tove', '/water-or-stir bucket:wb', 'keeper');
    expect(asked.kind).toBe('answer');
  });

  it('refuses requests that were on their way', async () => {
    const { store, desk, studio, member, say } = await studioOf();
    await say('Tove', gullGreyLine(), 'keeper');
    const quill = await member('Quillfeather');
    const send = (key: string, path: string[], typed: Record<string, string>) =>
      desk.dispatch({ key, studio, member: quill, role: 'member', now: noonPlus(1), path, typed });
    const stir = (n: number) =>
      send(`stir ${n}`, ['stirred'], { bucket: 'gg', minutes: '3', note: `bassoon ${n}` });
    const all = await Promise.all([
      ...[1, 2, 3].map(stir),
      send('forget', ['forget-me'], { sure: 'yes' }),
      ...[4, 5, 6].map(stir),
    ]);
    expect(all.map(({ kind }) => kind)).toEqual([
      ...Array.from({ length: 4 }, () => 'answer'),
      ...Array.from({ length: 3 }, () => 'refusal'),
    ]);
    await store.erased();
    expect(await isStored(store.file, 'bassoon')).toBe(false);
    expect(await isStored(store.file, 'Quillfeather')).toBe(false);
    // A repeat of a request that was answered is not run again.
    expect((await stir(1)).kind).toBe('answer');
    expect((await store.books.read(studio, (book) => book.entries(streamNo(1), { most: 9 }))).length).toBe(4);
  });

  it.each(['queued', 'gathered', 'half erased'])(
    'goes on at the next start when it was cut off: %s',
    async (cut) => {
      const { store, studio, member } = await talkative();
      const quill = await member('Quillfeather');
      await store.close();
      const { turns, close } = await openEngine(store.file, { waitMs: 0, migrations });
      await turns.write('directory', async ({ db }) => {
        await forgetMember(db, studio, quill);
        return { keep: true, value: undefined };
      });
      const erasure = await turns.read('directory', ({ db }) => nextErasure(db));
      if (!erasure) throw new Error('nothing is queued');
      if (cut !== 'queued') expect(await gatherTexts(turns, erasure)).toContain('4 zithers');
      if (cut === 'half erased') {
        const texts = JSON.stringify({ names: erasure.names, texts: await gatherTexts(turns, erasure) });
        await turns.write('directory', async ({ db }) => {
          await db.updateTable('erasures').set({ step: 'clean', words: texts }).execute();
          return { keep: true, value: undefined };
        });
        await eraseEntries(turns, erasure);
      }
      await close();
      expect(await isStored(store.file, 'xylophone')).toBe(true);
      const next = await studioOf(store.file);
      await next.store.erased();
      for (const word of words) expect(await isStored(store.file, word), word).toBe(false);
      expect(await checkStates(store.file)).toMatchObject({ differing: [] });
    },
  );

  it.runIf(onPostgres)('clears the server’s tables of what was deleted, also of names', async () => {
    const { store, say } = await talkative();
    await say('Quillfeather', '/forget-me sure:yes');
    await store.erased();
    const left = await queryAt(
      store.file,
      "select relname from pg_stat_user_tables where schemaname = 'public' and last_vacuum is null",
    );
    expect(left).toEqual([]);
  });

  it.skipIf(onPostgres)('waits for readers of an older state, such as a backup', async () => {
    const { store, say } = await talkative();
    const reader = openDatabase(store.file, migrations.length);
    reader.sqlite.exec('begin');
    reader.sqlite.prepare('select count(*) from events').get();
    await say('Quillfeather', '/forget-me sure:yes');
    await new Promise((resolve) => setTimeout(resolve, 1_000));
    expect((await say('Tove', '/stirred bucket:gg')).kind).toBe('answer');
    reader.sqlite.close();
    await store.erased();
    for (const word of words) expect(await isStored(store.file, word), word).toBe(false);
  });

  it.skipIf(onPostgres)('lets nobody wait for a reader that holds up the bytes of another', async () => {
    const { store, say } = await talkative();
    await say('Odo', '/stirred bucket:gg minutes:3 note:"a kazoo fell in"');
    const reader = openDatabase(store.file, migrations.length);
    reader.sqlite.exec('begin');
    reader.sqlite.prepare('select count(*) from events').get();
    await say('Quillfeather', '/forget-me sure:yes');
    await new Promise((resolve) => setTimeout(resolve, 1_000));
    await say('Odo', '/forget-me sure:yes');
    const other = openDatabase(store.file, migrations.length);
    const noted = other.sqlite.prepare("select count(*) from notes where note like '%kazoo%'").pluck();
    await expect.poll(() => noted.get(), { timeout: 5_000 }).toBe(0);
    other.sqlite.close();
    reader.sqlite.close();
    await store.erased();
    for (const word of [...words, 'kazoo']) expect(await isStored(store.file, word), word).toBe(false);
  });
});

const never = (): never => {
  throw new Error('there is a studio');
};
