import { describe, expect, it } from 'vitest';
import { openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

describe('a thing seen in the bucket that no reading shows', () => {
  it.each([
    ['smell', /tell a keeper/, 'Rotten gum and smells'],
    ['mouldy', /with gloves on/, 'Rotten gum and smells'],
    ['crystals', /don’t sieve them out/, 'Crystals in the bucket'],
    ['frozen', /thaw slowly/, 'Frozen bucket'],
  ])('is told what to do about it, and its note: %s', async (seen, told, note) => {
    const room = await openRoomWithGullGrey();
    for (const line of [`/stirred bucket:gg seen:${seen}`, `/reading bucket:gg gravity:1.44 seen:${seen}`]) {
      const { cautions, actions } = await room.say(1, line);
      expect(cautions.join(' ')).toMatch(told);
      expect(actions.map(({ line: asked }) => asked)).toContain(`/ask question:"${note}"`);
    }
  });

  it('does not let a bucket with ice be used before it was sieved, stirred and measured', async () => {
    const room = await openRoomWithGullGrey();
    const good = '/reading bucket:gg gravity:1.44 within:0.01 seconds:14 stirred:yes';
    const step = async (minutes: number, line: string) => {
      const { data } = await room.say(minutes, line);
      return (data['verdict'] as { step: string }).step;
    };
    expect(await step(1, good)).toBe('use');
    expect(await step(2, '/stirred bucket:gg seen:ice')).toBe('sieve');
    expect(await step(3, '/sieved bucket:gg')).toBe('stir');
    expect(await step(4, '/stirred bucket:gg')).toBe('measure');
    expect(await step(5, good)).toBe('use');
  });
});

describe('a fault of the coat', () => {
  it.each([
    ['thin', 'too-thin', 'came out too thin', 'Coat too thin'],
    ['too-thick', 'too-thick', 'came out too thick', 'Coat too thick'],
    ['matte', 'dull', 'came out dull', 'Colour not as expected'],
    ['off-color', 'off-colour', 'came out off colour', 'Colour not as expected'],
    ['crawled', 'crawling', 'crawled', 'Crawling'],
  ])('is logged with its next step and its note: %s', async (typed, fault, said, note) => {
    const room = await openRoomWithGullGrey();
    const { title, data, actions } = await room.say(1, `/fired bucket:gg result:${typed} pieces:"2 of 4"`);
    expect(title).toContain(`2 of 4 ${said}`);
    expect(data['faults']).toEqual([fault]);
    expect(actions.map(({ line }) => line.replaceAll('"', ''))).toContain(`/ask question:${note}`);
  });
});

it('two layers want 6 mm of bare foot, one wants 3', async () => {
  const room = await openRoomWithGullGrey();
  await room.keeper(1, '/bucket add name:"Fog Bell" pail:19l volume:10l gravity:1.42-1.46');
  const one = await room.say(2, '/prep piece:"small cup" bucket:gg');
  expect(one.reasons.join(' ')).toMatch(/foot clean, 3 mm up/);
  const two = await room.say(3, '/prep piece:"tall jug" bucket:gg second:"fog bell"');
  expect(two.reasons.join(' ')).toMatch(/at least 6 mm up/);
});

it('the cone in a preparation is said to be the bisque’s', async () => {
  const room = await openRoomWithGullGrey();
  const { facts, reasons } = await room.say(1, '/prep piece:"tall jug" bucket:gg cone:6');
  expect(facts.find(({ label }) => label === 'Bisque')?.text).toBe(
    'nearly tight, by the bisque’s own cone, 6',
  );
  expect(reasons.join(' ')).toMatch(/is the cone of the bisque firing, not of the glaze/);
});

it('a bucket that settles fast says with every “use it” to stir again', async () => {
  const room = await openRoomWithGullGrey(['rest', '20 min']);
  const good = '/reading bucket:gg gravity:1.44 within:0.01 seconds:14 stirred:yes';
  expect((await room.say(1, good)).title).toMatch(
    /Use it\. .*It settles fast: stir it again before each piece/,
  );
  expect((await room.say(5, '/water-or-stir bucket:gg')).title).toMatch(/at least every 20 min/);
  const slow = await openRoomWithGullGrey();
  expect((await slow.say(1, good)).title).not.toMatch(/settles fast/);
});
