import { describe, expect, it } from 'vitest';
import { openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

const day = 24 * 60;

describe('a bucket that is to be measured', () => {
  it.each([
    ['water', '/added bucket:gg what:water amount:20ml'],
    ['powder', '/added bucket:gg what:dry amount:20g'],
  ])('is stirred first when %s went in since its last stir', async (_, added) => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes');
    await room.say(8 * day, '/stirred bucket:gg minutes:3');
    const answer = await room.say(8 * day + 45, added);
    expect(answer.title).toMatch(/Stir it to the bottom, then/);
    await room.say(8 * day + 46, '/stirred bucket:gg minutes:3');
    const stirred = await room.say(8 * day + 47, '/water-or-stir bucket:gg');
    expect(stirred.title).toMatch(/Now measure it|Now weigh a cup of it|Now time the flow cup|Now look/);
  });

  it('is stirred first when it was never measured and stood for an hour', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/stirred bucket:gg minutes:3');
    expect((await room.say(2, '/water-or-stir bucket:gg')).title).toMatch(/Now weigh a cup of it/);
    expect((await room.say(61, '/water-or-stir bucket:gg')).title).toMatch(
      /Stir it to the bottom, then weigh/,
    );
  });
});
