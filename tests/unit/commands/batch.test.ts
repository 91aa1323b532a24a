import { describe, expect, it } from 'vitest';
import { openGlazeRoom, openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

const recipe = 'feldspar 37, silica 26, whiting 21, kaolin 16, + red iron oxide 3';

const written = 'feldspar 37, silica 26, whiting 21, kaolin 16; over it red iron oxide 3';

const number = (value: unknown): number => {
  expect(value).toEqual(expect.any(Number));
  return Number(value);
};
const verdict = (answer: { data: Record<string, unknown> }) =>
  answer.data['verdict'] as Record<string, unknown>;
const entriesOf = async (room: Awaited<ReturnType<typeof openGlazeRoom>>) =>
  (await room.say(600, '/bucket log bucket:gg')).data['entries'];

describe('a correction', () => {
  it('pours the water that the verdict names, and says what to expect', async () => {
    const room = await openRoomWithGullGrey();
    const told = await room.say(1, '/reading bucket:gg gravity:1.50 within:0.001 seconds:14 stirred:yes');
    const answer = await room.say(1, '/batch correct bucket:gg by:water');
    // ΔV = V(γ1 − γ2)/(γ2 − 1) = 15 000 × (1.50 − 1.44)/0.44 = 2045.45 ml; the volume is ±5 %, and the far edge, 1.42, is
    // at 15 000 × 0.08/0.42 = 2857 ml: 8 standard deviations away, so nothing is held back.
    expect(number(answer.data['waterMl'])).toBeCloseTo(2045.45, 1);
    expect(answer.data['waterMl']).toBe(verdict(told)['waterMl']);
    // 15 l × 1.50 + 2.04545 l × 1 over 17.04545 l = 1.44
    expect(number(answer.data['gravity'])).toBeCloseTo(1.44, 6);
    expect(number(answer.data['volumeL'])).toBeCloseTo(17.045, 3);
    const { low, high } = answer.data['interval'] as { low: number; high: number };
    expect(low).toBeLessThan(1.44);
    expect(high).toBeGreaterThan(1.44);
    expect(answer.actions.map(({ line }) => line)).toContain(
      '/added bucket:1 what:water amount:2000ml after:2',
    );
  });

  it('draws off, or stirs dry batch in, by the same numbers as the verdict, with the recipe in grams', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, `/batch recipe name:"Gull Grey" recipe:"${recipe}"`);
    const told = await room.keeper(1, '/reading bucket:gg gravity:1.38 within:0.001 seconds:14 stirred:yes');
    const off = await room.keeper(1, '/batch correct bucket:gg by:draw-off');
    // 15 000 × (1.44 − 1.38)/0.44 = 2045.45 ml off
    expect(number(off.data['drawOffMl'])).toBeCloseTo(2045.45, 1);
    expect(off.data['drawOffMl']).toBe(verdict(told)['drawOffMl']);
    expect(off.cautions.join(' ')).toMatch(/don’t pour it down the sink/i);
    const dry = await room.keeper(1, '/batch correct bucket:gg by:dry');
    // Δm = V·s(γ2 − γ1)/(s − γ2) = 15 000 × 2.6 × 0.06/1.16 = 2017.24 g
    expect(number(dry.data['powderGrams'])).toBeCloseTo(2017.24, 1);
    expect(dry.data['powderGrams']).toBe(verdict(told)['dryGrams']);
    // As a hand weighs it, to ten grams, 2010 g over 103 parts: 37 → 722.04, 26 → 507.38, 21 → 409.81, 16 → 312.23,
    // 3 → 58.54; floors sum to 2008, and the two largest remainders, .81 and .54, get a gram each
    expect(dry.data['materials']).toMatchObject([
      { material: 'feldspar', grams: 722 },
      { material: 'silica', grams: 507 },
      { material: 'whiting', grams: 410 },
      { material: 'kaolin', grams: 312 },
      { material: 'red iron oxide', grams: 59, addition: true },
    ]);
    expect(dry.facts).toContainEqual({
      label: 'Weigh out',
      text: 'feldspar 722 g, silica 507 g, whiting 410 g, kaolin 312 g; over it red iron oxide 59 g',
    });
    expect(dry.cautions.join(' ')).toMatch(/silica dust/);
  });

  it('pours half of the water into a bucket that is thick, as the verdict does', async () => {
    const room = await openRoomWithGullGrey();
    const told = await room.say(1, '/reading bucket:gg gravity:1.50 within:0.001 seconds:20 stirred:yes');
    const answer = await room.say(1, '/batch correct bucket:gg by:water');
    expect(number(answer.data['waterMl'])).toBeCloseTo(2045.45 / 2, 1);
    expect(answer.data['waterMl']).toBe(verdict(told)['waterMl']);
    expect(answer.title).toMatch(/half of what it needs/);
  });

  it('says what fits with room to stir', async () => {
    const room = await openRoomWithGullGrey(['pail', '16l']);
    const told = await room.say(1, '/reading bucket:gg gravity:1.50 within:0.001 seconds:14 stirred:yes');
    const answer = await room.say(1, '/batch correct bucket:gg by:water');
    // 2045.45 ml wanted; 0.95 × 16 l − 15 l = 0.2 l of room
    expect(number(answer.data['waterMl'])).toBeCloseTo(200, 6);
    expect(number(answer.data['waterMlLeft'])).toBeCloseTo(1845.45, 1);
    expect(answer.data['waterMl']).toBe(verdict(told)['waterMl']);
    expect(answer.title).toMatch(/200 ml of water, all that fits.*1\.8 l more/);
  });

  it('blends another bucket in', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(
      0,
      '/bucket add name:"Sea Fog" nick:sf pail:19l volume:6l gravity:1.42-1.46 solids:2.6',
    );
    await room.say(1, '/reading bucket:gg gravity:1.38 within:0.001 seconds:14 stirred:yes');
    await room.say(1, '/reading bucket:sf gravity:1.62 within:0.001 stirred:yes');
    const answer = await room.say(1, '/batch correct bucket:gg by:blend with:sf');
    // lever rule: 15 000 × (1.44 − 1.38)/(1.62 − 1.44) = 5000 ml, but 0.95 × 19 l − 15 l = 3050 ml of room to stir,
    // which is inside the window too: (15 × 1.38 + 3.05 × 1.62)/18.05 = 1.42055
    expect(number(answer.data['blendMl'])).toBeCloseTo(3050, 6);
    expect(number(answer.data['gravity'])).toBeCloseTo(1.42055, 4);
    expect(answer.actions.map(({ line }) => line)).toContain(
      '/added bucket:1 what:glaze amount:3050ml from:2 after:2',
    );
    const poured = await room.say(2, '/added bucket:1 what:glaze amount:3050ml from:2 after:2');
    expect(poured.ok).toBe(true);
  });

  it('ladles glaze out first when the other bucket leaves no room to stir', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(
      0,
      '/bucket add name:"Sea Fog" nick:sf pail:19l volume:12l gravity:1.42-1.46 solids:2.6',
    );
    await room.say(1, '/reading bucket:gg gravity:1.38 within:0.001 seconds:14 stirred:yes');
    await room.say(1, '/reading bucket:sf gravity:1.50 within:0.001 stirred:yes');
    const answer = await room.say(1, '/batch correct bucket:gg by:blend with:sf');
    // The lever rule needs equal volumes, 15 l of each, but the other has 12 l. So 18.05 − 12 = 6.05 l are kept, and
    // half of 18.05 l comes from each bucket, 9.025 l: 15 − 9.025 = 5.975 l out, 9.025 l in.
    expect(number(answer.data['ladleMl'])).toBeCloseTo(5975, 0);
    expect(number(answer.data['blendMl'])).toBeCloseTo(9025, 0);
    // Without drawing off, 3.05 l fit: (15 × 1.38 + 3.05 × 1.50)/18.05 = 1.40028, below the window.
    expect(number(answer.data['fitsMl'])).toBeCloseTo(3050, 0);
    expect(number(answer.data['gravity'])).toBeCloseTo(1.44, 4);
    expect(number(answer.data['volumeL'])).toBeCloseTo(18.05, 3);
    expect(answer.title).toBe(
      'Gull Grey: Ladle 5.95 l out first, then pour in 9 l of Sea Fog, stir and measure. Only 3.05 l fits now, too little to reach the window.',
    );
    expect(answer.actions[0]?.line).toBe('/added bucket:1 what:taken amount:5950ml after:2');
    expect(answer.facts.map(({ text }) => text).join(' ')).toMatch(/and 18 l in the pail/);
  });

  it('names the other bucket, and says when all of it is not enough', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(
      0,
      '/bucket add name:"Sea Fog" nick:sf pail:19l volume:1l gravity:1.42-1.46 solids:2.6',
    );
    await room.say(1, '/reading bucket:gg gravity:1.38 within:0.001 seconds:14 stirred:yes');
    await room.say(1, '/reading bucket:sf gravity:1.50 within:0.001 stirred:yes');
    const answer = await room.say(1, '/batch correct bucket:gg by:blend with:sf');
    // (15 × 1.38 + 1 × 1.50)/16 = 1.3875
    expect(number(answer.data['gravity'])).toBeCloseTo(1.3875, 4);
    expect(answer.title).toMatch(/^Gull Grey: Pour in 1 l of Sea Fog, .* all there is .* not enough/);
  });

  it('changes nothing in a bucket that is inside its window within the uncertainty', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.465 within:0.01 seconds:14 stirred:yes');
    const answer = await room.say(1, '/batch correct bucket:gg by:water');
    expect(answer).toMatchObject({ ok: true, data: { waterMl: 0, powderGrams: 0 } });
  });

  it.each([
    ['/batch correct bucket:gg by:dry', /above its window/],
    ['/batch correct bucket:gg by:draw-off', /above its window/],
    ['/batch correct bucket:gg by:blend', /Which bucket/],
    ['/batch correct bucket:gg by:blend with:gg', /itself/],
  ])('refuses what would take it further off: %s', async (line, why) => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.50 within:0.001 seconds:14 stirred:yes');
    const answer = await room.say(1, line);
    expect(answer).toMatchObject({ ok: false, kind: 'refusal' });
    expect(answer.title).toMatch(why);
  });

  it('wants a reading that holds before it names an amount', async () => {
    const room = await openRoomWithGullGrey();
    expect(await room.say(1, '/batch correct bucket:gg by:water')).toMatchObject({ kind: 'refusal' });
    await room.say(1, '/reading bucket:gg gravity:1.50 within:0.001 seconds:14 stirred:yes');
    await room.say(2, '/added bucket:gg what:water');
    expect(await room.say(3, '/batch correct bucket:gg by:water')).toMatchObject({ kind: 'refusal' });
  });

  it('answers in millilitres a litre when nobody has said how full the pail is', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/bucket add name:"Gull Grey" nick:gg gravity:1.42-1.46 solids:2.6');
    await room.say(1, '/reading bucket:gg gravity:1.50 within:0.001 look:right stirred:yes');
    const answer = await room.say(1, '/batch correct bucket:gg by:water');
    // 1000 × 0.06/0.44 = 136.36 ml
    expect(number(answer.data['waterMlPerLitre'])).toBeCloseTo(136.36, 1);
    expect(answer.data['volumeL']).toBeNull();
    expect(answer.data['waterMl']).toBeNull();
    expect(answer.title).toMatch(/Add 130 ml of water for each litre in the pail, stir/);
    await room.say(2, '/reading bucket:gg gravity:1.50 within:0.001 look:thick stirred:yes');
    // half of it, 68 ml
    expect((await room.say(2, '/batch correct bucket:gg by:water')).title).toMatch(
      /Add \d+ ml of water for each litre in the pail, half of what it needs/,
    );
    // One reading that contradicts the logbook does not change the water: a second one confirms it.
    await room.say(3, '/reading bucket:gg gravity:1.38 within:0.001 look:right stirred:yes');
    await room.say(3, '/reading bucket:gg gravity:1.38 within:0.001 look:right stirred:yes');
    const off = await room.keeper(3, '/batch correct bucket:gg by:draw-off');
    expect(off.data['waterMl']).toBeNull();
    expect(off.title).toMatch(/of clear water for each litre in the pail after a rest/);
    const dry = await room.keeper(3, '/batch correct bucket:gg by:dry');
    expect(dry.data['powderGrams']).toBeNull();
    expect(dry.title).toMatch(/g of dry batch for each litre in the pail/);
  });

  it('tells a member to ask a keeper for what is keepers’ hands, with the amounts ready', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.38 within:0.001 seconds:14 stirred:yes');
    const off = await room.say(1, '/batch correct bucket:gg by:draw-off');
    expect(off.title).toMatch(/^Gull Grey: Ask a keeper to draw off 2 l of clear water\.$/);
    expect(number(off.data['drawOffMl'])).toBeCloseTo(2045.45, 1);
    const dry = await room.say(1, '/batch correct bucket:gg by:dry');
    expect(dry.title).toMatch(/^Gull Grey: Ask a keeper to stir in .* of dry batch\.$/);
    expect(number(dry.data['powderGrams'])).toBeCloseTo(2017.24, 1);
    const rested = await room.say(600, '/batch correct bucket:gg by:dry');
    expect(rested.title).toMatch(/^Gull Grey: Stir it first\. Then: Ask a keeper to stir in .*\.$/);
    expect((await room.keeper(1, '/batch correct bucket:gg by:dry')).title).toMatch(
      /Stir in .* dry batch, then/,
    );
  });
});

describe('a new batch', () => {
  it('is planned to the gram', async () => {
    const room = await openGlazeRoom();
    const answer = await room.say(0, `/batch plan recipe:"${recipe}" volume:15l gravity:1.45 pail:19l`);
    // Grains: feldspar 2.62, quartz 2.648, calcite 2.71, kaolin 2.59, haematite 5.25 (CRC Handbook), so
    // s = 103/(37/2.62 + 26/2.648 + 21/2.71 + 16/2.59 + 3/5.25) = 103/38.43898 = 2.679572
    expect(number(answer.data['solidsGravity'])).toBeCloseTo(2.679572, 5);
    // Brongniart: 15 × 1000 × 2.679572 × 0.45/1.679572 = 10 768.9 g, in whole grams 10 769
    expect(answer.data['powderGrams']).toBe(10_769);
    const materials = answer.data['materials'] as { grams: number }[];
    expect(materials.reduce((sum, { grams }) => sum + grams, 0)).toBe(10_769);
    // 10 769/103 = 104.5534 a part: 3868.48, 2718.39, 2195.62, 1672.85, 313.66; floors sum to 10 766
    expect(materials.map(({ grams }) => grams)).toEqual([3868, 2718, 2196, 1673, 314]);
    // water = V·γ − m with V = 10 769 × 1.679572/(2.679572 × 0.45) = 15 000.2 ml: 21 750.2 − 10 769 = 10 981.2
    expect(number(answer.data['waterMl'])).toBeCloseTo(10_981.2, 1);
    expect(number(answer.data['volumeL'])).toBeCloseTo(15, 3);
    expect(answer.cautions.join(' ')).toMatch(/silica dust/);
  });

  it('lists water, each material of the base, what goes over it, and the whole, one to a row', async () => {
    const room = await openGlazeRoom();
    const answer = await room.say(0, `/batch plan recipe:"${recipe}" volume:15l gravity:1.45 pail:19l`);
    expect(answer.title).toMatch(/ in 11 l of water makes 15 l /);
    expect(answer.facts.slice(0, 7)).toEqual([
      // 10 981.2 g, as a pail is filled, in the title too
      { label: 'Water', text: '11 l (10\u202F981 g)' },
      { label: 'feldspar', text: '3868 g' },
      { label: 'silica', text: '2718 g' },
      { label: 'whiting', text: '2196 g' },
      { label: 'kaolin', text: '1673 g' },
      { label: 'Added on top', text: 'red iron oxide 314 g' },
      { label: 'Powder in all', text: '10\u202F769 g' },
    ]);
  });

  it('folds the last of a long recipe into one row', async () => {
    const room = await openGlazeRoom();
    const long = Array.from({ length: 30 }, (_, i) => `stone ${String.fromCharCode(97 + i)} 1`).slice(0, 26);
    const gravities = long.map((one) => one.replace(/1$/, '2.6')).join(', ');
    const line = `/batch plan recipe:"${long.join(', ')}" gravities:"${gravities}" powder:2600g gravity:1.45`;
    const { facts } = await room.say(0, line);
    expect(facts.length).toBeLessThanOrEqual(25);
    expect(
      facts
        .map(({ label, text }) => `${label} ${text}`)
        .join('\n')
        .match(/stone [a-z]/g),
    ).toHaveLength(26);
  });

  it('sets what goes over the base in one row of its own, without signs, wherever it was typed', async () => {
    const room = await openGlazeRoom();
    const { facts, file } = await room.say(
      0,
      '/batch plan recipe:"feldspar 50, + tin oxide 5, + rutile 3, clay 50" gravities:"clay 2.6" powder:1080g gravity:1.45',
    );
    // 108 parts in 1080 g: 10 g a part
    expect(facts.slice(1, 5)).toEqual([
      { label: 'feldspar', text: '500 g' },
      { label: 'clay', text: '500 g' },
      { label: 'Added on top', text: 'tin oxide 50 g, rutile 30 g' },
      { label: 'Powder in all', text: '1080 g' },
    ]);
    const rows = String(file?.['content'])
      .split('\n')
      .filter((line) => line.startsWith('<tr>'))
      .map((line) => line.replaceAll(/<[^>]*>/g, ' ').trim());
    expect(rows.join('|')).toMatch(/feldspar +500\|clay +500\|Added on top\|tin oxide +50\|rutile +30/);
    expect(String(file?.['content'])).not.toMatch(/>\+|\+ /);
  });

  it('folds the base alone when something goes over it, and stays within a message’s rows', async () => {
    const room = await openGlazeRoom();
    const long = Array.from({ length: 26 }, (_, i) => `stone ${String.fromCharCode(97 + i)} 1`);
    const gravities = long.map((one) => one.replace(/1$/, '2.6')).join(', ');
    const { facts } = await room.say(
      0,
      `/batch plan recipe:"${long.join(', ')}, + tin oxide 1" gravities:"${gravities}" powder:2700g gravity:1.45 pail:19l`,
    );
    expect(facts.length).toBeLessThanOrEqual(25);
    const labels = facts.map(({ label }) => label);
    expect(labels.slice(-4)).toEqual(['Also', 'Added on top', 'Powder in all', 'Pail']);
    expect(facts.at(-3)?.text).toBe('tin oxide 100 g');
    expect(facts.at(-4)?.text).toMatch(/stone z 100 g$/);
  });

  it('weighs to the step of the scale, whatever it is', async () => {
    const room = await openGlazeRoom();
    const answer = await room.say(
      0,
      '/batch plan recipe:"feldspar 1, silica 1, whiting 1" powder:100g gravity:1.45 step:5g',
    );
    // 100 g in steps of 5 g is 20 steps; a third each is 6.67: 7, 7, 6
    expect(answer.data['materials']).toMatchObject([{ grams: 35 }, { grams: 35 }, { grams: 30 }]);
    expect(answer.data['powderGrams']).toBe(100);
  });

  it('comes with a sheet to print that stands alone, and runs nothing that a member typed', async () => {
    const room = await openGlazeRoom();
    const answer = await room.say(
      0,
      '/batch plan recipe:"feldspar 44, <script>alert(1)</script> clay 56" gravities:"<script>alert(1)</script> clay 2.6" volume:5l gravity:1.45',
    );
    const content = String(answer.file?.['content']);
    expect(answer.file).toMatchObject({ name: 'new-batch.html', type: 'text/html' });
    expect(content).not.toMatch(/<script|https?:|<link|<img/i);
    expect(content).toContain('&lt;script&gt;alert(1)&lt;/script&gt; clay');
    expect(content).toMatch(/silica dust/);
    expect(content.match(/class="tick"/g)).toHaveLength(2 + 1 + 5);
  });

  it.each([
    [`recipe:"${recipe}" volume:15l gravity:3`, /its dry grains are at 2\.68/],
    [`recipe:"${recipe}" volume:15l gravity:1`, /above 1/],
    [`recipe:"${recipe}" volume:15l gravity:0.9`, /above 1/],
    [`recipe:"${recipe}" volume:15l gravity:2.4`, /a paste/],
    ['recipe:"feldspar 0, silica 0" volume:15l gravity:1.45', /adds up to 0\./],
    ['recipe:"+ red iron oxide 4" volume:15l gravity:1.45', /adds up to 0\./],
    ['recipe:"feldspar -44, silica 31" volume:15l gravity:1.45', /below zero/],
    ['recipe:"feldspar, silica" volume:15l gravity:1.45', /can't read/],
    [`recipe:"${recipe}" gravity:1.45`, /how much/i],
    [`recipe:"${recipe}" volume:15l powder:2kg gravity:1.45`, /not both/],
    ['recipe:"moon dust 44, silica 31" volume:15l gravity:1.45', /“moon dust”/],
    ['recipe:"feldspar 44" gravities:"moon dust 2.9" volume:15l gravity:1.45', /not in the recipe/],
    ['recipe:"moon dust 44" gravities:"moon dust 0.9" volume:15l gravity:1.45', /can't be the gravity/],
    ['recipe:"Sea Fog" volume:15l gravity:1.45', /The studio keeps no recipe/],
  ])('is refused with the reason: %s', async (options, why) => {
    const room = await openGlazeRoom();
    const answer = await room.say(0, `/batch plan ${options}`);
    expect(answer).toMatchObject({ ok: false, kind: 'refusal', private: true });
    expect(answer.title).toMatch(why);
    expect(room.bugs).toEqual([]);
  });

  it('takes the gravity of a material that it does not know, when it is said', async () => {
    const room = await openGlazeRoom();
    const line = '/batch plan recipe:"feldspar 50, moon dust 50" volume:15l gravity:1.45';
    const asked = await room.say(0, line);
    expect(asked.data).toMatchObject({ unknownMaterials: ['moon dust'] });
    const answer = await room.say(0, `${line} gravities:"moon dust 2.6"`);
    // s = 100/(50/2.62 + 50/2.6) = 2.60996
    expect(number(answer.data['solidsGravity'])).toBeCloseTo(2.60996, 4);
  });
});

describe('recipes', () => {
  it('are kept by name, percent or parts, and an undo takes one back', async () => {
    const room = await openGlazeRoom();
    expect(await room.say(0, `/batch recipe name:"Gull Grey" recipe:"${recipe}"`)).toMatchObject({
      ok: false,
    });
    const kept = await room.keeper(0, `/batch recipe name:"Gull Grey" recipe:"${recipe}"`);
    expect(kept).toMatchObject({ ok: true, data: { name: 'Gull Grey' } });
    expect(kept.reasons).toEqual([written]);
    expect((await room.say(1, '/batch recipes')).facts).toEqual([{ label: 'Gull Grey', text: written }]);
    // The printed recipe can be parsed again.
    const again = await room.keeper(1, `/batch recipe name:"Gull Grey again" recipe:"${written}"`);
    expect(again.data['lines']).toEqual(kept.data['lines']);
    await room.keeper(1, `/undo entry:${String(again.data['entry'])}`);
    const byName = await room.say(1, '/batch plan recipe:"gull grey" volume:15l gravity:1.45');
    expect(byName.data['powderGrams']).toBe(10_769);
    // the same in parts of 5: 1.85, 1.3, 1.05, 0.8, + 3 %
    const inParts = await room.say(
      1,
      '/batch plan recipe:"feldspar 1.85, silica 1.3, whiting 1.05, kaolin 0.8, + red iron oxide 3%" volume:15l gravity:1.45',
    );
    expect(inParts.data['powderGrams']).toBe(10_769);
    expect(inParts.data['materials']).toEqual(byName.data['materials']);
    await room.keeper(2, `/undo entry:${String(kept.data['entry'])}`);
    expect((await room.say(3, '/batch recipes')).data['recipes']).toEqual([]);
  });
});

describe('a blend', () => {
  it('says gravity, volume and the flocculant that comes over', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(
      0,
      '/bucket add name:"Sea Fog" nick:sf pail:19l volume:3l gravity:1.42-1.46 solids:2.6',
    );
    await room.say(1, '/reading bucket:gg gravity:1.40 within:0.001 seconds:14 stirred:yes');
    await room.say(1, '/reading bucket:sf gravity:1.60 within:0.001 stirred:yes');
    await room.say(2, '/added bucket:sf what:flocculant amount:3g');
    const answer = await room.say(3, '/batch blend first:gg second:sf');
    // (15 × 1.40 + 3 × 1.60)/18 = 1.43333
    expect(number(answer.data['gravity'])).toBeCloseTo(1.43333, 4);
    expect(number(answer.data['volumeL'])).toBeCloseTo(18, 3);
    // powder: 15 × 650 g/l + 3 × 975 g/l = 9750 + 2925 = 12 675 g (Brongniart, s 2.6); water 25 800 − 12 675 = 13 125
    expect(number(answer.data['powderGrams'])).toBeCloseTo(12_675, -1);
    expect(number(answer.data['waterMl'])).toBeCloseTo(13_125, -1);
    // 3 g of salt over 12 675 g: 0.02367 %
    expect(number(answer.data['heptahydrateGrams'])).toBeCloseTo(3, 6);
    expect(number(answer.data['totalPercentOfDry'])).toBeCloseTo(0.02367, 4);
    // poured, the salt is in the first bucket, and gone from the second
    await room.say(4, '/added bucket:gg what:glaze amount:3l from:sf');
    const dose = await room.say(5, '/dose bucket:gg');
    expect(number(dose.data['totalPercentOfDry'])).toBeCloseTo(0.0237, 3);
    const other = await room.say(5, '/dose bucket:sf');
    expect(number(other.data['totalPercentOfDry'])).toBeLessThan(0.11);
  });

  it('that does not fit is held against the window by the part that is offered', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/bucket add name:"Sea Fog" nick:sf pail:19l volume:8l gravity:1.42-1.46');
    await room.say(1, '/reading bucket:gg gravity:1.50 within:0.001 seconds:14 stirred:yes');
    await room.say(1, '/reading bucket:sf gravity:1.38 within:0.001 stirred:yes');
    const answer = await room.say(2, '/batch blend first:gg second:sf');
    // All of it, 23 l at (15 × 1.50 + 8 × 1.38)/23 = 1.458, is inside; (15 × 1.50 + 3.05 × 1.38)/18.05 = 1.480 is not.
    expect(answer.title).toMatch(/pour in only 3\.05 l, for 18 l at 1\.48/);
    expect(answer.reasons.join()).toMatch(/Outside the window of Gull Grey/);
    expect(answer.facts.map(({ text }) => text).join()).toMatch(/1\.48/);
  });

  it('that does not fit says so first, and the part that does', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(
      0,
      '/bucket add name:"Sea Fog" nick:sf pail:19l volume:11.44l gravity:1.42-1.46 solids:2.6',
    );
    await room.say(1, '/reading bucket:gg gravity:1.40 within:0.001 seconds:14 stirred:yes');
    await room.say(1, '/reading bucket:sf gravity:1.60 within:0.001 stirred:yes');
    const answer = await room.say(2, '/batch blend first:gg second:sf');
    // 26.44 l in all, known to a litre at best (each volume ± 5 %); (15 × 1.40 + 11.44 × 1.60)/26.44 = 1.4865.
    // Room to stir: 0.95 × 19 − 15 = 3.05 l, and (15 × 1.40 + 3.05 × 1.60)/18.05 = 1.4338.
    expect(answer.title).toBe(
      'Gull Grey and Sea Fog make 26 l at 1.49: more than the 19 l pail holds with room to stir. Mix them in a bigger tub, or pour in only 3.05 l, for 18 l at 1.43.',
    );
    expect(answer.data).toMatchObject({ fits: false });
    expect(answer.actions[0]?.line).toMatch(/amount:3050ml from:2/);
  });

  it('is refused with itself, unmeasured, or with more than there is', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(
      0,
      '/bucket add name:"Sea Fog" nick:sf pail:19l volume:3l gravity:1.42-1.46 solids:2.6',
    );
    expect((await room.say(1, '/batch blend first:gg second:gg')).kind).toBe('refusal');
    expect((await room.say(1, '/batch blend first:gg second:sf')).title).toMatch(/Measure/);
    await room.say(1, '/reading bucket:gg gravity:1.40 stirred:yes');
    await room.say(1, '/reading bucket:sf gravity:1.60 stirred:yes');
    expect((await room.say(2, '/batch blend first:gg second:sf amount:9l')).title).toMatch(/holds only/);
  });
});

it('asking about batches logs nothing in a bucket', async () => {
  const room = await openRoomWithGullGrey();
  const before = await entriesOf(room);
  await room.say(1, '/batch correct bucket:gg by:water');
  await room.say(1, `/batch plan recipe:"${recipe}" volume:15l gravity:1.45`);
  await room.say(1, '/dose bucket:gg');
  expect(await entriesOf(room)).toEqual(before);
});
