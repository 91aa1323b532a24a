import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../helpers/discord/answerSchemas.ts';
import { openGlazeRoom } from '../../helpers/room/glazeRoom.ts';

const week = 8 * 24 * 60;

const roomIn = async (units: 'metric' | 'us' | 'imperial') => {
  const room = await openGlazeRoom();
  await room.keeper(0, `/studio set units:${units}`);
  await room.keeper(
    0,
    '/bucket add name:A pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:ford4 solids:2.6 rest:4h',
  );
  return room;
};

describe('the studio’s measures', () => {
  // 15 l · 0.06 / 0.44 = 2045 ml: 8.64 US cups of 236.588 ml, 7.2 imperial ones of 284.131 ml; by half cups, down.
  it.each([
    ['metric', /Add 2 l of water/, 'amount:2000ml'],
    ['us', /Add 8\.5 cups of water/, 'amount:2011ml'],
    ['imperial', /Add 7 cups of water/, 'amount:1988.91ml'],
  ] as const)('%s: the amount is said in them, and logged as it is said', async (units, said, logged) => {
    const room = await roomIn(units);
    const answer = await room.say(1, '/reading bucket:a gravity:1.5 seconds:14 stirred:yes');
    expect(answer.title).toMatch(said);
    expect(verdictOf(answer).waterMl).toBeCloseTo(2045.45, 1);
    expect(answer.actions[0]?.line).toContain(logged);
  });

  // 136.36 ml to the litre; 516.2 ml to the US gallon, 2.18 cups of 236.6 ml; by quarter cups, down.
  it.each([
    ['metric', /Add 130 ml of water for each litre/],
    ['us', /Add 2 cups of water for each gallon/],
  ] as const)('%s: and for each measure of glaze when the pail is not known', async (units, said) => {
    const room = await roomIn(units);
    const answer = await room.say(week, '/reading bucket:a gravity:1.5 seconds:14 stirred:yes');
    expect(answer.title).toMatch(said);
  });

  it('a bare temperature is in Fahrenheit in the US, and in Celsius elsewhere', async () => {
    for (const [units, typed] of [
      ['us', '41'],
      ['metric', '5'],
      ['imperial', '5'],
      ['us', '5C'],
      ['metric', '41F'],
    ] as const) {
      const room = await roomIn(units);
      await room.say(1, `/reading bucket:a look:right temperature:${typed}`);
      const log = await room.say(2, '/bucket log bucket:a');
      expect(log.data['entries']).toMatchObject([{ event: { temperature: expect.closeTo(5, 6) } }, {}]);
    }
  });

  it('cups and gallons are US ones unless the studio is imperial', async () => {
    for (const [units, ml] of [
      ['metric', 3785.41],
      ['us', 3785.41],
      ['imperial', 4546.09],
    ] as const) {
      const room = await roomIn(units);
      await room.say(1, '/added bucket:a what:water amount:"1 gal"');
      const log = await room.say(2, '/bucket log bucket:a');
      expect(log.data['entries']).toMatchObject([
        { event: { added: { volume: expect.closeTo(ml, 2) } } },
        {},
      ]);
    }
  });

  it('a calibrated cup is said as it was weighed, without digits that nobody read', async () => {
    const room = await roomIn('us');
    const set = await room.keeper(1, '/studio vessel name:tin tare:3.1oz water:"8.2 oz" temperature:70');
    expect(set.title).toMatch(/3\.1 oz empty, 8\.2 oz of water/);
    expect((await room.say(2, '/studio show')).facts.map(({ text }) => text).join()).toContain(
      '3.1 oz empty',
    );
  });

  it('the volume has no more digits than its uncertainty carries', async () => {
    const room = await roomIn('metric');
    await room.say(1, '/reading bucket:a gravity:1.5 seconds:14 stirred:yes');
    await room.say(2, '/added bucket:a what:water amount:53ml');
    await room.say(3, '/reading bucket:a gravity:1.498 seconds:14 stirred:yes');
    const answer = await room.say(4, '/reading bucket:a gravity:1.498 seconds:14 stirred:yes');
    // 15.053 l, known to 10 %.
    expect(answer.reasons.join('\n')).toMatch(/Worked out for 15\.1 l in the pail, ± 1\.5 l/);
  });
});
