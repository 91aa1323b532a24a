import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { verdictOf, type Answer } from '../../../helpers/discord/answerSchemas.ts';
import { openGlazeRoom, openRoomWithGullGrey, stateOf } from '../../../helpers/room/glazeRoom.ts';

const days = 24 * 60;
const text = (answer: Answer) =>
  [answer.title, ...answer.facts.map((fact) => `${fact.label}: ${fact.text}`), ...answer.reasons].join('\n');
const read = (gravity: number, more = '') =>
  `/reading bucket:1 gravity:${gravity} within:0.005 seconds:14 stirred:yes ${more}`;

const within = z.object({ value: z.number(), u95: z.number() });
const change = z.looseObject({
  what: z.string(),
  orElse: z.array(z.string()),
  litres: within.optional(),
  litresPerLitre: within.optional(),
  powderGrams: within.optional(),
  direction: z.string().optional(),
  from: z.string(),
  to: z.string(),
  between: z.array(z.string()),
  mlPerDay: within.optional(),
});
const unlogged = (answer: Answer) => change.optional().parse(answer.data['unlogged']);

/** Gull Grey, 15 l at 1.44; two days later it reads as if 1.5 l of water had gone in: (15 · 1.44 + 1.5)/16.5 = 1.40. */
const watered = async () => {
  const room = await openRoomWithGullGrey();
  await room.say(0, read(1.44));
  const first = await room.say(2 * days, read(1.4));
  const second = await room.say(2 * days + 3, read(1.4));
  return { room, first, second };
};

describe('a reading that the logbook does not expect', () => {
  it('asks for a second before the water is changed', async () => {
    const { first } = await watered();
    expect(verdictOf(first)).toMatchObject({ step: 'measure', gravity: { value: 1.4, believed: false } });
    expect(first.title).toMatch(
      /^Gull Grey: Weigh a second cup first: this one does not fit what was logged\./,
    );
    expect(text(first)).toMatch(/expected 1\.440/);
    expect(first.dont.join()).toMatch(/change the water/);
    expect(first.actions[0]?.line).toBe('/reading bucket:1');
    expect(unlogged(first)).toBeUndefined();
  });

  it('asks for a second before a dose as well, which nothing takes out again', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, read(1.435));
    const thin = await room.say(60, '/reading bucket:gg gravity:1.455 within:0.005 seconds:10 stirred:yes');
    expect(verdictOf(thin)).toMatchObject({ step: 'measure', asks: ['weight', 'seconds'] });
    expect(thin.title).toMatch(/second cup first/);
    expect(thin.actions[0]?.line).toBe('/reading bucket:1');
  });

  it('does not trust how it flowed before', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, '/reading bucket:gg gravity:1.38 within:0.005 seconds:10 stirred:yes');
    const first = await room.say(60, '/reading bucket:gg gravity:1.44 within:0.005 stirred:yes');
    expect(verdictOf(first)).toMatchObject({ step: 'measure', flow: null });
    const second = await room.say(63, '/reading bucket:gg gravity:1.44 within:0.005 stirred:yes');
    expect(unlogged(second)).toMatchObject({ what: 'water-out' });
    expect(verdictOf(second)).toMatchObject({ step: 'measure', flow: null });
    const timed = await room.say(65, '/reading bucket:gg seconds:14 stirred:yes');
    expect(verdictOf(timed)).toMatchObject({ step: 'use', flow: 'in' });
  });

  it('keeps how it flowed when the reading was a slip', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, read(1.44));
    await room.say(60, '/reading bucket:gg gravity:1.40 within:0.005 stirred:yes');
    const second = await room.say(63, '/reading bucket:gg gravity:1.44 within:0.005 stirred:yes');
    expect(verdictOf(second)).toMatchObject({ step: 'use', flow: 'in' });
  });

  it('leaves the bucket to be used when it is inside its window, and asks all the same', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, read(1.455));
    const answer = await room.say(60, read(1.425));
    expect(verdictOf(answer).step).toBe('use');
    expect(text(answer)).toMatch(/second reading/);
    expect(answer.actions[0]?.line).toBe('/reading bucket:1');
  });

  it('was a slip when the second agrees with the logbook: nothing is reported, and the slip moves nothing', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, read(1.44));
    await room.say(60, read(1.4));
    const second = await room.say(63, read(1.44));
    expect(verdictOf(second).step).toBe('use');
    expect(unlogged(second)).toBeUndefined();
    expect(verdictOf(second).predicted?.value).toBeCloseTo(1.44, 4);
    expect((await stateOf(room)).unexpected).toBeUndefined();
  });

  it('stays in question when the second agrees with nothing', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, read(1.44));
    await room.say(60, read(1.4));
    const second = await room.say(63, read(1.48));
    expect(verdictOf(second).step).toBe('measure');
    expect(second.title).toMatch(/second cup/);
    expect(second.actions.map(({ line }) => line.split(' ')[0])).toEqual(['/reading']);
    const third = await room.say(66, read(1.48));
    // The change happened between the last expected reading and the first of those that agree.
    expect(unlogged(third)).toMatchObject({ what: 'water-out', between: ['1-2', '1-4'] });
  });

  it('raises no question when an unknown amount went in before', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, read(1.44));
    await room.say(10, '/added bucket:1 what:water');
    const first = await room.say(60, read(1.4));
    expect(text(first)).not.toMatch(/did not expect/);
    expect(verdictOf(first).predicted?.value).toBeCloseTo(1.4, 4);
    expect(unlogged(await room.say(63, read(1.4)))).toBeUndefined();
  });
});

describe('a change that nobody logged', () => {
  it('is reported with the second reading: how much, and between which entries', async () => {
    const { second } = await watered();
    const found = unlogged(second);
    expect(found).toMatchObject({
      what: 'water-in',
      direction: 'in',
      between: ['1-2', '1-3'],
      from: '2026-03-01T12:00:00.000Z',
      to: '2026-03-03T12:00:00.000Z',
    });
    // By hand: ΔV = V(γ0 − γ1)/(γ1 − 1) = 15 · 0.04/0.40 = 1.5 l. Of its uncertainty:
    // γ0 ± 0.005: u = 0.00255, times V/(γ1 − 1) = 37.5 l: 0.096 l;
    // evaporation in two days, 0.002·√2 = 0.00283 of gravity, times V/(γ0 − 1) = 34.1 l: 0.096 l;
    // γ1, two of ± 0.005: u = 0.00255/√2 = 0.00180, times V(γ0 − 1)/(γ1 − 1)² = 41.25 l: 0.074 l;
    // V, stated to 5 %, and two days of 3 %: u = √(0.05² + 2 · 0.03²) = 6.6 %, of 1.5 l: 0.098 l.
    // √(0.096² + 0.096² + 0.074² + 0.098²) = 0.184 l; times 1.96: 0.36 l.
    expect(found?.litres?.value).toBeCloseTo(1.5, 2);
    expect(found?.litres?.u95).toBeCloseTo(0.36, 2);
    expect(text(second)).toMatch(
      /Not logged: About 1\.5 ± 0\.4 l of water went in between Sun 1 Mar 12:00 and Tue 3 Mar 12:00, and nobody wrote it down\./,
    );
    expect(verdictOf(second).step).toBe('ask-keeper');
  });

  it('names what one gravity cannot tell apart, and nobody', async () => {
    const { second } = await watered();
    expect(unlogged(second)?.orElse).toEqual(['cake', 'air']);
    expect(text(second)).toMatch(/cake left at the bottom or air beaten in would give the same readings/i);
    const dried = await openRoomWithGullGrey();
    await dried.say(0, read(1.44), 'Wren');
    await dried.say(days, read(1.48), 'Ines');
    const up = await dried.say(days + 3, read(1.48), 'Ines');
    expect(unlogged(up)).toMatchObject({ what: 'water-out', direction: 'out' });
    expect(unlogged(up)?.orElse).toEqual(['evaporation', 'dry-in', 'cake-before']);
    expect(text(up)).not.toMatch(/Wren|somebody/);
  });

  it('stands on the card, in the list, and in the log before the reading that did not fit', async () => {
    const { room } = await watered();
    const said = /1\.5 ± 0\.4 l of water went in/;
    expect(text(await room.say(2 * days + 4, '/bucket show bucket:1'))).toMatch(said);
    expect(text(await room.say(2 * days + 4, '/bucket list'))).toMatch(/not all of it logged/);
    const log = (await room.say(2 * days + 4, '/bucket log bucket:1')).reasons;
    expect(log.map((line) => line.slice(0, 3))).toEqual(['1-4', '1-3', 'not', '1-2', '1-1']);
    expect(log[2]).toMatch(said);
    // A month later the log still has it, but the card no longer mentions it.
    expect(text(await room.say(40 * days, '/bucket show bucket:1'))).not.toMatch(said);
    expect(text(await room.say(40 * days, '/bucket log bucket:1'))).toMatch(said);
  });

  it('is gone when it is logged after all, by the line that is offered; undone, it is back', async () => {
    const { room, second } = await watered();
    const before = await stateOf(room);
    const offered = second.actions[0];
    expect(offered).toMatchObject({
      label: 'Log it: 1.5 l of water in',
      line: '/added bucket:1 what:water amount:1500ml when:"2026-03-02 12:00"',
    });
    const logged = await room.say(2 * days + 5, offered?.line ?? '');
    expect(text(logged)).toMatch(/explains the difference/);
    const shown = await room.say(2 * days + 6, '/bucket show bucket:1');
    expect(shown.data['unlogged']).toBeUndefined();
    // 15 l, plus the 1.5 l of water.
    expect((shown.data['bucket'] as { volumeL: number }).volumeL).toBeCloseTo(16.5, 1);
    const undone = await room.say(2 * days + 7, `/undo entry:${String(logged.data['entry'])}`);
    expect(unlogged(undone)).toMatchObject({ what: 'water-in', between: ['1-2', '1-3'] });
    expect(await stateOf(room)).toEqual(before);
  });

  it('was an entry too many: what was logged and never poured shows as water out until it is taken back', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, read(1.44));
    const slip = await room.say(10, '/added bucket:1 what:water amount:1.5l');
    await room.say(60, read(1.44));
    const found = unlogged(await room.say(63, read(1.44)));
    expect(found).toMatchObject({ what: 'water-out', between: ['1-2', '1-4'] });
    // (15 · 1.44 + 1.5)/16.5 = 1.40 expected, 1.44 read: 16.5 · 0.04/0.44 = 1.5 l.
    expect(found?.litres?.value).toBeCloseTo(1.5, 1);
    const undone = await room.keeper(70, `/undo entry:${String(slip.data['entry'])}`);
    expect(text(undone)).toMatch(/explains the difference/);
    expect((await stateOf(room)).unlogged).toBeUndefined();
  });

  it('is told for each litre when nobody has said how full the pail is', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/bucket add name:Heron gravity:1.42-1.46');
    await room.say(0, read(1.44));
    await room.say(60, read(1.4));
    const second = await room.say(63, read(1.4));
    // 1000 ml · 0.04/0.40
    expect(unlogged(second)?.litresPerLitre?.value).toBeCloseTo(0.1, 3);
    expect(text(second)).toMatch(/100 ± \d+ ml of water to each litre went in/);
    expect(second.actions[0]?.line).not.toMatch(/amount/);
  });

  it('speaks gallons and quarts where the studio does', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/studio set units:us');
    await room.say(0, read(1.44));
    await room.say(60, read(1.4));
    // 1.5 l are 1.585 US quarts of 946.35 ml (NIST Handbook 44, appendix C).
    expect(text(await room.say(63, read(1.4)))).toMatch(/1\.6 ± 0\.3 qt of water went in/);
  });
});

describe('with the gap from rim to glaze as well', () => {
  // Straight sides: 30 cm across, 40 cm high. 15 l stand 212.2 mm high: the gap is 187.8 mm.
  const area = Math.PI * 15 ** 2;
  const gap = (litres: number) => `gap:${(40 - (1000 * litres) / area).toFixed(2)}cm`;
  const straight = async () => {
    const room = await openGlazeRoom();
    await room.keeper(
      0,
      '/bucket add name:Heron gravity:1.42-1.46 pail:28l rim:30cm bottom:30cm height:40cm solids:2.6',
    );
    await room.say(0, read(1.44, gap(15)));
    return room;
  };
  const after = async (gravity: number, litres: number) => {
    const room = await straight();
    await room.say(60, read(gravity, gap(litres)));
    return unlogged(await room.say(63, read(gravity, gap(litres))));
  };

  it('water is told from cake and air: the pail is fuller', async () => {
    // (15 · 1.44 + 3)/18 = 1.3667
    const found = await after(1.3667, 18);
    expect(found).toMatchObject({ what: 'water-in', orElse: [] });
    expect(found?.litres?.value).toBeCloseTo(3, 1);
  });

  it('cake is told from water: the pail is as full as it was', async () => {
    const found = await after(1.3667, 15);
    expect(found?.what).toBe('cake');
    expect(found?.orElse).not.toContain('water-in');
    expect(found?.litres).toBeUndefined();
  });

  it('water that went out is told from powder that went in', async () => {
    // 2 l off: (15 · 1.44 − 2)/13 = 1.5077. As much gravity by powder: (21600 + m)/(15000 + m/2.6) = 1.5077, m = 2.418 kg.
    expect(await after(1.5077, 13)).toMatchObject({ what: 'water-out', orElse: ['evaporation'] });
    const dry = await after(1.5077, 15 + 2.418 / 2.6);
    expect(dry?.what).toBe('dry-in');
    expect(dry?.powderGrams?.value).toBeCloseTo(2418, -2);
  });

  it('what is neither is told as water and powder', async () => {
    // 5 l of a thicker glaze, 1.6, poured in: (15 · 1.44 + 5 · 1.6)/20 = 1.48. In it φ = 0.375: 3.125 l of water, 4.875 kg of powder.
    const found = await after(1.48, 20);
    expect(found?.what).toBe('unknown');
    expect(found?.litres?.value).toBeCloseTo(3.125, 1);
    expect(found?.powderGrams?.value).toBeCloseTo(4875, -2);
  });
});

describe('a slow drift upward', () => {
  /** 100 ml a day out of 15 l at 1.43: water 10.969 kg, powder 10.481 kg. */
  const driedFor = (day: number) => {
    const [water, powder] = [10_968.75 - 100 * day, 10_481.25];
    return (water + powder) / (water + powder / 2.6);
  };

  it('is evaporation when several readings carry it, at a rate, and not an act', async () => {
    const room = await openRoomWithGullGrey();
    const answers: Answer[] = [];
    for (const day of [0, 5, 10, 15, 20, 25]) {
      const line = read(Number(driedFor(day).toFixed(4)));
      const first = await room.say(day * days, line);
      answers.push(first);
      if (/second reading/.test(text(first))) answers.push(await room.say(day * days + 3, line));
    }
    const found = answers.findLast((answer) => unlogged(answer));
    if (!found) throw new Error('nothing was reported');
    expect(unlogged(found)).toMatchObject({ what: 'evaporation', orElse: [] });
    const rate = unlogged(found)?.mlPerDay;
    expect(Math.abs((rate?.value ?? 0) - 100)).toBeLessThan(15);
    expect(rate?.u95).toBeLessThan(60);
    expect(text(found)).toMatch(/ml of water a day/);
    expect(text(found)).not.toMatch(/nobody wrote it down/);
    const card = await room.say(25 * days + 4, '/bucket show bucket:1');
    expect(text(card)).toMatch(/Dries out: about \d+ ± \d+ ml of water a day/);
    expect(card.data['evaporation']).toMatchObject({ mlPerDay: { value: rate?.value } });
  });

  it('is not read into a bucket that stays as it is', async () => {
    const room = await openRoomWithGullGrey();
    const readings = [1.44, 1.441, 1.438, 1.441, 1.439, 1.44];
    for (const [i, value] of readings.entries()) await room.say(i * 2 * days, read(value));
    expect((await room.say(20 * days, '/bucket show bucket:1')).data['evaporation']).toBeUndefined();
  });
});
