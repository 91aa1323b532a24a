import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../helpers/discord/answerSchemas.ts';
import { openRoomWithGullGrey } from '../../../helpers/room/glazeRoom.ts';

const days = 24 * 60;
const ask = '/water-or-stir bucket:gg';
const thick = '/reading bucket:gg gravity:1.44 seconds:22 stirred:yes';

describe('a bucket that is thick again', () => {
  /** Stirred on, and right for it. */
  const stirredOn = async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, '/stirred bucket:gg minutes:2');
    expect(verdictOf(await room.say(1, thick)).step).toBe('stir-on');
    await room.say(6, '/stirred bucket:gg minutes:5');
    await room.say(7, '/reading bucket:gg seconds:14');
    return room;
  };

  it('days after a long stir is not stirred on again: it is over-flocculated, and why is said', async () => {
    const room = await stirredOn();
    await room.say(3 * days, '/stirred bucket:gg minutes:2');
    await room.say(3 * days + 1, thick);
    const again = await room.say(3 * days + 2, thick);
    expect(verdictOf(again)).toMatchObject({ step: 'ask-keeper', keeperStep: 'deflocculate' });
    expect(again.reasons.join('\n')).toMatch(/It was stirred long 3 days ago, and is thick again\./);
  });

  it('after more than two weeks is stirred on first', async () => {
    const room = await stirredOn();
    await room.say(20 * days, '/stirred bucket:gg minutes:2');
    await room.say(20 * days + 1, thick);
    expect(verdictOf(await room.say(20 * days + 2, thick)).step).toBe('stir-on');
  });
});

describe('a visit in which a dose is given', () => {
  it('needs no second weighing: a dose leaves gravity as it is', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:10 stirred:yes');
    await room.say(2, '/added bucket:gg what:flocculant amount:4.8ml');
    await room.say(3, '/stirred bucket:gg');
    expect(verdictOf(await room.say(14, '/reading bucket:gg seconds:10')).step).toBe('flocculate');
  });

  it('counts every cup after its time, not only the first: the stir that a reading tells of came with the dose', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:10 stirred:yes');
    await room.say(2, '/added bucket:gg what:flocculant amount:4.8ml');
    expect(verdictOf(await room.say(14, '/reading bucket:gg seconds:14 stirred:yes')).flow).toBe('in');
    expect(verdictOf(await room.say(16, '/reading bucket:gg seconds:18 stirred:yes')).flow).toBe('thick');
  });
});

describe('the stir that a reading tells of', () => {
  const when = async (stirredAt: number, readAt: number) => {
    const room = await openRoomWithGullGrey();
    await room.say(stirredAt, '/stirred bucket:gg');
    await room.say(readAt, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes');
    return verdictOf(await room.say(readAt + 6, ask)).hoursSinceStir;
  };

  it('is the one that was logged in the five minutes before', async () => {
    expect(await when(0, 4)).toBeCloseTo(10 / 60, 6);
  });

  it('is another one when that was logged earlier', async () => {
    expect(await when(0, 9)).toBeCloseTo(6 / 60, 6);
  });
});
