import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../helpers/discord/answerSchemas.ts';
import { openRoomWithGullGrey, openGlazeRoom } from '../../helpers/room/glazeRoom.ts';

describe('what a bucket is marked with', () => {
  it.each(['lead', 'cadmium', 'barium,lead'])('holds it when it is marked later with %s', async (marks) => {
    const room = await openRoomWithGullGrey();
    const changed = await room.keeper(1, `/bucket change bucket:gg cautions:${marks}`);
    expect(changed.title).toMatch(/on hold/);
    const answer = await room.say(2, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes');
    expect(verdictOf(answer).step).toBe('on-hold');
    expect(answer.title).toMatch(/^Gull Grey: On hold/);
  });

  it('holds it once: a keeper who has cleared it may change it again', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, '/bucket change bucket:gg cautions:lead');
    await room.keeper(2, '/bucket release bucket:gg sure:yes');
    const renamed = await room.keeper(3, '/bucket change bucket:gg cautions:lead,copper rest:2h');
    expect(renamed.title).not.toMatch(/on hold/);
  });

  it.each([
    ['barium', /barium/],
    ['manganese', /manganese/],
    ['lithium', /lithium/],
    ['copper', /copper/],
    ['caustic', /Caustic/],
  ])('%s is warned of wherever the bucket is handled', async (mark, warned) => {
    const room = await openGlazeRoom();
    await room.keeper(
      0,
      `/bucket add name:"Gull Grey" nick:gg pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:ford4 cautions:${mark}`,
    );
    for (const line of [
      '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes',
      '/water-or-stir bucket:gg',
      '/prep piece:"tall jug" bucket:gg',
    ])
      expect((await room.say(1, line)).cautions.join(' '), line).toMatch(warned);
  });

  it.each(['barium', 'lithium', 'nickel', 'toxic'])('takes no bare finger where it is %s', async (mark) => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, `/bucket change bucket:gg cautions:${mark}`);
    expect((await room.say(2, '/reading bucket:gg gravity:1.44 stirred:yes look:right')).kind).toBe(
      'refusal',
    );
  });

  it('is nothing again when a keeper says so', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, '/bucket change bucket:gg cautions:barium');
    await room.keeper(2, '/bucket change bucket:gg cautions:none sure:yes');
    expect((await room.say(3, '/reading bucket:gg gravity:1.44 stirred:yes look:right')).kind).toBe('answer');
  });
});
