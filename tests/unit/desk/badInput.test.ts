import { describe, expect, it } from 'vitest';
import { streamNo, studioStream } from '../../../src/studio/ids.ts';
import { type Answer, verdictOf } from '../../helpers/discord/answerSchemas.ts';
import { afterOf, openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

/** Everything that is stored of the bucket and the studio. */
const stored = ({ store, studio }: GlazeRoom) =>
  store.books.read(studio, async (book) => ({
    buckets: await book.buckets(),
    entries: await book.entries(streamNo(1), { most: 200 }),
    studio: await book.studio(),
    told: await book.entries(studioStream, { most: 200 }),
  }));

const roomWithCup = async () => {
  const room = await openRoomWithGullGrey();
  await room.keeper(0, '/studio vessel name:"steel cup" tare:85.4g water:100.2g temperature:20C');
  return room;
};

/** Expects a private refusal that names the error, and that nothing was saved. */
const refused = async (room: GlazeRoom, line: string, named: RegExp, by: 'say' | 'keeper' = 'say') => {
  const before = await stored(room);
  const answer = await room[by](5, line);
  expect(answer).toMatchObject({ ok: false, kind: 'refusal', private: true });
  expect(answer.title).toMatch(named);
  expect(await stored(room)).toEqual(before);
  expect(room.bugs).toEqual([]);
  return answer;
};

const kept = async (room: GlazeRoom, line: string): Promise<Answer> => {
  const answer = await room.say(5, line);
  expect(answer).toMatchObject({ ok: true, kind: 'answer' });
  return answer;
};

const lastEvent = async (room: GlazeRoom) => {
  const [last] = (await stored(room)).entries;
  return last?.event;
};

describe('a gravity that no glaze has', () => {
  it.each([
    ['gravity:0.9', /0\.9 .*lighter than water/],
    ['gravity:0', /lighter than water/],
    ['gravity:2.51', /2\.51 .*2\.5/],
    ['gravity:44', /°Bé|baume/],
    ['gravity:1440', /1440 .*gravity/],
    ['gravity:-1.44', /-1\.44.*below zero/],
    ['gravity:heavy', /heavy.*not a number/],
    ['gravity:NaN', /NaN.*not a number/],
    ['gravity:Infinity', /not a number/],
    ['gravity:1.44 weight:230g', /weight or the gravity, not both/],
    ['gravity:200 scale:baume', /200.*gravity/],
    ['gravity:-5 scale:twaddell', /below zero/],
  ])('/reading %s', async (typed, named) => {
    await refused(await roomWithCup(), `/reading bucket:gg ${typed} stirred:yes`, named);
  });

  it('is refused when the bucket’s own powder would be lighter', async () => {
    const room = await openRoomWithGullGrey(['solids', '1.7']);
    await refused(room, '/reading bucket:gg gravity:1.75 stirred:yes', /1\.75.*powder.*1\.70/);
  });

  it('is refused of glaze that was added', async () => {
    const room = await roomWithCup();
    await refused(room, '/added bucket:gg what:glaze amount:1l gravity:14', /14.*gravity/);
  });

  it('a hydrometer is refused in a thick glaze, as it sticks', async () => {
    for (const thick of ['look:thick', 'seconds:won’t-run', 'seconds:30'])
      await refused(
        await roomWithCup(),
        `/reading bucket:gg gravity:44 scale:baume ${thick} stirred:yes`,
        /hydrometer sticks/,
      );
  });

  it('a hydrometer is refused when the last look at the bucket was thick', async () => {
    const room = await roomWithCup();
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:30 stirred:yes');
    await refused(room, '/reading bucket:gg gravity:44 scale:baume', /hydrometer sticks/);
  });
});

describe('a weight that no full cup has', () => {
  it.each([
    ['148kg', /“148kg” can't be.*Grams.*148g/],
    ['230kg', /“230kg” can't be.*Grams.*230g/],
    ['20g', /“20g” is too light/],
    ['2kg', /“2kg” is too heavy/],
    ['-230g', /below zero/],
    ['0g', /too low/],
    ['230ml', /230ml.*a volume.*a weight/],
    ['230 stone', /unit/],
    ['two hundred', /unit/],
  ])('weight:"%s"', async (typed, named) => {
    await refused(await roomWithCup(), `/reading bucket:gg weight:"${typed}" stirred:yes`, named);
  });

  it('says that no cup is calibrated, and how it is done', async () => {
    const room = await openRoomWithGullGrey();
    await refused(room, '/reading bucket:gg weight:230g', /No cup is calibrated.*\/studio vessel/);
  });

  it('asks which cup was weighed when there are several', async () => {
    const room = await roomWithCup();
    await room.keeper(1, '/studio vessel name:"big cup" tare:120g water:250g');
    const before = await stored(room);
    const answer = await room.say(5, '/reading bucket:gg weight:229.7g stirred:yes');
    expect(answer).toMatchObject({ ok: false, kind: 'choice' });
    expect(await stored(room)).toEqual(before);
    expect(answer.actions.map(({ label }) => label)).toEqual(['steel cup', 'big cup']);
    const pressed = await room.say(6, answer.actions[0]?.line ?? '');
    // (229.7 − 85.4) / 100.2
    expect(pressed.data['gravity']).toBeCloseTo(1.4401, 4);
  });

  it('is asked about when it is plausible with and without the empty cup', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/studio vessel name:"light cup" tare:30g water:100g');
    const before = await stored(room);
    // With the cup (160 − 30) / 100 = 1.30; without 160 / 100 = 1.60.
    const answer = await room.say(5, '/reading bucket:gg weight:160.0g seconds:14 stirred:yes');
    expect(answer).toMatchObject({ ok: false, kind: 'choice', private: true });
    expect(await stored(room)).toEqual(before);
    expect(answer.actions.map(({ label }) => label).join()).toMatch(/1\.30.*1\.60/);
    for (const [i, gravity] of [1.3, 1.6].entries()) {
      const pressed = await room.say(6, answer.actions[i]?.line ?? '');
      expect(pressed.data['gravity']).toBeCloseTo(gravity, 6);
      expect(verdictOf(pressed).flow).toBe('in');
    }
  });

  it('is taken as a member says when they say it', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/studio vessel name:"light cup" tare:30g water:100g');
    const said = await kept(room, '/reading bucket:gg weight:160.0g weighed:without-cup stirred:yes');
    expect(said.data['gravity']).toBeCloseTo(1.6, 6);
  });
});

describe('amounts that are negative, absurd, or in the wrong unit', () => {
  it.each([
    ['what:water amount:-450ml', /-450ml.*below zero/],
    ['what:water amount:0ml', /0ml/],
    ['what:water amount:450', /450.*no unit.*450 ml/],
    ['what:water amount:"450 cm"', /450 cm.*length/],
    ['what:water amount:"450 bananas"', /unit/],
    ['what:water amount:"lots"', /lots.*not a number/],
    ['what:water amount:30l', /more than the pail holds \(19 l\)/],
    ['what:water amount:30kg', /more than the pail holds/],
    ['what:water amount:900000l', /more than a glaze room holds/],
    ['what:dry amount:150kg', /more than the pail holds/],
    ['what:dry amount:"2 l"', /goes by weight/],
    ['what:glaze amount:300g', /goes by volume/],
    ['what:taken amount:"2 lb"', /goes by volume/],
    ['what:taken amount:18l', /more than the bucket holds \(about 15 l\)/],
    ['what:draw-off amount:18.5l', /more than the bucket holds/],
    ['what:flocculant amount:25l', /more than the pail holds/],
    ['what:constructor', /constructor.*not one of these/],
    ['what:toString', /not one of these/],
    ['what:vinegar', /vinegar.*not one of these/],
    ['what:glaze amount:2l from:gg', /itself/],
    ['', /what is missing/],
  ])('/added %s', async (typed, named) => {
    await refused(await roomWithCup(), `/added bucket:gg ${typed}`, named, 'keeper');
  });

  it.each([
    ['/reading bucket:gg gap:-7cm', /below zero/],
    ['/reading bucket:gg gap:3m', /gap: .*too high|deeper than the pail/],
    ['/reading bucket:gg gap:60cm', /deeper than the pail/],
    ['/reading bucket:gg seconds:-3', /below zero/],
    ['/reading bucket:gg seconds:0', /too low/],
    ['/reading bucket:gg seconds:4000', /too high/],
    ['/reading bucket:gg seconds:14kg', /weight.*a time/],
    ['/reading bucket:gg gravity:1.44 within:0', /too low/],
    ['/reading bucket:gg gravity:1.44 within:2', /too high/],
    ['/reading bucket:gg look:right temperature:180C', /too high/],
    ['/reading bucket:gg look:lovely', /lovely.*not one of these: thin, right, thick/],
    ['/reading bucket:gg look:right stirred:maybe', /maybe.*neither yes nor no/],
    ['/reading bucket:gg seen:ghosts', /ghosts.*not one of these/],
    ['/reading bucket:gg seen:constructor', /not one of these/],
    ['/reading bucket:gg', /What did you measure/],
    ['/reading bucket:gg seconds:14 cup:teacup', /no cup .teacup/],
    ['/stirred bucket:gg minutes:-1', /below zero/],
    ['/stirred bucket:gg minutes:400', /too high/],
    ['/stirred bucket:gg with:spoon', /spoon.*not one of these/],
    ['/sieved bucket:gg mesh:0', /too low/],
    ['/undo entry:99-1', /no entry 99-1/],
    ['/undo entry:banana', /banana.*not an entry/],
    ['/undo entry:1-1', /keeper can retire/],
    ['/water-or-stir', /bucket is missing/],
    ['/water-or-stir bucket:gg colour:grey', /has no “colour:”/],
    ['/bucket log bucket:gg most:0', /too low/],
  ])('%s', async (line, named) => {
    await refused(await roomWithCup(), line, named);
  });

  it.each([
    ['/bucket add name:"Gull Grey"', /bucket 1 already/],
    ['/bucket add name:gg', /bucket 1 already/],
    ['/bucket add name:7', /is a number/],
    ['/bucket add name:A gravity:1.46-1.42', /low end comes first/],
    ['/bucket add name:A gravity:0.9-1.1', /not a usable window/],
    ['/bucket add name:A gravity:1.44', /not a range/],
    ['/bucket add name:A gravity:1.42-1.46 solids:1.2', /too low/],
    ['/bucket add name:A pail:10l volume:12l', /does not fit/],
    ['/bucket add name:A pail:19kg', /weight.*volume/],
    ['/bucket add name:A mesh:fine', /not a number/],
    ['/bucket add name:A rest:-1h', /below zero/],
    ['/bucket add name:A rest:4000h', /too high/],
    ['/bucket change bucket:gg', /what to change/],
    ['/bucket change bucket:gg gravity:1.4-1.44 solids:9', /too high/],
    ['/bucket release bucket:gg', /not on hold/],
    ['/bucket hold bucket:gg', /why is missing/],
    ['/studio vessel name:"steel cup" tare:85g water:100kg', /100 kg of water.*20 g to 5 kg/],
    ['/studio vessel name:x tare:-85g water:100g', /below zero/],
    ['/studio cup name:x kind:bucket', /not one of these/],
    ['/studio set zone:Mars/Olympus', /not a time zone/],
    ['/studio set units:cubits', /not one of these/],
    ['/studio set', /what to set/],
  ])('%s, of a keeper', async (line, named) => {
    await refused(await roomWithCup(), line, named, 'keeper');
  });
});

describe('times', () => {
  it.each([
    ['tomorrow', /tomorrow.*not happened yet/],
    ['in 2 hours', /not happened yet/],
    ['2031-01-01', /not happened yet/],
    ['2019-01-01', /more than a year ago/],
    ['whenever', /can't read .whenever. as a time/],
    ['', /./],
  ])('/stirred when:"%s"', async (when, named) => {
    const room = await openRoomWithGullGrey();
    if (when === '') {
      await kept(room, '/stirred bucket:gg when:""');
      return;
    }
    await refused(room, `/stirred bucket:gg when:"${when}"`, named);
  });
});

describe('buckets that are not there', () => {
  it.each([
    ['bucket:nemo', /no bucket .nemo/],
    ['bucket:99', /no bucket .99/],
    ['bucket:0', /no bucket/],
    ['bucket:"gull gery"', /no bucket .gull gery.*Gull Grey/],
  ])('%s', async (typed, named) => {
    await refused(await roomWithCup(), `/stirred ${typed}`, named);
  });
});

describe('a bucket that is misspelt', () => {
  it('is offered as it is spelt: one press sends the same line again', async () => {
    const room = await roomWithCup();
    const answer = await refused(room, '/added bucket:"gul gery" what:water amount:450ml', /Gull Grey/);
    expect(answer.actions.map(({ label }) => label)).toEqual(['1 · Gull Grey']);
    expect((await room.say(6, answer.actions[0]?.line ?? '')).data['entry']).toBe('1-2');
  });
});

describe('members’ words', () => {
  it.each([
    ['@everyone', '@everyone'],
    ['**bold** [here](https://example.com) `code`', '**bold** [here](https://example.com) `code`'],
    ['<@123456789012345678> <#1> <:x:1>', '<@123456789012345678> <#1> <:x:1>'],
    ['🏺🔥 zé', '🏺🔥 zé'],
    ['שלום עולם', 'שלום עולם'],
    ["'; drop table events; --", "'; drop table events; --"],
    ['$(reboot) `reboot` ; rm -rf /', '$(reboot) `reboot` ; rm -rf /'],
    ['he said "thin"', 'he said "thin"'],
    ['back\\slash', 'back\\slash'],
    ['a\u0000b\u0000', 'ab'],
  ])('a note of %j is kept as it was typed', async (typed, asKept) => {
    const room = await roomWithCup();
    await room.request(5, { path: ['stirred'], typed: { bucket: 'gg', note: typed } });
    const { entries } = await stored(room);
    expect(entries[0]?.note).toBe(asKept);
    const log = await room.say(6, '/bucket log bucket:gg');
    expect(log.data['entries']).toMatchObject([{ note: asKept }, {}]);
  });

  it('direction marks and invisible characters do not reach the terminal', async () => {
    const room = await roomWithCup();
    await room.request(5, {
      path: ['stirred'],
      typed: { bucket: 'gg', note: 'a\u202Eevil\u200Bb\u001B[2J' },
    });
    const log = await room.say(6, '/bucket log bucket:gg');
    expect(log.reasons.join('\n')).not.toMatch(/[\u202E\u200B\u001B]/u);
  });

  it('a note of 4,000 characters is kept; of 4,001 it is refused with its length', async () => {
    const room = await roomWithCup();
    const long = '🏺'.repeat(4000);
    await kept(room, `/stirred bucket:gg note:"${long}"`);
    expect((await stored(room)).entries[0]?.note).toBe(long);
    await refused(room, `/stirred bucket:gg note:"${long}x"`, /4001.*4000/);
  });

  it('a bucket may have any name', async () => {
    for (const name of [
      '@everyone',
      '**Gull**',
      'שלום',
      '🏺',
      "Robert'); drop",
      'constructor',
      '__proto__',
    ]) {
      const room = await roomWithCup();
      const added = await room.request(1, { path: ['bucket', 'add'], typed: { name }, role: 'keeper' });
      expect(added.ok, name).toBe(true);
      if (name !== '**Gull**') {
        const found = await room.request(2, { path: ['bucket', 'show'], typed: { bucket: name } });
        if (/[\p{L}\p{N}]/u.test(name)) expect(found.data['bucket']).toMatchObject({ name });
        else expect(found.kind).toBe('refusal');
      }
      expect(room.bugs).toEqual([]);
    }
  });
});

describe('it simply works', () => {
  it.each([
    ['amount:"350 ML"', 350],
    ['amount:350ml', 350],
    ['amount:“350 ml”', 350],
    ['amount:1,5l', 1500],
    ['amount:"1,5 l"', 1500],
    ['amount:"1 1/2 cups"', 354.88],
    ['amount:"½ cup"', 118.29],
    ['amount:"3 tsp"', 14.787],
    ['amount:"2 lb 3 oz"', 992.23],
    ['amount:.5L', 500],
    ['amount:‘450 ml’', 450],
  ])('/added what:water %s', async (typed, ml) => {
    const room = await roomWithCup();
    await kept(room, `/added bucket:gg what:water ${typed}`);
    expect(await lastEvent(room)).toMatchObject({ added: { what: 'water', volume: expect.closeTo(ml, 1) } });
  });

  it('2 lb 3 oz of dry batch is 992 g', async () => {
    const room = await roomWithCup();
    await kept(room, '/added bucket:gg what:dry amount:2 lb 3 oz');
    expect(await lastEvent(room)).toMatchObject({ added: { what: 'dry', mass: expect.closeTo(992.23, 1) } });
  });

  it('values run to the next option, quotes or not, in any order and case', async () => {
    const room = await roomWithCup();
    await kept(room, '/ADDED what:water Bucket:gull grey AMOUNT:350 ML note:not sure: maybe more');
    expect(await lastEvent(room)).toMatchObject({ added: { volume: 350 } });
    expect((await stored(room)).entries[0]?.note).toBe('not sure: maybe more');
  });

  it.each(['1,440', '1.440', '1,44', '“1.44”', '1.44 SG'])('gravity:%s is 1.44', async (typed) => {
    const room = await roomWithCup();
    const answer = await kept(room, `/reading bucket:gg gravity:${typed} stirred:yes`);
    expect(answer.data['gravity']).toBeCloseTo(1.44, 9);
  });
});

describe('sent twice, or pressed by two', () => {
  it('a form that is sent twice logs once and gets the same reply', async () => {
    const room = await roomWithCup();
    const form = {
      key: 'discord:1234',
      path: ['added'],
      typed: { bucket: 'gg', what: 'water', amount: '450 ml' },
    };
    const first = await room.request(5, form);
    const second = await room.request(6, form);
    expect(second).toEqual(first);
    expect((await stored(room)).entries).toHaveLength(2);
  });

  it('sent twice at once too', async () => {
    const room = await roomWithCup();
    const form = { key: 'discord:99', path: ['stirred'], typed: { bucket: 'gg' } };
    const both = await Promise.all([room.request(5, form), room.request(5, form)]);
    expect(both[1]).toEqual(both[0]);
    expect((await stored(room)).entries).toHaveLength(2);
  });

  it('two phones that press the same “I poured” log it once: the second is told who did what, and may log it anyway', async () => {
    const room = await roomWithCup();
    const asked = await room.say(1, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
    const pour = asked.actions[0]?.line ?? '';
    expect(pour).toMatch(/^\/added bucket:1 what:water amount:2000ml after:2$/);
    expect(afterOf(pour)).toBe(2);
    const first = await room.say(2, pour, 'Wren');
    expect(first.ok).toBe(true);
    const before = await stored(room);
    const second = await room.say(3, pour, 'Ines');
    expect(second).toMatchObject({ ok: false, kind: 'refusal', private: true });
    expect(second.title).toMatch(/not logged.*in the meantime/i);
    expect(second.reasons.join('\n')).toMatch(/Wren added 2 l of water/);
    // The reply includes a fresh verdict.
    expect(verdictOf(second)).toMatchObject({ step: 'measure', after: 3 });
    expect(await stored(room)).toEqual(before);
    const anyway = second.actions.at(-1);
    expect(anyway?.line).toBe('/added bucket:1 what:water amount:2000ml');
    expect((await room.say(4, anyway?.line ?? '', 'Ines')).ok).toBe(true);
  });

  it('both at once: one is logged, one refused', async () => {
    const room = await roomWithCup();
    const asked = await room.say(1, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
    const pour = asked.actions[0]?.line ?? '';
    const both = await Promise.all([room.say(2, pour, 'Wren'), room.say(2, pour, 'Ines')]);
    expect(both.map(({ kind }) => kind).sort()).toEqual(['answer', 'refusal']);
    expect((await stored(room)).entries).toHaveLength(3);
  });

  it('an action is not carried out when its position is not a number', async () => {
    const room = await roomWithCup();
    await refused(room, '/added bucket:gg what:water amount:450ml after:soon', /after/);
  });

  it('another bucket’s entries don’t hold an action up', async () => {
    const room = await roomWithCup();
    await room.keeper(0, '/bucket add name:Heron');
    const asked = await room.say(1, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
    await room.say(2, '/stirred bucket:heron');
    expect((await room.say(3, asked.actions[0]?.line ?? '')).ok).toBe(true);
  });
});

describe('commands that are not there, or not for members', () => {
  it.each([
    ['', /Type a command/],
    ['/', /Type a command/],
    ['/reding bucket:gg', /no command .reding.*\/reading/],
    ['/xyzzy', /no command .xyzzy/],
    ['/bucket', /needs one of these/],
    ['/bucket burn bucket:gg', /needs one of these/],
    ['/stirred bucket:gg minutes:3 minutes:4', /minutes is there twice/],
    ['/stirred gg bucket:gg', /don't know what .gg. belongs to/],
    ['/bucket list everything:yes', /has no “everything:”/],
  ])('%s', async (line, named) => {
    await refused(await roomWithCup(), line, named);
  });

  it.each([
    '/bucket add name:Heron',
    '/bucket change bucket:gg rest:4h',
    '/bucket hold bucket:gg why:frozen',
    '/bucket release bucket:gg',
    '/bucket retire bucket:gg',
    '/studio set units:us',
    '/studio vessel name:x tare:85g water:100g',
    '/studio cup name:x kind:ford4',
  ])('%s is for keepers', async (line) => {
    await refused(await roomWithCup(), line, /for keepers/);
  });
});
