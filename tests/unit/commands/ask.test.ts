import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLine } from '../../../src/contract/parseLine.ts';
import { commands } from '../../../src/start/registry.ts';
import { openGlazeRoom, openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';
import { noonPlus } from '../../helpers/store/storeEvents.ts';

const ask = (room: GlazeRoom, question: string, minutes = 30) =>
  room.request(minutes, { path: ['ask'], typed: { question } });
const ids = (answer: { data: Record<string, unknown> }) =>
  (answer.data['answers'] as { id: string }[]).map(({ id }) => id);

describe('a question that a note answers', () => {
  it('gets the answer in its first line, at most three facts and three buttons, and what not to do', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await ask(room, 'why is my glaze pinholing');
    expect(answer).toMatchObject({ kind: 'answer', private: true });
    expect(answer.title).toMatch(/^Pinholes are gas/);
    expect(answer.facts.length).toBeLessThanOrEqual(3);
    expect(answer.actions.length).toBeLessThanOrEqual(3);
    expect(answer.dont).toHaveLength(1);
    expect(answer.reasons.join(' ')).toMatch(/Basis: .*See also: /);
    expect(ids(answer)[0]).toBe('pinholing');
    for (const { line } of answer.actions) expect(parseLine(line, commands).ok).toBe(true);
  });

  it('is followed only by notes of the same subject', async () => {
    const room = await openRoomWithGullGrey();
    const also = async (question: string) =>
      (await ask(room, question)).reasons.find((one) => one.startsWith('See also'));
    expect(await also('my glaze crawled')).toBe(
      'See also: Dust and grease on bisque; Cracks in the drying coat.',
    );
    const titles = async (question: string) =>
      (await also(question))
        ?.replace(/^See also: |\.$/g, '')
        .split('; ')
        .toSorted();
    expect(await titles('crwaling')).toEqual(await titles('crawling'));
    for (const question of ['crawling on my handle', 'why did the glaze crawl where i touched it'])
      expect(await also(question)).not.toMatch(/Hands in the bucket/);
  });

  it('is private, logs nothing, and may be asked by pressing a title', async () => {
    const room = await openRoomWithGullGrey();
    const before = await room.say(1, '/bucket log bucket:gg');
    const also = (await ask(room, 'pinholes in gg')).actions.find(({ label }) => label.startsWith('Read: '));
    expect(ids(await room.say(2, also?.line ?? ''))).not.toEqual([]);
    expect(await room.say(3, '/bucket log bucket:gg')).toEqual(before);
  });

  it('tells where the bucket stands that it names, or that is given', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.01 seconds:14 stirred:yes');
    for (const answer of [
      await ask(room, 'why does gull gray pinhole'),
      await room.say(30, '/ask question:"why does it pinhole" bucket:gg'),
    ]) {
      expect(answer.title).toMatch(/^Pinholes/);
      expect(answer.facts[0]).toEqual({
        label: 'Gull Grey',
        text: 'Gravity 1.44 ± 0.01 (window 1.42 to 1.46); last stir 29 min ago. Use it. Gravity and flow are where they should be.',
      });
      expect(answer.data['verdict']).toMatchObject({ step: 'use' });
      expect(answer.actions[0]?.line).toBe('/water-or-stir bucket:1');
    }
  });

  it('asks of which bucket, and answers in general, when a name fits several', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, '/bucket add name:"Gull Wing"');
    const answer = await ask(room, 'gull is too thick');
    expect(ids(answer)[0]).toBe('too-thick');
    expect(answer.actions.slice(0, 2).map(({ line }) => line)).toEqual([
      '/ask question:"gull is too thick" bucket:1',
      '/ask question:"gull is too thick" bucket:2',
    ]);
    const pressed = await room.say(31, answer.actions[1]?.line ?? '');
    expect(pressed.title).toMatch(/^Gull Wing: /);
  });

  it('warns of what the bucket is marked for', async () => {
    const room = await openRoomWithGullGrey(['cautions', 'caustic']);
    const answer = await ask(room, 'gg is foamy');
    expect(answer.cautions.join(' ')).toMatch(/Caustic: gloves and eye protection/);
  });
});

describe('a question that the logbook answers', () => {
  it.each(['how much water does gg need', 'can i dip in gg now', 'gg?', 'is bucket 1 ready'])(
    'by the verdict, as /water-or-stir gives it: %s',
    async (question) => {
      const room = await openRoomWithGullGrey();
      await room.say(1, '/reading bucket:gg gravity:1.50 within:0.01 seconds:25 gap:8cm stirred:yes');
      const verdict = await room.say(5, '/water-or-stir bucket:gg');
      const answer = await ask(room, question, 5);
      expect(answer.title).toBe(verdict.title);
      expect(answer.data['verdict']).toEqual(verdict.data['verdict']);
      expect(answer.actions[0]).toEqual(verdict.actions[0]);
      expect(answer.dont).toEqual(expect.arrayContaining(verdict.dont));
    },
  );

  it.each([
    'can I put water in gull grey its thick',
    'gg looks thick, splash of water?',
    'is gull grey too thin',
    'gull grey is watery',
    'should i stir gg or add water',
    'how do i know when to use gg',
    'can i pour the water off the top of gg',
    'how much epsom for gg',
  ])('by the verdict first, and the note behind it: %s', async (question) => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.50 within:0.01 seconds:14 stirred:yes');
    const verdict = await room.say(5, '/water-or-stir bucket:gg');
    // 15 l, 1.50 wanted at 1.44: 15 × 0.06 ÷ 0.44 = 2.0 l.
    expect(verdict.title).toMatch(/water/);
    const answer = await ask(room, question, 5);
    expect(answer.title).toBe(verdict.title);
    expect(answer.reasons[0]).toMatch(/^\p{Lu}[^:]+[:?] /u);
    expect(ids(answer)).not.toEqual([]);
  });

  it('by what was last done to it, when who did it is asked', async () => {
    const room = await openRoomWithGullGrey();
    expect((await ask(room, 'who stirred gull grey last')).title).toBe(
      'Gull Grey: no stir is logged. Ask around, then stir it.',
    );
    await room.say(1, '/stirred bucket:gg', 'Juno');
    await room.say(2, '/added bucket:gg what:water amount:200ml', 'Tove');
    expect((await ask(room, 'who stirred gull grey last')).title).toMatch(
      /^Gull Grey: last stir .*29 min ago.* by Juno\.$/,
    );
    expect((await ask(room, 'when was gg last stirred')).title).toMatch(/by Juno\.$/);
    expect((await ask(room, 'who added water to gull grey')).title).toMatch(/last addition .*by Tove\.$/);
    // A reading of a stirred bucket counts as a stir.
    await room.say(3, '/reading bucket:gg gravity:1.44 stirred:yes', 'Ann');
    const answer = await ask(room, 'who stirred gg last');
    expect(answer.title).toMatch(/by Ann\.$/);
    expect(answer.actions[0]?.line).toBe('/bucket log bucket:1');
    const last = answer.data['last'] as { entry: string };
    await room.say(4, `/undo entry:${last.entry}`, 'Ann');
    expect((await ask(room, 'who stirred gg last')).title).toMatch(/by Juno\.$/);
  });

  it('by the asker’s own coats, and nobody else’s', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/coat on kind:wax pieces:"3 bowls"', 'Juno');
    expect((await ask(room, 'is my wax dry yet')).title).toMatch(/^Wax emulsion and latex need a night/);
    await room.say(2, '/coat on kind:wax pieces:"tall jug"');
    const answer = await ask(room, 'is my wax dry yet');
    // At noon plus 2 min, twelve hours at least and past 05:00: 08:00, when the studio opens.
    expect(answer.title).toMatch(/^tall jug: wax emulsion: ready .*08:00/);
    expect(answer.data['coats']).toEqual([expect.objectContaining({ pieces: 'tall jug', ready: false })]);
  });

  it('by the dip time for the thickness that it names, from test tiles; without tiles in general', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.01 seconds:14 stirred:yes');
    expect((await ask(room, 'how long do i dip in gg')).title).toMatch(/^Test tiles of this bucket/);
    for (const [seconds, mm] of [
      [1, 0.6],
      [3, 0.9],
      [6, 1.2],
    ])
      await room.say(2, `/dip tile bucket:gg seconds:${seconds} thickness:${mm}mm`);
    const time = await room.say(3, '/dip time bucket:gg thickness:0.8mm');
    const answer = await ask(room, 'how long do i dip in gg for 0.8 mm', 3);
    expect(answer.title).toBe(time.title);
    expect(answer.data['seconds']).toBe(time.data['seconds']);
  });

  it('by the hold, when the bucket is on hold', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, '/bucket hold bucket:gg why:"somebody’s brush fell in"');
    for (const question of ['how long do i dip in gg', 'can i use gg', 'how much water for gg'])
      expect((await ask(room, question)).data['verdict']).toMatchObject({ step: 'on-hold' });
  });
});

describe('a question that nothing answers', () => {
  it('is told so, with the nearest titles and the keeper', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await ask(room, 'recipe for banana bread with walnuts');
    expect(answer.title).toBe('No note on that. Ask a keeper.');
    expect(answer.data).toEqual({ answers: [] });
    for (const { line } of answer.actions) expect(line).toMatch(/^\/(?:ask|note wanted) question:/);
  });

  it('is searched for and never run, whatever it contains', async () => {
    const room = await openRoomWithGullGrey();
    const before = await room.say(1, '/bucket log bucket:gg');
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          fc.string({ unit: 'binary', maxLength: 80 }),
          fc.constantFrom(
            '/undo entry:1-1',
            'after:1 bucket:gg what:water',
            '"; drop table events; --',
            '<@123> @everyone glaze',
            '__proto__ constructor toString',
            'pinhole '.repeat(60),
          ),
        ),
        async (question) => {
          const answer = await ask(room, question);
          expect(['answer', 'refusal']).toContain(answer.kind);
          expect(answer.private).toBe(true);
        },
      ),
      { numRuns: 150 },
    );
    expect(room.bugs).toEqual([]);
    expect(await room.say(1, '/bucket log bucket:gg')).toEqual(before);
  });
});

describe('the studio’s own notes', () => {
  const cookies =
    '/note add title:"Where the cookies are" text:"Cookies are in the crate. One under every runny pot." words:"cookie, stuck pots"';

  it('answer before the handbook’s when they match, as their author wrote them', async () => {
    const room = await openGlazeRoom();
    expect(ids(await ask(room, 'my glaze crawled'))[0]).toBe('crawling');
    const added = await room.keeper(
      1,
      '/note add title:"Crawling on the buff body" text:"Buff crawls unless it is sponged twice. [Ask](http://x) @everyone." words:"crawled, crawling"',
    );
    expect(added).toMatchObject({ ok: true, private: false, data: { note: 'n-1' } });
    const answer = await ask(room, 'my glaze crawled');
    expect(ids(answer).slice(0, 2)).toEqual(['n-1', 'crawling']);
    expect(answer.title).toBe('Buff crawls unless it is sponged twice.');
    expect(answer.facts).toEqual([{ label: 'More', text: '[Ask](http://x) @everyone.' }]);
    expect(answer.reasons[0]).toMatch(/^The studio’s own note n-1, by Tove/);
    // An unrelated note is not shown.
    expect(ids(await ask(room, 'is this glaze food safe'))[0]).toBe('food-contact');
  });

  it('are found in any script, and by the bucket that they are about', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, '/note add title:"Правило печи" text:"Печь открывает только хранитель."');
    await room.keeper(2, '/note add title:"Gull Grey on porcelain" text:"Two seconds, no more."');
    expect(ids(await ask(room, 'правило для печи'))).toEqual(['n-1']);
    expect(ids(await ask(room, 'gull grey on porcelain?'))[0]).toBe('n-2');
  });

  it('come after the handbook’s when they only name the bucket, and first when they are about it', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, '/bucket add name:"Bog Iron"');
    await room.keeper(
      2,
      '/note add title:"Cookies for runny glazes" text:"A clay cookie goes under every pot that wears Bog Iron or two glazes: they are in the crate by the kiln room door. Glaze that runs onto a shelf is chipped off by a keeper." words:"cookie, where are the cookies, runny glaze"',
    );
    await room.keeper(3, '/note add title:"Gull Grey" text:"Dip it for two seconds, no more."');
    for (const [question, first] of [
      ['my pot ran in bog iron', 'running'],
      ['my pot ran', 'running'],
      ['pinholes in bog iron', 'pinholing'],
      ['where are the cookies for bog iron', 'n-1'],
      ['cookie', 'n-1'],
      ['how long to dip gull grey', 'n-2'],
    ])
      expect([question, ids(await ask(room, question ?? ''))[0]]).toEqual([question, first]);
  });

  it('are changed, and removed for good: number, words and bytes', async () => {
    const room = await openGlazeRoom();
    await room.keeper(1, cookies);
    await room.keeper(2, '/note change note:n-1 text:"Cookies moved to the shelf."');
    expect((await ask(room, 'where are the cookies')).title).toBe('Cookies moved to the shelf.');
    expect(await room.keeper(3, '/note change note:cookies')).toMatchObject({ ok: false });
    expect(await room.keeper(4, '/note remove note:"where the"')).toMatchObject({ ok: true });
    expect(ids(await ask(room, 'where are the cookies'))[0]).toBe('where-kept');
    expect((await room.say(5, '/note list')).data).toEqual({ notes: [] });
    // Numbers are not reused: a member who remembers n-1 must not find another note.
    expect((await room.keeper(6, cookies)).data).toMatchObject({ note: 'n-2' });
    const rows = await room.store.books.read(room.studio, (book) => book.notes());
    expect(rows.map(({ no, text }) => [no, text])).toEqual([[2, expect.stringContaining('crate')]]);
  });

  it('are keepers’ to write and everybody’s to read, and two do not share a title', async () => {
    const room = await openGlazeRoom();
    expect(await room.say(1, cookies)).toMatchObject({ ok: false });
    await room.keeper(2, cookies);
    expect(await room.keeper(3, cookies.replace('Where the', 'WHERE THE'))).toMatchObject({
      ok: false,
      title: expect.stringContaining('n-1 already'),
    });
    expect((await room.say(4, '/note list')).facts).toHaveLength(1);
    expect(await room.say(5, '/note remove note:n-1')).toMatchObject({ ok: false });
  });

  it('are gone again when the transaction that kept them is rolled back', async () => {
    const room = await openGlazeRoom();
    const by = await room.member('Tove');
    await room.store.books.writeOnce(room.studio, 'test:rolled-back', async (book) => {
      await book.keepNote({ title: 'x', text: 'y', words: '', by, at: noonPlus(1) });
      expect(await book.notes()).toHaveLength(1);
      return { keep: false, value: null };
    });
    expect(await room.store.books.read(room.studio, (book) => book.notes())).toEqual([]);
  });

  it('of one studio are not seen in another', async () => {
    const room = await openGlazeRoom();
    await room.keeper(1, cookies);
    const other = await room.store.people.studioOf('terminal', 'there', 'Another');
    expect(await room.store.books.read(other, (book) => book.notes())).toEqual([]);
  });
});
