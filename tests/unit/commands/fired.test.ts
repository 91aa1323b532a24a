import { describe, expect, it } from 'vitest';
import { openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const hour = 60;
const day = 24 * hour;
const conditions = (answer: { data: Record<string, unknown> }) =>
  answer.data['conditions'] as Record<string, boolean>;
const results = (room: GlazeRoom) => room.store.books.read(room.studio, (book) => book.fired());

/** Noon on 1 March 2026 in UTC is 08:30 in St John's. The bucket is read at 1.51, 0.05 over its window, and stirred. */
const openOver = async (): Promise<GlazeRoom> => {
  const room = await openRoomWithGullGrey();
  await room.keeper(0, '/studio set zone:America/St_Johns');
  await room.keeper(1, '/sieved bucket:gg mesh:80');
  await room.say(2, '/reading bucket:gg gravity:1.51 seconds:18 stirred:yes', 'Ana');
  return room;
};

/** Two readings that agree: one that the logbook did not expect counts for nothing by itself. */
const readTwice = async (room: GlazeRoom, minutes: number, line: string, who: string) => {
  await room.say(minutes, line, who);
  return room.say(minutes + 1, line, who);
};

describe('a result from the kiln', () => {
  it('is kept with how many pieces had the fault, and says what its bucket was like', async () => {
    const room = await openOver();
    // Dipped three days and some hours after the stir, reported three days after that.
    const answer = await room.say(
      6 * day,
      '/fired bucket:gg result:crawling pieces:"2 of 4" dipped:"3 days ago"',
    );
    expect(answer.title).toBe(
      'Kept: 2 of 4 crawled. Gull Grey was 0.05 over its window then and last stirred 3 days before.',
    );
    expect(answer).toMatchObject({
      ok: true,
      private: false,
      logged: { entry: 'f-1', text: 'dipped Wed 4 Mar' },
    });
    expect(answer.facts[0]).toEqual({
      label: 'Gravity then',
      text: '1.51 ± 0.01 (window 1.42 to 1.46)',
    });
    expect(answer.data).toMatchObject({
      entry: 'f-1',
      bucket: 1,
      faults: ['crawling'],
      pieces: 4,
      faulty: 2,
    });
    expect(conditions(answer)).toMatchObject({
      'gravity-over': true,
      'gravity-under': false,
      unmeasured: false,
      'flow-thick': true,
      rested: true,
      'on-hold': false,
      'not-sieved': false,
      layered: false,
    });
  });

  it('that is good is logged as good, with nothing blamed', async () => {
    const room = await openOver();
    const answer = await room.say(
      3 * hour,
      '/fired bucket:gg result:good pieces:4 dipped:"2h ago" body:porcelain cone:06 kiln:big',
    );
    expect(answer.logged?.text).toBe('dipped Sun 1 Mar 09:30, cone 06, kiln big, body porcelain');
    expect(answer.title).toBe('Kept: 4 pieces of Gull Grey, good.');
    expect(answer.data).toMatchObject({ faults: [], pieces: 4, faulty: 0 });
    const one = await room.say(3 * hour, '/fired bucket:gg result:good pieces:1');
    expect(one.title).toBe('Kept: 1 piece of Gull Grey, good.');
    expect((await room.say(3 * hour, '/fired bucket:gg result:good')).title).toBe('Kept: Gull Grey, good.');
  });

  it.each([
    ['crazing', /Crazing may come from the fit between glaze and body, not from the bucket\.$/, /food-safe/],
    ['shivering', /Shivering may come from the fit/, /sharp slivers/],
    ['dunting', /Dunting may come from the fit/, /sharp edges/],
  ])('of %s is not blamed on the bucket, and warns', async (fault, title, caution) => {
    const room = await openOver();
    const answer = await room.say(day, `/fired bucket:gg result:${fault} pieces:4 dipped:"2h ago"`);
    expect(answer.title).toMatch(title);
    expect(answer.title).not.toMatch(/over its window/);
    expect(answer.cautions.join(' ')).toMatch(caution);
  });

  it('takes faults as people call them, several at once', async () => {
    const room = await openOver();
    const answer = await room.say(9, '/fired bucket:gg result:"crawled, pinholes and ran" pieces:3 mugs');
    expect(answer.data['faults']).toEqual(['crawling', 'pinholing', 'running']);
    expect(answer.title).toMatch(/^Kept: all 3 crawled, pinholed and ran\./);
  });

  it.each([
    ['/fired bucket:gg result:good,crawling', /says both good and a fault/],
    ['/fired bucket:gg result:good pieces:"2 of 4"', /number with a fault, but no fault/],
    ['/fired bucket:gg result:crawling pieces:"5 of 4"', /“5 of 4” is more faulty pieces than there were/],
    ['/fired bucket:gg result:crawling pieces:0', /not a number of pieces/],
    ['/fired bucket:gg result:sparkling', /not one of these/],
    ['/fired bucket:gg result:good over:gg', /another bucket/],
    ['/fired bucket:gg result:good piece:vase', /You have no plan and no resist coat/],
    ['/fired bucket:gg result:good bisque:fluffy', /not a kind of bisque/],
    ['/fired bucket:gg result:good dipped:tomorrow', /not happened yet/],
  ])('is refused, and keeps nothing: %s', async (line, why) => {
    const room = await openOver();
    const answer = await room.say(9, line);
    expect(answer.kind).toBe('refusal');
    expect(answer.title).toMatch(why);
    expect(await results(room)).toEqual([]);
  });
});

describe('what a bucket was like at a dip', () => {
  it('comes from the entries before it, not from later ones', async () => {
    const room = await openOver();
    await readTwice(room, 2 * hour, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes', 'Ana');
    const before = await room.say(5 * hour, '/fired bucket:gg result:crawling dipped:"4h ago"');
    expect(conditions(before)).toMatchObject({ 'gravity-over': true, 'flow-thick': true, rested: false });
    const after = await room.say(5 * hour, '/fired bucket:gg result:crawling dipped:"2h ago"');
    expect(conditions(after)).toMatchObject({ 'gravity-over': false, 'flow-thick': false, rested: false });
  });

  it('changes when an earlier entry is logged late, or undone', async () => {
    const room = await openOver();
    await room.say(5 * hour, '/fired bucket:gg result:crawling pieces:4 dipped:"1h ago"');
    const over = async () => {
      const answer = await room.keeper(6 * hour, '/faults');
      const pair = (
        answer.data['faults'] as { fault: string; condition: string; withFaultOf: number }[]
      ).find(({ condition }) => condition === 'gravity-over');
      return pair?.withFaultOf;
    };
    expect(await over()).toBe(1);
    const line = '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes when:"3h ago"';
    const late = await room.say(6 * hour, line);
    expect(await over()).toBe(0);
    await room.say(6 * hour + 1, `/undo entry:${String(late.data['entry'])}`);
    expect(await over()).toBe(1);
  });

  it('without an hour includes only what was true all day', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/studio set zone:America/St_Johns');
    // Over its window at 17:30, corrected at 19:30, both by somebody else.
    await room.say(9 * hour, '/reading bucket:gg gravity:1.51 seconds:14 stirred:yes', 'Ana');
    await readTwice(room, 11 * hour, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes', 'Ana');
    const answer = await room.say(3 * day, '/fired bucket:gg result:crawling dipped:"3 days ago"');
    expect(conditions(answer)).toMatchObject({ 'on-hold': false });
    expect(conditions(answer)).not.toHaveProperty('gravity-over');
    expect(conditions(answer)).not.toHaveProperty('rested');
    expect(answer.reasons.join(' ')).toMatch(/hour you dipped, so only what was true all that day counts/);
    const next = await room.say(3 * day, '/fired bucket:gg result:crawling dipped:"2 days ago"');
    expect(conditions(next)).toMatchObject({ 'gravity-over': false, rested: true });
  });

  it('is asked for by the time of day, when the bucket was not the same all that day', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/studio set zone:America/St_Johns');
    // At 17:30 and at 19:30 by the same member: two visits.
    await room.say(9 * hour, '/reading bucket:gg gravity:1.51 seconds:14 stirred:yes');
    await readTwice(room, 11 * hour, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes', 'Wren');
    const answer = await room.say(3 * day, '/fired bucket:gg result:crawling pieces:2 dipped:"3 days ago"');
    expect(answer.title).toMatch(/At what time did you dip it\? The bucket changed that day\.$/);
    expect(answer.data).not.toHaveProperty('after');
    expect(answer.reasons.join(' ')).toMatch(
      /read at 1\.51 ± 0\.01, outside its window of 1\.42 to 1\.46, Sun 1 Mar 17:30/,
    );
    expect(answer.reasons.join(' ')).not.toMatch(/nothing was wrong with/);
    const [ask] = answer.actions;
    expect(ask).toMatchObject({ label: 'Say the time' });
    const line = String(ask?.line).replace('3 days ago', '2026-03-01 20:00');
    const told = await room.say(3 * day + 1, line);
    expect(told.title).toBe('Kept: all 2 crawled.');
    expect(told.reasons.join(' ')).toMatch(/nothing was wrong with Gull Grey/);
    // The first is undone, so that nothing counts twice.
    expect(await results(room)).toHaveLength(1);
    expect(await room.say(3 * day + 2, line)).toMatchObject({ kind: 'refusal' });
    expect(await room.say(3 * day + 2, '/fired bucket:gg result:good instead:1-1')).toMatchObject({
      kind: 'refusal',
    });
  });

  it('says so where a value was outside its window, and where nobody can tell', async () => {
    const room = await openRoomWithGullGrey();
    // 1.47 ± 0.01 against 1.42 to 1.46; 18.1 s against 12 to 16 s, and stirred on since.
    await room.say(1, '/reading bucket:gg gravity:1.47 seconds:18.1 stirred:yes');
    await room.say(5, '/stirred bucket:gg minutes:5');
    const answer = await room.say(hour, '/fired bucket:gg result:crawling dipped:"50 min ago"');
    const why = answer.reasons.join(' ');
    expect(why).toMatch(/read at 1\.47 ± 0\.01, outside its window of 1\.42 to 1\.46/);
    expect(why).toMatch(
      /read at 18\.1 s in the flow cup, outside 12 to 16 s.*may have changed before the dip/,
    );
    expect(why).toMatch(/does not know the flow of Gull Grey at the dip/);
    expect(why).not.toMatch(/nothing else was wrong/);
    const good = await openRoomWithGullGrey();
    await good.say(1, '/reading bucket:gg gravity:1.44 stirred:yes');
    const unlooked = (
      await good.say(hour, '/fired bucket:gg result:crawling dipped:"50 min ago"')
    ).reasons.join(' ');
    expect(unlooked).toMatch(/does not know the flow of Gull Grey/);
    expect(unlooked).toMatch(/nothing else was wrong/);
    await good.say(2, '/reading bucket:gg seconds:18.1 stirred:no');
    const kept = (await good.say(hour, '/fired bucket:gg result:crawling dipped:"50 min ago"')).reasons.join(
      ' ',
    );
    expect(kept).toMatch(/read at 18\.1 s in the flow cup/);
  });

  it('on a day with the member’s own entry is the state right after it', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/studio set zone:America/St_Johns');
    await room.say(9 * hour, '/reading bucket:gg gravity:1.51 seconds:14 stirred:yes');
    await room.say(11 * hour, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes', 'Ana');
    const answer = await room.say(3 * day, '/fired bucket:gg result:crawling dipped:"3 days ago"');
    expect(answer.data).toMatchObject({
      after: '1-2',
      dipped: { from: '2026-03-01T21:00:00.000Z', to: '2026-03-01T21:00:00.000Z' },
    });
    expect(conditions(answer)).toMatchObject({ 'gravity-over': true, rested: false });
    expect(answer.reasons[0]).toMatch(/right after your entry 1-2/);
  });

  it('is not guessed when nobody had measured it within its shelf life, nor before it was there', async () => {
    const room = await openOver();
    const late = await room.say(10 * day, '/fired bucket:gg result:crawling dipped:"1h ago"');
    expect(conditions(late)).toMatchObject({ unmeasured: true });
    expect(conditions(late)).not.toHaveProperty('gravity-over');
    expect(late.facts[0]?.text).toBe('nobody had measured it lately');
    const early = await room.say(10 * day, '/fired bucket:gg result:crawling dipped:"20 days ago 7pm"');
    expect(early.reasons.join(' ')).toMatch(/Gull Grey was not in the logbook yet/);
    expect(conditions(early)).toEqual({ layered: false });
  });

  it('is not known when the dip was not dated, and the answer says so', async () => {
    const room = await openOver();
    const answer = await room.say(hour, '/fired bucket:gg result:crawling pieces:2');
    expect(answer.title).toBe('Kept: all 2 crawled.');
    expect(answer.facts).toEqual([]);
    expect(answer.reasons.join(' ')).toMatch(/You did not say when you dipped/);
  });

  it('is worked out by the logbook after a logged pour that the reading no longer covers', async () => {
    const room = await openOver();
    // V(γ1 − γ2)/(γ2 − 1): 15 l × (1.51 − 1.44)/0.44 = 2386 ml bring 1.51 to 1.44
    await room.say(10, '/added bucket:gg what:water amount:2386ml');
    await room.say(12, '/stirred bucket:gg');
    const answer = await room.say(hour, '/fired bucket:gg result:good dipped:"20 min ago"');
    expect(answer.data['gravity']).toMatchObject({ predicted: true });
    expect((answer.data['gravity'] as { value: number }).value).toBeCloseTo(1.44, 2);
    expect(conditions(answer)).toMatchObject({ 'gravity-over': false, unmeasured: false });
    expect(answer.facts[0]?.text).toMatch(/calculated from the logbook/);
  });

  it('knows a bucket on hold, a cake and lumps', async () => {
    const room = await openOver();
    await room.say(10, '/stirred bucket:gg seen:cake,lumps');
    await room.keeper(11, '/bucket hold bucket:gg why:odd');
    const answer = await room.say(hour, '/fired bucket:gg result:pinholing dipped:"20 min ago"');
    expect(conditions(answer)).toMatchObject({ 'on-hold': true, cake: true, lumps: true });
    expect(answer.title).toMatch(/was on hold and had a settled cake\.$/);
  });

  it('counts a layer’s bucket too: over when either was, not over only when both are known not to be', async () => {
    const room = await openOver();
    await room.keeper(3, '/bucket add name:"Sea Fog" nick:sf gravity:1.42-1.46 solids:2.6');
    const unread = await room.say(10, '/fired bucket:sf over:gg result:crawling dipped:"2 min ago"');
    expect(conditions(unread)).toMatchObject({ 'gravity-over': true, layered: true });
    expect(conditions(unread)).not.toHaveProperty('gravity-under');
    await room.say(11, '/reading bucket:sf gravity:1.44 stirred:yes', 'Ana');
    await readTwice(room, 12, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes', 'Ana');
    const both = await room.say(20, '/fired bucket:sf over:gg result:crawling dipped:"2 min ago"');
    expect(conditions(both)).toMatchObject({ 'gravity-over': false, 'gravity-under': false });
  });
});

describe('what a piece was like at its dip', () => {
  it('comes from its plan and its resist coat: damp wax, dust left, carving, bisque', async () => {
    const room = await openOver();
    await room.say(3, '/coat on kind:wax pieces:"Tall Jug"');
    await room.say(4, '/prep piece:"tall jug" bucket:gg surface:carved underglaze:thick cone:010');
    await room.say(5 * hour, '/prep piece:"tall jug" done:bucket,wet,carving,dip');
    const answer = await room.say(4 * day, '/fired bucket:gg result:crawling pieces:1 piece:"tall jug"');
    expect(answer.data['dipped']).toEqual({
      from: '2026-03-01T17:00:00.000Z',
      to: '2026-03-01T17:00:00.000Z',
    });
    expect(conditions(answer)).toMatchObject({
      'resist-damp': true,
      'dust-left': true,
      'wetting-left': false,
      'texture-left': false,
      'underglaze-thick': true,
      carved: true,
      'soft-bisque': true,
      'hard-bisque': false,
    });
    expect(answer.title).toMatch(/Its resist was not dry when it was dipped\.$/);
    // on at 12:03 UTC, dry after twelve hours and a night: 08:00 in St John's, 11:30 UTC
    expect(answer.reasons.join(' ')).toMatch(/not dry before Mon 2 Mar 08:00/);
    expect(answer.reasons.join(' ')).toMatch(/not ticked off before the dip: dusted off/);
  });

  it('is known of a coat that is off by now, and not of one that was taken back', async () => {
    const room = await openOver();
    await room.say(3, '/coat on kind:wax pieces:"3 bowls"');
    await room.say(2 * day, '/coat off coat:c-1 how:glazed');
    const dry = await room.say(
      4 * day,
      '/fired bucket:gg result:good piece:"3 bowls" dipped:"2026-03-03 11:00"',
    );
    expect(conditions(dry)).toMatchObject({ 'resist-damp': false });
    const wet = await room.say(4 * day, '/fired bucket:gg result:good piece:c-1 dipped:"2026-03-01 20:00"');
    expect(conditions(wet)).toMatchObject({ 'resist-damp': true });
    await room.keeper(4 * day, '/undo entry:c-1');
    const gone = await room.keeper(4 * day, '/faults');
    const named = (gone.data['faults'] as { condition: string }[]).map(({ condition }) => condition);
    expect(named).not.toContain('resist-damp');
  });

  it('tells nothing of what was left out by somebody who ticks nothing off', async () => {
    const room = await openOver();
    await room.say(4, '/prep piece:"tall jug" bucket:gg');
    const answer = await room.say(day, '/fired bucket:gg result:good piece:p-1 dipped:"20h ago"');
    expect(conditions(answer)).not.toHaveProperty('dust-left');
    expect(conditions(answer)).toMatchObject({ carved: false });
  });

  it.each([
    ['soft', { 'soft-bisque': true, 'hard-bisque': false }],
    ['08', { 'soft-bisque': true, 'hard-bisque': false }],
    ['normal', { 'soft-bisque': false, 'hard-bisque': false }],
    ['hard', { 'soft-bisque': false, 'hard-bisque': true }],
    ['cone 02', { 'soft-bisque': false, 'hard-bisque': true }],
  ])('takes the bisque in a word or as its cone: %s', async (bisque, expected) => {
    const room = await openOver();
    const answer = await room.say(9, `/fired bucket:gg result:good bisque:${bisque}`);
    expect(conditions(answer)).toMatchObject(expected);
  });
});

describe('taking a result back', () => {
  it('is its author’s within 15 minutes and a keeper’s always, and both stay in the log', async () => {
    const room = await openOver();
    await room.say(10, '/fired bucket:gg result:crawling pieces:2 note:"round the handle"');
    expect(await room.say(12, '/undo entry:f-1', 'Ana')).toMatchObject({ kind: 'refusal' });
    expect(await room.say(26, '/undo entry:f-1')).toMatchObject({ kind: 'refusal' });
    const undone = await room.keeper(26, '/undo entry:f-1');
    expect(undone).toMatchObject({ ok: true, private: false, data: { entry: 'f-2', undone: 'f-1' } });
    expect(undone.reasons[0]).toMatch(/logged from the kiln: all 2 crawled, bucket 1 · “round the handle”/);
    expect(await results(room)).toEqual([]);
    await room.say(30, '/fired bucket:gg result:good');
    expect(await room.say(31, '/undo entry:f-3')).toMatchObject({ ok: true });
  });

  it('by a repeat of the same request logs once', async () => {
    const room = await openOver();
    const request = { key: 'discord:77', path: ['fired'], typed: { bucket: 'gg', result: 'good' } };
    const first = await room.request(10, request);
    expect(await room.request(11, request)).toEqual(first);
    expect(await results(room)).toHaveLength(1);
  });
});
