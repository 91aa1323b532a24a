import { describe, expect, it } from 'vitest';
import { streamNo } from '../../../src/studio/ids.ts';
import { openGlazeRoom, openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const entries = ({ store, studio }: GlazeRoom) =>
  store.books.read(studio, (book) => book.entries(streamNo(1), { most: 50 }));

const roomWithCup = async () => {
  const room = await openRoomWithGullGrey();
  await room.keeper(0, '/studio vessel name:"steel cup" tare:85.4g water:100.2g temperature:20C');
  return room;
};

describe('a line in plain words', () => {
  it('logs nothing before the press, and the press logs what it said, when it was said', async () => {
    const room = await openRoomWithGullGrey();
    const before = await entries(room);
    const draft = await room.say(10, 'gul grey 1,46 13 sec stirred');
    expect(draft).toMatchObject({ ok: false, kind: 'choice', private: true });
    expect(draft.title).toBe('Gull Grey: gravity 1,46, 13 sec, stirred. Log it?');
    expect(draft.facts).toEqual([{ label: 'Bucket', text: '“gul grey” read as Gull Grey' }]);
    expect(await entries(room)).toEqual(before);
    const pressed = await room.say(40, draft.actions[0]?.line ?? '');
    expect(pressed).toMatchObject({ ok: true, data: { gravity: 1.46, entry: '1-2' } });
    const [last] = await entries(room);
    expect(last).toMatchObject({ event: { kind: 'reading', flow: { seconds: 13 }, stirred: true } });
    // Said ten minutes after noon, pressed half an hour later.
    expect(last && last.loggedAt - last.at).toBe(30 * 60_000);
  });

  it('is not logged when somebody changed the bucket in the meantime', async () => {
    const room = await openRoomWithGullGrey();
    const draft = await room.say(10, 'gg 1.46');
    await room.say(11, '/stirred bucket:gg', 'Ines');
    const pressed = await room.say(12, draft.actions[0]?.line ?? '');
    expect(pressed).toMatchObject({ kind: 'refusal' });
    expect(pressed.title).toMatch(/somebody changed the bucket/);
  });

  it.each([
    ['added 500ml water to 1', { kind: 'addition', added: { what: 'water', volume: 500 } }],
    ['1: stirred 5 min', { kind: 'stir', minutes: 5 }],
    ['stirred 1', { kind: 'stir' }],
    ['sieved 1', { kind: 'sieve' }],
    ['reading gull grey 1.44', { kind: 'reading', gravity: { value: 1.44 } }],
  ])('%s', async (line, event) => {
    const room = await openRoomWithGullGrey();
    const draft = await room.say(10, line);
    expect(draft.kind).toBe('choice');
    expect(await entries(room)).toHaveLength(1);
    expect(await room.say(11, draft.actions[0]?.line ?? '')).toMatchObject({ ok: true });
    expect((await entries(room))[0]?.event).toMatchObject(event);
  });

  it.each(['gull grey', 'gul gray', 'GG', '1', '1?', 'is gull grey ok?'])(
    '%s asks water or stir',
    async (line) => {
      const room = await openRoomWithGullGrey();
      const answer = await room.say(10, line);
      expect(answer).toMatchObject({ ok: true, data: { verdict: { step: expect.any(String) } } });
      expect(answer.title).toMatch(/^Gull Grey/);
    },
  );

  it('a weight without its unit is asked about, not guessed', async () => {
    const room = await roomWithCup();
    const draft = await room.say(10, '1 229.9');
    expect(draft.title).toBe('Gull Grey: what is “229.9”? It has no unit.');
    const [first] = draft.actions;
    expect(first?.label).toBe('Log it with weight 229.9g');
    // (229.9 − 85.4) / 100.2
    expect((await room.say(11, first?.line ?? '')).data['gravity']).toBeCloseTo(1.4421, 4);
  });

  it('what it cannot read goes in as a note, so that a hazard in it is seen', async () => {
    const room = await openRoomWithGullGrey();
    const draft = await room.say(10, 'added 500 ml water and a splash of bleach to 1');
    expect(draft.facts).toEqual([
      { label: 'Not understood', text: '“splash of bleach”. It goes in as a note.' },
    ]);
    const pressed = await room.say(11, draft.actions[0]?.line ?? '');
    expect(JSON.stringify(pressed.cautions)).toMatch(/bleach/i);
    expect((await entries(room)).find(({ event }) => event.kind === 'addition')?.note).toBe(
      'splash of bleach',
    );
  });

  it('asks which bucket, and one press answers', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/bucket add name:"Gull Wing" nick:gw pail:19l gravity:1.42-1.46');
    const draft = await room.say(10, 'gull 1.46');
    expect(draft).toMatchObject({ kind: 'choice', title: 'Which bucket? I read: gravity 1.46.' });
    expect(draft.actions.map(({ label }) => label)).toEqual(['1 · Gull Grey', '2 · Gull Wing']);
    expect(await room.say(11, draft.actions[1]?.line ?? '')).toMatchObject({
      ok: true,
      data: { entry: '2-2' },
    });
  });

  it.each([
    ['bucket 9 1.46', /There is no bucket “9”\. Which one\?/],
    ['1 229.9g cup B 14 s', /There is no vessel “cup B”\. Choose from steel cup/],
    ['added 450 mll water to 1', /I don't know the unit “mll”.*Did you mean ml\?/],
    ['added 450 to 1', /“450” has no unit/],
    ['gull grey 1.46 tomorrow 9pm'.replace('tomorrow', 'today at'), /gravity 1\.46/],
  ])('%s is asked about', async (line, said) => {
    const room = await roomWithCup();
    const answer = await room.say(10, line);
    expect(['refusal', 'choice']).toContain(answer.kind);
    expect(answer.title).toMatch(said);
    expect(answer.actions.length).toBeGreaterThan(0);
    expect(await entries(room)).toHaveLength(1);
  });

  it('offers the cups that there are, with the rest of the line', async () => {
    const room = await roomWithCup();
    const answer = await room.say(10, '1 229.9g cup B 14 s');
    expect(answer.actions[0]).toMatchObject({ label: 'steel cup' });
    expect(await room.say(11, answer.actions[0]?.line ?? '')).toMatchObject({ ok: true });
  });

  it('anything else is a question', async () => {
    const room = await openRoomWithGullGrey();
    const asked = await room.say(10, '/ask question:"why is my glaze pinholing"');
    expect((await room.say(10, 'why is my glaze pinholing')).title).toBe(asked.title);
    const none = await room.say(10, 'zzz qqq xxx vvv');
    expect(none).toMatchObject({ ok: true, kind: 'answer' });
    expect(none.reasons.join(' ')).toMatch(/say the bucket and what you measured/);
  });

  it('with a slash before it is understood all the same', async () => {
    const room = await openRoomWithGullGrey();
    expect((await room.say(10, '/gull grey 1.46')).title).toBe('Gull Grey: gravity 1.46. Log it?');
    expect((await room.say(10, '/bukcet gull grey')).title).toMatch(/no command “bukcet”/);
  });

  it('after a command’s name, without its options’ names, comes with the press that logs it', async () => {
    const room = await openRoomWithGullGrey();
    const refused = await room.say(10, '/reading gull grey 1.46 13 sec');
    expect(refused.title).toMatch(/Put an option name before/);
    expect(refused.actions[0]?.label).toBe('Log it');
    expect(await room.say(11, refused.actions[0]?.line ?? '')).toMatchObject({
      ok: true,
      data: { gravity: 1.46 },
    });
  });

  it('an emergency comes first, whatever is measured in the same line', async () => {
    const room = await openRoomWithGullGrey();
    for (const line of [
      'gull grey 1.46 my eye burns',
      'gull grey 1.46 there is a fire in the kiln room',
      '/say gull grey 1.46 she fainted',
    ])
      expect((await room.say(10, line)).data['emergency']).toBe(true);
  });

  it('a misspelt command still names the nearest', async () => {
    const room = await openRoomWithGullGrey();
    expect((await room.say(1, 'bukcet list')).title).toMatch(/no command “bukcet”.*\/bucket/);
    expect((await room.say(1, 'bucket lisst')).title).toMatch(/needs one of these/);
  });

  it('what was said days ago is asked about before it is logged as of then', async () => {
    const room = await openRoomWithGullGrey();
    const typed = { words: 'gull grey 1.46 13 s', when: '2026-02-26T12:00:00Z' };
    const draft = await room.request(10, { path: ['say'], typed });
    expect(draft.title).toMatch(/^That was said 3 days ago.*Log it for that time\?$/);
    expect(draft.actions[0]?.label).toBe('Log it for that time');
    expect(await room.say(11, draft.actions[0]?.line ?? '')).toMatchObject({ ok: true });
  });

  it.each([
    ['x'.repeat(4000)],
    ['gull grey 1.46 '.repeat(260)],
    ['釉薬が濃い 1.46'],
    ['\u202e64.1 yerg llug\u0000\u0007'],
    ['<script>alert(1)</script> @everyone **gull grey** 1.46'],
    ['gull grey '.concat('9'.repeat(400))],
    ['1/0 cup of water added to gull grey'],
    ['added 1e309 ml water to gull grey'],
  ])('has a clear answer: %#', async (line) => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(10, line);
    expect(['answer', 'choice', 'refusal']).toContain(answer.kind);
    expect(answer.title.length).toBeGreaterThan(10);
    expect(room.bugs).toEqual([]);
    expect(await entries(room)).toHaveLength(1);
  });

  it('in a studio without a bucket says how to add one', async () => {
    const room = await openGlazeRoom();
    expect((await room.say(1, '1.46 13 s')).title).toMatch(/There is no bucket yet/);
  });
});
