import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../helpers/discord/answerSchemas.ts';
import { openGlazeRoom, openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

const pail = '/bucket add name:"Gull Grey" pail:19l gravity:1.42-1.46 seconds:12-16 cup:ford4 solids:2.6';

describe('an amount that a person can pour', () => {
  it('waits for how full the pail is: three presses, then the amount and one press that logs it', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, pail);
    const asked = await room.say(1, '/reading bucket:1 gravity:1.5 within:0.002 seconds:14 stirred:yes');
    expect(verdictOf(asked)).toMatchObject({ step: 'add-water', asks: ['level'] });
    expect(asked.actions.map(({ label }) => label)).toEqual([
      'It is half full',
      'It is two thirds full',
      'It is 90 % full',
    ]);
    const filled = await room.say(3, asked.actions[0]?.line ?? '');
    // 9.5 l from 1.50 to 1.44: 9500 × 0.06/0.44 = 1295 ml, or less where the volume is in doubt; in hundreds, down.
    expect(verdictOf(filled)).toMatchObject({ step: 'add-water', asks: [] });
    const safe = verdictOf(filled).waterMl ?? 0;
    expect(safe).toBeLessThanOrEqual(1296);
    const pours = filled.actions.filter(({ line }) => line.startsWith('/added'));
    expect(pours).toHaveLength(1);
    const [, ml] = /what:water amount:(\d+)ml/.exec(pours[0]?.line ?? '') ?? [];
    expect(Number(ml)).toBe(Math.floor(safe / 100) * 100);
    expect(filled.title).toContain(`Add ${Number(ml) / 1000} l of water`);
    expect(pours[0]?.label).toBe(`I poured ${Number(ml) / 1000} l`);
    const poured = await room.say(5, pours[0]?.line ?? '');
    expect(poured.logged?.text).toMatch(new RegExp(`${Number(ml) / 1000} l`));
  });

  it('is told in cups by a studio that measures in cups', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/studio set units:us');
    await room.keeper(0, `${pail} volume:15l`);
    const answer = await room.say(1, '/reading bucket:1 gravity:1.47 within:0.002 seconds:14 stirred:yes');
    // 15 l from 1.47 to 1.44: 1023 ml, 4.32 cups of 236.6 ml: by half cups, 4.
    expect(answer.title).toMatch(/Add 4 cups of water/);
    expect(answer.actions[0]?.line).toMatch(/amount:946\.35ml/);
  });

  it('is told in half scoops by a studio that has a scoop', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/studio set scoop:250g');
    await room.say(1, '/reading bucket:gg gravity:1.38 within:0.002 seconds:14 stirred:yes');
    const answer = await room.keeper(1, '/water-or-stir bucket:gg');
    // 15 l from 1.38 to 1.44: 15 000 × 2.6 × 0.06/(2.6 − 1.44) = 2017 g: 8 scoops of 250 g.
    expect(answer.title).toMatch(/8 scoops \(2 kg\) of dry batch/);
    expect(answer.actions.find(({ line }) => line.includes('what:dry'))?.line).toMatch(/amount:2000g/);
  });
});
