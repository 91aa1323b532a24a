import { describe, expect, it } from 'vitest';
import { celsius, gravity, micrometres, millimetres } from '../../../../src/glaze/units.ts';
import { hinderedFallTime } from '../../../../src/glaze/slurry/settling.ts';
import { verdictOf, type Answer } from '../../../helpers/discord/answerSchemas.ts';
import { openGlazeRoom, openRoomWithGullGrey, type GlazeRoom } from '../../../helpers/room/glazeRoom.ts';

const hours = 60;
const read = (seen: string) => `/reading bucket:1 gravity:1.44 seconds:14 stirred:yes seen:${seen}`;
const ask = '/water-or-stir bucket:1';
const text = (answer: Answer) => [...answer.facts.map((fact) => fact.text), ...answer.reasons].join('\n');

/** A bucket without a rest limit of its own. */
const openRoom = async (): Promise<GlazeRoom> => {
  const room = await openGlazeRoom();
  await room.keeper(0, '/bucket add name:Heron gravity:1.42-1.46 seconds:12-16 cup:ford4');
  return room;
};

/** After how many hours of rest the bot says to stir first, to the minute. */
const stirAfter = async (room: GlazeRoom, stirred: number, limit: number) => {
  expect(verdictOf(await room.say(stirred + limit * hours - 1, ask))['rule']).not.toBe('rested');
  expect(verdictOf(await room.say(stirred + limit * hours + 1, ask))['rule']).toBe('rested');
};

describe('how long a bucket may rest', () => {
  it('is shorter than was set once it was seen settled sooner: between there and the longest rest without a sign', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, read('none'));
    await room.say(2 * hours, read('none'));
    await room.say(5.125 * hours, read('clear-water'));
    // Fine after 2 h, settled after 3.125 h: √(2 · 3.125) = 2.5 h, instead of the usual 4 h.
    await stirAfter(room, 5.125 * hours, 2.5);
    const card = await room.say(5.2 * hours, '/bucket show bucket:1');
    expect(text(card)).toMatch(/2\.5 h, learned.*nothing had settled after 2 h; clear water or a cake/);
    expect(card.data['bucket']).toMatchObject({ restHours: 4, restLearnedHours: 2.5 });
  });

  it('is longer than the usual hour after three longer rests without a sign', async () => {
    const room = await openRoom();
    await room.say(0, read('none'));
    for (const at of [2, 5]) await room.say(at * hours, read('none'));
    await stirAfter(room, 5 * hours, 1);
    await room.say(7 * hours, read('none'));
    await stirAfter(room, 7 * hours, 3);
    const rested = await room.say(11 * hours, ask);
    // Clay of 2 µm would leave 5 mm of clear water in under two hours, so a glaze that holds for three is flocculated.
    expect(text(rested)).toMatch(/gel/);
  });

  it('is not longer for one rest that was looked at three times', async () => {
    const room = await openRoom();
    await room.say(0, read('none'));
    for (const at of [2, 3, 4]) await room.say(at * hours, read('none').replace('stirred:yes', 'stirred:no'));
    await room.say(5 * hours, read('none'));
    await stirAfter(room, 5 * hours, 1);
  });

  it('is what its keeper set, however long it stood up', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, read('none'));
    for (const at of [6, 12, 18]) await room.say(at * hours, read('none'));
    await stirAfter(room, 18 * hours, 4);
  });

  it('is not learned from a cake that was there already, or that was left over from just before', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, '/stirred bucket:1 seen:cake');
    await room.say(5, '/stirred bucket:1 seen:cake');
    await room.say(90, '/stirred bucket:1 seen:cake');
    await room.say(95, '/stirred bucket:1 seen:cake-gone');
    await room.say(95, read('none'));
    await stirAfter(room, 95, 4);
  });

  it('is learned anew when a dose or another mix went in, not when water did', async () => {
    for (const [line, limit] of [
      ['what:water amount:10ml', Math.SQRT2],
      ['what:flocculant amount:5ml', 4],
      ['what:glaze amount:1l gravity:1.44', 4],
    ] as const) {
      const room = await openRoomWithGullGrey();
      await room.say(0, read('none'));
      await room.say(2 * hours, read('clear-water'));
      await room.say(2 * hours, `/added bucket:1 ${line}`);
      await room.say(2 * hours + 10, '/reading bucket:1 gravity:1.44 seconds:14 stirred:yes');
      // Never seen fine, settled after 2 h: between half of that and 2 h, √(1 · 2).
      await stirAfter(room, 2 * hours + 10, limit);
    }
  });
});

it('grains of 45 µm fall the depth of a pail in about ten minutes', () => {
  // By hand: v = 9.80665·(45e-6)²·(2.6 − 1)·998.2/(18·1.0016e-3) = 1.7593e-3 m/s; φ = 0.44/1.6 = 0.275;
  // 0.725^4.65 = 0.22417; 0.3 m/(1.7593e-3·0.22417) = 760.7 s.
  const time = hinderedFallTime({
    diameter: micrometres(45),
    particleGravity: gravity(2.6),
    slurry: gravity(1.44),
    distance: millimetres(300),
    temperature: celsius(20),
  });
  expect(time.ok && time.value).toBeCloseTo(760.7, 0);
});
