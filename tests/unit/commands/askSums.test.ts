import { describe, expect, it } from 'vitest';
import { openGlazeRoom, openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const ask = (room: GlazeRoom, question: string, minutes = 30) =>
  room.request(minutes, { path: ['ask'], typed: { question } });

describe('water from one gravity to another', () => {
  // By hand, mass balance: 10 l × (1.50 − 1.45) ÷ (1.45 − 1) = 1111 ml.
  it.each([
    'how much water to take 10 l from 1.50 to 1.45',
    'how much watter for 10 litres from 1.5 to 1.45',
    '10 liters at 1.50 how much water to get to 1.45',
    'water to bring 10L down to 1.45 from 1.50',
    'how much water to get to 1.45, its 10 l and reads 1.50',
    'how much water from 150 to 145 for 10 l',
    '10 l of glaze 1.50 -> 1.45 how much water',
  ])('is worked out: %s', async (question) => {
    const { data, title } = await ask(await openGlazeRoom(), question);
    expect(data['sum']).toBe('water');
    expect(data['waterMl']).toBeCloseTo(1111.1, 0);
    expect(title).toBe('Water to add: 1.11 l.');
  });

  // By hand: 5 US gal = 18.927 l, × 0.05 ÷ 0.45 = 2.103 l.
  it('takes gallons, and the bucket of a pail of that size', async () => {
    const { data } = await ask(
      await openGlazeRoom(),
      'how much water to take a 5 gallon bucket from 1.50 to 1.45',
    );
    expect(data['waterMl']).toBeCloseTo(2103, 0);
  });

  it('is told for every litre when nobody says how much glaze it is', async () => {
    const { data, title } = await ask(
      await openGlazeRoom(),
      'how much water to take a bucket from 1.50 to 1.45',
    );
    // By hand: 1000 × 0.05 ÷ 0.45 = 111 ml.
    expect(title).toBe('Water to add: 111 ml for every litre.');
    expect(data).toMatchObject({ sum: 'water', waterMl: null });
    expect(data['mlPerLitre']).toBeCloseTo(111.1, 1);
  });

  it('is worked out for a named bucket by what is in it, and says how it stands', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.50 within:0.01 seconds:25 stirred:yes');
    const answer = await ask(room, 'how much water to get gull grey from 1.50 to 1.45', 2);
    // By hand: 15 l × 0.05 ÷ 0.45 = 1.667 l; a few ml went in unlogged use since.
    expect(answer.data['waterMl']).toBeCloseTo(1667, -2);
    expect(answer.facts[1]?.label).toBe('Gull Grey');
    const wanted = await ask(room, 'how much water to get gg to 1.45', 2);
    expect(wanted.data).toMatchObject({ sum: 'water', from: 1.5, to: 1.45 });
  });

  it('goes the other way by drawing off, which is a keeper’s work', async () => {
    const { data, title } = await ask(await openGlazeRoom(), 'how do i bring 12 l from 1.36 to 1.46');
    // By hand: 12 l × 0.10 ÷ 0.46 = 2.609 l.
    expect(data['drawOffMl']).toBeCloseTo(2608.7, 0);
    expect(title).toMatch(/keeper/);
  });

  it('does not go past a hold', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, '/bucket hold bucket:gg why:"a brush fell in"');
    const answer = await ask(room, 'how much water to get gg from 1.50 to 1.45');
    expect(answer.data['verdict']).toMatchObject({ step: 'on-hold' });
  });
});

describe('grams of Epsom salt', () => {
  // By hand: 5 US gal = 18.927 l at 1.45; dry 2.6 × 0.45 ÷ 1.6 = 731.25 g/l, so 13.840 kg; 0.2 % of it 27.7 g.
  it.each([
    'how many grams of epsom salt for 5 gallons at 0.2%',
    'grams of epson salts for 5 gal glaze at .2 percent',
    'epsom salt 0.2 % 5 gallons how many g',
  ])('for so much glaze at a share of its dry powder: %s', async (question) => {
    const { data } = await ask(await openGlazeRoom(), question);
    expect(data['sum']).toBe('salt');
    expect(data['heptahydrateGrams']).toBeCloseTo(27.68, 1);
  });

  it('by the litre, as typed', async () => {
    const { data } = await ask(await openGlazeRoom(), 'how much epsom for 10 litres at 1.5 g per litre');
    expect(data['heptahydrateGrams']).toBeCloseTo(15, 6);
  });

  it('in a solution by weight: 20 in 100 is 25 g to 100 of water', async () => {
    const { data } = await ask(
      await openGlazeRoom(),
      'how much epsom salt for a 20% solution in 1 litre of water',
    );
    expect(data['heptahydrateGrams']).toBeCloseTo(250, 6);
  });

  it('that saturates so much water', async () => {
    const { data } = await ask(await openGlazeRoom(), 'how much epsom to saturate 5 gallons of water');
    // At 20 °C 33.83 g MgSO4 to 100 g water: by hand 33.83 ÷ (48.84 − 33.83 × 0.5116) × 100 = 107.3 g of crystals; 18.927 kg take 20.3 kg.
    expect(Number(data['heptahydrateGrams']) / 1000).toBeCloseTo(20.3, 1);
  });

  it('says that it is too much, and never to put it in at once', async () => {
    const { cautions, reasons } = await ask(await openGlazeRoom(), 'epsom salt for 5 gallons at 1%');
    expect(cautions.join(' ')).toMatch(/ask a keeper/);
    expect(reasons.join(' ')).toMatch(/Don’t add it all at once/);
  });
});

describe('a hydrometer’s degrees', () => {
  // Baumé for liquids heavier than water, modulus 145 (NBS Circular 59, from memory; GNU units 2.22): 145 ÷ (145 − 45) = 1.45.
  it.each([
    '45 baume as gravity',
    'what is 45 Baumé in sg',
    '45 degrees beaume to specific gravity',
    'whats 45°Bé',
    'baume 45 in gravity',
  ])('are a gravity: %s', async (question) => {
    const { data, title } = await ask(await openGlazeRoom(), question);
    expect(data['gravity']).toBeCloseTo(1.45, 9);
    expect(title).toBe('45 °Bé is a gravity of 1.450.');
  });

  it('come back from a gravity', async () => {
    const { data } = await ask(await openGlazeRoom(), 'what is 1.45 in baume');
    expect(data['degrees']).toBeCloseTo(45, 9);
    // Twaddell by definition: 200 × (1.45 − 1) = 90.
    expect((await ask(await openGlazeRoom(), '1.45 in twaddel')).data['degrees']).toBeCloseTo(90, 9);
    expect((await ask(await openGlazeRoom(), '90 twaddell in gravity')).data['gravity']).toBeCloseTo(1.45, 9);
  });

  it('off the scale are told so', async () => {
    const { title, data } = await ask(await openGlazeRoom(), '150 baume as gravity');
    expect(title).toMatch(/off the Baumé scale/);
    expect(data['gravity']).toBeNull();
  });
});

const openTwo = async () => {
  const room = await openRoomWithGullGrey();
  await room.keeper(
    1,
    '/bucket add name:"Fog Bell" pail:19l volume:10l gravity:1.42-1.46 recipe:"bone ash 10, feldspar 60, silica 30, + cobalt carbonate 1"',
  );
  await room.say(2, '/reading bucket:gg gravity:1.44 within:0.01 seconds:14 stirred:yes');
  return room;
};

describe('a look at all buckets', () => {
  it.each([
    'which buckets are ready',
    'whats ready',
    'anything ready?',
    'wich bukets are redy',
    'any buckets good to go?',
    'what can i use tonight',
    'which one is ready to use',
  ])('tells which are ready: %s', async (question) => {
    const { title, data } = await ask(await openTwo(), question, 5);
    expect(data['sum']).toBe('ready');
    expect(title).toBe('1 of 2 ready to use: Gull Grey.');
  });

  it.each([
    'which bucket needs a stir most',
    'what needs stiring',
    'which one has gone longest without a stir',
    'wich bucket needs stirring the most',
    'which bucket should i stir first',
  ])('tells which needs a stir most: %s', async (question) => {
    const { title, data } = await ask(await openTwo(), question, 5);
    expect(data).toMatchObject({ sum: 'stir', bucket: 2 });
    expect(title).toBe('Fog Bell needs a stir most: no stir is logged.');
  });

  it('counts the time past each bucket’s own rest', async () => {
    const room = await openTwo();
    await room.say(3, '/stirred bucket:2');
    // Gull Grey may rest 4 h and was stirred at 2 min, Fog Bell 1 h and at 3 min: at 300 min Fog Bell is 237 min past, Gull Grey 58.
    expect((await ask(room, 'which needs a stir most', 300)).data['bucket']).toBe(2);
    expect((await ask(room, 'which needs a stir most', 30)).title).toMatch(
      /^Every bucket in use was stirred in time/,
    );
  });

  it.each([
    'bucket 1 or 2',
    'bucket 1 or 2?',
    'bucket 1 vs bucket 2',
    '1 or 2?',
    'should i use gull grey or fog bell',
    'gg or fog bell, which is better',
    'buckets 1 and 2 compare',
    'bukcet 1 or 2',
  ])('shows two side by side: %s', async (question) => {
    const { title, facts, data } = await ask(await openTwo(), question, 5);
    expect(data['sum']).toBe('side-by-side');
    expect(title).toBe('Gull Grey: ready. Fog Bell: not yet.');
    expect(facts.map(({ label }) => label)).toEqual(['1 · Gull Grey', '2 · Fog Bell']);
  });
});

describe('a question of what is in a bucket', () => {
  it.each([
    ['is bone ash in fog bell', true],
    ['is bone ash in fog bell?', true],
    ['does fog bell have cobalt in it', true],
    ['any cobalt in fog bell', true],
    ['is there any whiting in fog bell', false],
    ['does fog bell contain feldspar', true],
    ['is bone ash in gull grey', null],
  ])('is answered from the recipe: %s', async (question, holds) => {
    const { data } = await ask(await openTwo(), question);
    expect(data).toMatchObject({ sum: 'recipe', holds });
  });

  it('lists the buckets with a material or a recipe', async () => {
    const room = await openTwo();
    expect((await ask(room, 'which buckets have bone ash')).data).toMatchObject({
      buckets: [2],
      unwritten: [1],
    });
    expect((await ask(room, 'which glazes contain cobalt')).data).toMatchObject({ buckets: [2] });
    await room.keeper(4, '/batch recipe name:"Shore White" recipe:"feldspar 44, silica 31, whiting 25"');
    await room.keeper(5, '/bucket change bucket:1 recipe:"Shore White"');
    expect((await ask(room, 'which buckets have the recipe shore white')).title).toBe(
      'The recipe Shore White is in Gull Grey.',
    );
    expect((await ask(room, 'which buckets have gull grey')).data).toMatchObject({ buckets: [1] });
    expect((await ask(room, 'whats in gull grey')).title).toBe(
      'Gull Grey: feldspar 44, silica 31, whiting 25.',
    );
  });

  it('never calls a bucket free of what it is marked with', async () => {
    const room = await openTwo();
    await room.keeper(3, '/bucket change bucket:2 cautions:barium,cobalt');
    const { title, data, cautions } = await ask(room, 'is barium in fog bell');
    expect(title).toBe('Yes: Fog Bell is marked with barium.');
    expect(data['holds']).toBe(true);
    expect(cautions.join(' ')).toMatch(/Holds barium/);
  });
});

it.each([
  'can i add water to gg',
  'how much water does gg need',
  'how much epsom for gg',
  'which mesh do i need',
  'what can i use instead of epsom salt',
  'which glaze can i use on mugs',
  'what do i stir with',
  'how do i know when its ready',
  'is my mug ready',
  'are there crystals in gull grey',
  'lumps in gull grey',
  'iron spots in gull grey',
  'what should the gravity be',
  'when is the kiln ready',
  'can i pour gull grey and fog bell together',
  'gull grey over fog bell or under',
])('other questions are no sums: %s', async (question) => {
  const { data } = await ask(await openTwo(), question);
  expect(data['sum']).toBeUndefined();
});
