import { describe, expect, it } from 'vitest';
import { openGlazeRoom } from '../../helpers/room/glazeRoom.ts';

const recipe = 'feldspar 37, silica 26, whiting 21, kaolin 16, + red iron oxide 3';
const grams = (answer: { data: Record<string, unknown> }) =>
  (answer.data['materials'] as { grams: number }[]).map((one) => one.grams);
const said = ({ reasons }: { reasons: string[] }) => reasons.join('\n');

const plan = async (line: string) => {
  const room = await openGlazeRoom();
  return { room, answer: await room.say(1, `/batch plan ${line}`) };
};

describe('a weight of powder', () => {
  it('is of all of it, or of the base with the additions on top', async () => {
    // 10 kg of base at 100 parts: 100 g a part, and 3 parts of oxide on top
    const base = await plan(`recipe:"${recipe}" powder:10kg of:base gravity:1.45`);
    expect(grams(base.answer)).toEqual([3700, 2600, 2100, 1600, 300]);
    expect(base.answer.data['powderGrams']).toBe(10_300);
    // water = V·γ − m, V = m(s − 1)/(s(γ − 1)), s = 2.679572 (see “is planned to the gram”)
    const volume = (10_300 * 1.679572) / (2.679572 * 0.45);
    expect(Number(base.answer.data['waterMl'])).toBeCloseTo(volume * 1.45 - 10_300, 0);
    // 10 kg of all at 103 parts: 97.087 g a part; floors sum to 9998, whiting and kaolin have the largest remainders
    const all = await plan(`recipe:"${recipe}" powder:10kg gravity:1.45`);
    expect(grams(all.answer)).toEqual([3592, 2524, 2039, 1554, 291]);
    expect((await plan(`recipe:"${recipe}" powder:10kg of:all gravity:1.45`)).answer.data).toEqual(
      all.answer.data,
    );
  });

  it('of the base wants a weight', async () => {
    const { answer } = await plan(`recipe:"${recipe}" volume:15l of:base gravity:1.45`);
    expect(answer.title).toMatch(/of: goes with a weight of powder/);
  });

  it('is met by other batches that come out round, or use up a bag', async () => {
    const { room, answer } = await plan(`recipe:"${recipe}" powder:19kg gravity:1.45`);
    expect(answer.actions.map(({ label }) => label)).toEqual([
      'Plan 20kg of powder',
      'Use up a 25 kg bag of feldspar',
    ]);
    expect((await room.say(2, answer.actions[0]?.line ?? '')).data['powderGrams']).toBe(20_000);
    // 25 kg of feldspar is 37 parts of 103: 25 000 × 103/37 = 69 594.6 g in all
    const bag = await room.say(2, answer.actions[1]?.line ?? '');
    expect(grams(bag)[0]).toBe(25_000);
    expect(bag.data['powderGrams']).toBe(69_595);
    // Of the base: 25 000 × 100/37 = 67 567.6 g
    const ofBase = await room.say(3, `/batch plan recipe:"${recipe}" powder:20kg of:base gravity:1.45`);
    expect(ofBase.actions.map(({ label }) => label)).toEqual(['Use up a 25 kg bag of feldspar']);
    const bagOfBase = await room.say(4, ofBase.actions[0]?.line ?? '');
    expect(grams(bagOfBase)[0]).toBe(25_000);
    expect(grams(bagOfBase).at(-1)).toBe(2027); // 3/37 of 25 000
  });

  it('that is a bowlful is offered no bag', async () => {
    const { answer } = await plan(`recipe:"${recipe}" powder:450g gravity:1.45`);
    expect(answer.actions).toEqual([]);
  });

  it('is in pounds where the studio weighs in pounds', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/studio set units:us');
    const answer = await room.say(1, `/batch plan recipe:"${recipe}" powder:"46 lb" gravity:1.45`);
    expect(answer.actions.map(({ label }) => label)).toEqual([
      'Plan 50lb of powder',
      'Use up a 50 lb bag of feldspar',
    ]);
  });
});

describe('a recipe that does not add up', () => {
  it.each(['feldspar 40, silica 30, whiting 25', 'feldspar 60, silica 30, whiting 20'])(
    'is remarked on, and planned in parts all the same: %s',
    async (typed) => {
      const { room, answer } = await plan(`recipe:"${typed}" powder:950g gravity:1.45`);
      const sum = typed.startsWith('feldspar 40') ? 95 : 110;
      expect(said(answer)).toMatch(`The base adds up to ${sum}, not to 100`);
      expect(answer.data['powderGrams']).toBe(950);
      const kept = await room.keeper(2, `/batch recipe name:Sand recipe:"${typed}"`);
      expect(said(kept)).toMatch(`The base adds up to ${sum}, not to 100`);
    },
  );

  it.each([
    recipe,
    'feldspar 40, silica 30, whiting 25, + rutile 5',
    'feldspar 3, silica 2, whiting 1',
    'feldspar 33.3, silica 33.3, whiting 33.3',
    'feldspar 1480, silica 1040, whiting 840',
  ])('is not one that adds up, with its additions or in parts: %s', async (typed) => {
    expect(said((await plan(`recipe:"${typed}" powder:1kg gravity:1.45`)).answer)).not.toMatch(/adds up to/);
  });
});

describe('the steps of a batch', () => {
  it.each([
    // feldspar, grains 2.62: V = 100 × 1.62/(2.62 × 0.45) = 137.40 ml; water = 137.40 × 1.45 − 100 = 99.24 g
    ['powder:100g step:0.1g', '99.2 g', 'Put 89.3 g of the water in the pail; keep 9.9 g back'],
    ['powder:100g', '99 g', 'Put 89 g of the water in the pail; keep 10 g back'],
    ['powder:10kg step:10g', '9920 g', 'Put 8930 g of the water in the pail; keep 990 g back'],
  ])('weigh water to the digit of the scale: %s', async (typed, water, step) => {
    const { answer } = await plan(`recipe:"feldspar 100" ${typed} gravity:1.45`);
    expect(answer.facts.find(({ label }) => label === 'Water')?.text).toContain(`(${water})`);
    expect(said(answer)).toContain(step);
  });

  it('say what dissolves, swells or slakes first, what is weighed in which order, and what last', async () => {
    const { answer } = await plan(
      'recipe:"bentonite 2, silica 20, feldspar 40, soda ash 8, slip clay 30, + copper carbonate 3, + rutile 2" powder:5kg gravity:1.45',
    );
    const steps = answer.reasons.map((one) => one.replace(/^\d+\. /, ''));
    expect(steps[1]).toMatch(/^Does slip clay come in lumps\? .*slake/);
    expect(steps[2]).toMatch(/^Dissolve soda ash in a little of that water, warm/);
    expect(steps[3]).toMatch(/^Mix bentonite dry into another powder/);
    expect(steps[4]).toMatch(
      /largest first, and tick each off: feldspar, silica, rutile\. .*never pour water onto powder/,
    );
    expect(steps[5]).toMatch(/^Weigh copper carbonate last, with gloves and mask/);
  });
});
