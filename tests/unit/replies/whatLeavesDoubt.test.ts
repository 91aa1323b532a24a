import { describe, expect, it } from 'vitest';
import { openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';
import { noonPlus } from '../../helpers/store/storeEvents.ts';

/** In the middle of the window, by scale and by cup: no edge is near. */
const right = '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes';

describe('an answer “use it” that leaves some doubt', () => {
  it('says that cup and finger disagree, not that an edge is near', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, right);
    const { title } = await room.say(1, '/reading bucket:gg look:thin');
    expect(title).toMatch(
      /^Gull Grey: Use it\. Cup and finger disagree, and the cup counts: the chance that it is right is 9\d in 100/,
    );
  });

  it('says that the last weighing does not fit, where it counts for nothing yet', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, right);
    await room.say(1, '/reading bucket:gg look:thin');
    await room.say(2, '/reading bucket:gg gravity:1.44');
    const { title, facts } = await room.say(3, '/reading bucket:gg gravity:1.66 stirred:yes');
    expect(facts[0]?.text).toMatch(/1\.66, counts once a second reading agrees/);
    expect(title).toMatch(
      /Use it\. The last weighing doesn't fit the others\. Even so, the chance that it is right is/,
    );
  });

  it('is not given for less than 90 in 100 while the last weighing does not fit, after however many readings', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, right);
    await room.say(1, '/reading bucket:gg look:thin');
    await room.say(2, '/reading bucket:gg gravity:1.44');
    await room.say(3, '/reading bucket:gg gravity:1.66 stirred:yes');
    const { title, data } = await room.say(4, '/reading bucket:gg gravity:1.29 stirred:yes');
    expect(data['verdict']).toMatchObject({ step: 'measure' });
    expect(title).toMatch(/Weigh a second cup first/);
  });

  it('says that an edge is near where one is', async () => {
    const room = await openRoomWithGullGrey();
    const { title } = await room.say(0, '/reading bucket:gg gravity:1.455 seconds:15.8 stirred:yes');
    expect(title).toMatch(
      /Use it\. It is near the edge of its window: the chance that it is right is 9\d in 100/,
    );
  });
});

describe('a cup timed in the cold', () => {
  it('is told as it was timed, and as it would be at room warmth', async () => {
    const room = await openRoomWithGullGrey();
    const reply = await room.desk.dispatch({
      studio: room.studio,
      member: await room.member('Wren'),
      role: 'member',
      now: noonPlus(0),
      key: 'cold',
      path: ['reading'],
      typed: { bucket: 'gg', gravity: '1.44', seconds: '18', temperature: '8C', stirred: 'yes' },
    });
    const scale = reply.facts?.find(({ label }) => label.join('') === 'Flow')?.scale;
    expect(scale?.text.join('')).toBe('18 s, right');
    expect(scale?.under?.join('')).toMatch(/^1\d(\.\d)? s at room warmth$/);
  });
});

describe('a reading of last month', () => {
  it('has its age wherever it is told', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, right);
    const month = 30 * 24 * 60;
    for (const line of [
      '/water-or-stir bucket:gg',
      '/bucket show bucket:gg',
      '/ask question:"is gull grey ready?"',
    ]) {
      const { facts, title } = await room.say(month, line);
      expect(JSON.stringify([title, facts])).toMatch(/1\.44 ± 0\.0\d( \(window [^)]*\))?, 30 days ago/);
    }
  });
});
