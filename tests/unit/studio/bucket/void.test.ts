import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../helpers/discord/answerSchemas.ts';
import { openRoomWithGullGrey, stateOf, type GlazeRoom } from '../../../helpers/room/glazeRoom.ts';

const day = 24 * 60;
const good = '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes';
const ask = '/water-or-stir bucket:gg';
const stir = '/stirred bucket:gg minutes:5';
const step = async (room: GlazeRoom, minute: number, line = ask) =>
  verdictOf(await room.say(minute, line)).step;
const measured = async (): Promise<GlazeRoom> => {
  const room = await openRoomWithGullGrey();
  await room.say(10, good);
  return room;
};

describe('yesterday’s gravity and flow are worth nothing', () => {
  it.each([
    [
      'a cake was broken up',
      ['/stirred bucket:gg seen:cake', '/stirred bucket:gg with:mixer seen:cake-gone'],
      /cake/,
    ],
    ['lumps were sieved out', ['/stirred bucket:gg seen:lumps', '/sieved bucket:gg mesh:80', stir], /lumps/i],
    ['a skin was sieved out', ['/stirred bucket:gg seen:skin', '/sieved bucket:gg', stir], /sieved out/],
  ])('once %s', async (_what, lines, why) => {
    const room = await measured();
    for (const [i, line] of lines.entries()) await room.say(day + i, line);
    const answer = await room.say(day + 3, ask);
    expect(verdictOf(answer)).toMatchObject({
      step: 'measure',
      flow: null,
      gravity: { value: 1.44, believed: false },
    });
    expect(answer.title).toMatch(why);
    expect(answer.title).toMatch(/measure it/i);
    // Not told as present anywhere else.
    expect((await room.say(day + 3, '/bucket list')).facts[0]?.text).not.toMatch(/1\.44/);
    expect(answer.facts.map(({ text }) => text).join()).toMatch(/1\.44, of before/);
    // A look at the flow alone is not enough; a weight and a flow are.
    expect(await step(room, day + 4, '/reading bucket:gg seconds:14 stirred:yes')).toBe('measure');
    expect(await step(room, day + 5, good)).toBe('use');
  });

  it('once something got into it, and a keeper has released it', async () => {
    const room = await measured();
    await room.keeper(day, '/bucket hold bucket:gg why:"a sponge fell in"');
    await room.keeper(day + 1, '/bucket release bucket:gg');
    await room.say(day + 2, stir);
    const answer = await room.say(day + 3, ask);
    expect(verdictOf(answer)).toMatchObject({ step: 'measure', flow: null, predicted: null });
    expect(answer.title).toMatch(/something got into it/);
  });

  it('nor is a reading that was taken before the lumps were sieved out of it', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes seen:lumps');
    expect(await step(room, 2, '/sieved bucket:gg')).toBe('measure');
  });

  it('but a sieving that found nothing ends nothing', async () => {
    const room = await measured();
    expect(await step(room, 20, '/sieved bucket:gg mesh:80')).toBe('use');
  });

  it('and all of it holds again when the entry is taken back', async () => {
    const room = await measured();
    const before = await stateOf(room);
    const cake = await room.say(20, '/stirred bucket:gg seen:cake');
    await room.say(21, `/undo entry:${String(cake.data['entry'])}`);
    expect(await stateOf(room)).toEqual(before);
  });

  it('nor is it reckoned on: not in a blend, not as what was poured out of it', async () => {
    const room = await measured();
    await room.keeper(11, '/bucket add name:Heron nick:h pail:19l volume:5l gravity:1.42-1.46');
    await room.say(12, '/reading bucket:h gravity:1.44 stirred:yes');
    await room.keeper(13, '/bucket hold bucket:gg why:"contaminated"');
    expect((await room.say(14, '/batch blend first:h second:gg')).title).toMatch(/Measure Gull Grey first/);
    const poured = await room.say(15, '/added bucket:h what:glaze amount:1l from:gg');
    expect(verdictOf(poured).predicted).toBeNull();
  });
});

describe('a bucket that froze', () => {
  it.each(['frozen', '"frost got at it"', '"there was ice in it"', '"froze overnight"'])(
    'is released to be sieved, stirred and weighed, in that order: %s',
    async (why) => {
      const room = await measured();
      await room.keeper(day, `/bucket hold bucket:gg why:${why}`);
      const released = await room.keeper(2 * day, '/bucket release bucket:gg');
      expect(verdictOf(released).step).toBe('sieve');
      expect(released.reasons.join(' ')).toMatch(/Sieve it.*then stir it.*then weigh it/);
      // A stir or a reading before the sieve does not count.
      expect(await step(room, 2 * day + 1, stir)).toBe('sieve');
      expect(await step(room, 2 * day + 2, good)).toBe('sieve');
      const sieved = await room.say(2 * day + 3, '/sieved bucket:gg mesh:80');
      expect(verdictOf(sieved)).toMatchObject({ step: 'stir', then: 'measure' });
      expect(sieved.reasons.join(' ')).toMatch(/nobody has logged a stir since it was sieved/);
      expect(await step(room, 2 * day + 4, stir)).toBe('measure');
      expect(await step(room, 2 * day + 5, good)).toBe('use');
    },
  );

  it('and was sieved, stirred and weighed while it was held needs no second time', async () => {
    const room = await measured();
    await room.keeper(day, '/bucket hold bucket:gg why:frozen');
    await room.say(2 * day, '/sieved bucket:gg');
    await room.say(2 * day + 1, stir);
    await room.say(2 * day + 2, good);
    expect(verdictOf(await room.keeper(2 * day + 3, '/bucket release bucket:gg')).step).toBe('use');
  });

  it('and is never sieved is stirred and weighed', async () => {
    const room = await openRoomWithGullGrey(['mesh', 'never']);
    await room.say(10, good);
    await room.keeper(day, '/bucket hold bucket:gg why:frozen');
    const released = await room.keeper(2 * day, '/bucket release bucket:gg');
    expect(verdictOf(released)).toMatchObject({ step: 'stir', then: 'measure' });
  });
});
