import { expect, it } from 'vitest';
import { openRoomWithGullGrey, type GlazeRoom } from '../../../helpers/room/glazeRoom.ts';

const day = 24 * 60;
const asksForScale = async (room: GlazeRoom, minutes: number) => {
  await room.say(minutes, '/stirred bucket:gg');
  const { reasons } = await room.say(minutes, '/water-or-stir bucket:gg');
  return reasons.some((reason) => /Weigh a cup on the scale this time/.test(reason));
};

it('asks for the scale one time in four, where a hydrometer is the habit', async () => {
  const room = await openRoomWithGullGrey();
  const asked: boolean[] = [];
  for (let visit = 1; visit <= 9; visit++) {
    const minute = visit * 10 * day;
    asked.push(await asksForScale(room, minute));
    await room.say(minute + 1, '/reading bucket:gg gravity:1.44 scale:hydrometer seconds:14 stirred:yes');
  }
  expect(asked).toEqual([false, false, false, true, false, false, false, true, false]);
});

it('does not ask once it was weighed on one', async () => {
  const room = await openRoomWithGullGrey();
  await room.keeper(0, '/studio vessel name:"steel cup" tare:85.4g water:100.2g temperature:20C');
  for (let visit = 1; visit <= 3; visit++)
    await room.say(
      visit * 10 * day,
      '/reading bucket:gg gravity:1.44 scale:hydrometer seconds:14 stirred:yes',
    );
  expect(await asksForScale(room, 40 * day)).toBe(true);
  await room.say(40 * day + 1, '/reading bucket:gg weight:229.7g seconds:14 stirred:yes');
  expect(await asksForScale(room, 50 * day)).toBe(false);
});
