import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../helpers/discord/answerSchemas.ts';
import { openGlazeRoom, openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';
import { hazardsInName } from '../../../src/glaze/materials/hazardWords.ts';

const plan = (recipe: string) => `/batch plan recipe:"${recipe}" volume:15l gravity:1.45`;
const marks = async (room: GlazeRoom, bucket = 'gg') =>
  ((await room.say(9, `/bucket show bucket:${bucket}`)).data['bucket'] as { cautions: string[] }).cautions;

describe('a hazard in a name', () => {
  // The names of the trade and formulas: from memory. White lead is basic lead carbonate, litharge and massicot lead
  // monoxide, minium red lead, galena lead sulfide.
  it.each([
    ['white lead', 'lead'],
    ['White-Lead (flake)', 'lead'],
    ['litharge', 'lead'],
    ['minium', 'lead'],
    ['galena', 'lead'],
    ['PbO', 'lead'],
    ['cadmium red stain', 'cadmium'],
    ['Cad. yellow', 'cadmium'],
    ['potassium dichromate', 'chromate'],
    ['lead chromate', 'lead'],
    ['uranium oxide', 'uranium'],
    ['sodium uranate', 'uranium'],
    ['white arsenic', 'arsenic'],
    ['tremolitic talc or tremolite', 'asbestos'],
    ['lye', 'caustic'],
    ['oak ash', 'caustic'],
    ['lithium carbonate', 'caustic'],
    ['lithium carbonate', 'lithium'],
    ['blue copper sulphate', 'copper'],
  ] as const)('is recognised: %s is %s', (name, hazard) => expect(hazardsInName(name)).toContain(hazard));

  it.each([
    'lead-free frit',
    'no lead or cadmium in it',
    'the lead keeper asked for it',
    'bone ash',
    'kaolin',
  ])('is not seen where there is none: %s', (name) => expect(hazardsInName(name)).toEqual([]));

  it('is lithium alone in spodumene, which is no caustic', async () => {
    const room = await openGlazeRoom();
    const cautions = async (recipe: string) => (await room.say(1, plan(recipe))).cautions.join(' ');
    expect(await cautions('spodumene 50, silica 50')).toMatch(/lithium, harmful when swallowed/);
    expect(await cautions('spodumene 50, silica 50')).not.toMatch(/caustic/);
    expect(await cautions('lithium carbonate 50, silica 50')).toMatch(/caustic: gloves and eye protection/);
  });

  it.each(['barium carbonate', 'cobalt oxide', 'nickel oxide', 'vanadium pentoxide', 'chrome oxide'])(
    'says what to do: %s',
    async (material) => {
      const room = await openGlazeRoom();
      const { cautions } = await room.say(1, plan(`silica 90, ${material} 10`));
      const [its] = cautions.filter((one) => one.startsWith(material));
      expect(its).toMatch(/gloves.*mask.*wash hands.*no food ware without a laboratory/);
    },
  );
});

describe('a material that no table knows', () => {
  it.each(['white lead', 'cadmium red stain', 'moon dust'])(
    'is asked about before its gravity: %s',
    async (name) => {
      const room = await openGlazeRoom();
      const asked = await room.say(1, plan(`silica 50, ${name} 50`));
      expect(asked).toMatchObject({ kind: 'refusal', data: { unknownMaterials: [name] } });
      expect(asked.title).toMatch(
        /Which known material is it like\? Or what are its hazards, does it dissolve.*and what is the gravity/,
      );
      expect(asked.reasons.join(' ')).toMatch(/A keeper can say it once.*\/studio material/);
      // No action may guess.
      expect(JSON.stringify(asked.actions)).not.toMatch(/2\.6/);
      if (name !== 'moon dust') expect(asked.cautions.join(' ')).toMatch(/poisonous.*never on food ware/);
      const [action] = (await room.keeper(1, plan(`silica 50, ${name} 50`))).actions;
      expect(action?.line).toMatch(new RegExp(`^/studio material name:"${name}" then:`));
    },
  );

  it('is said once by a keeper, for every recipe', async () => {
    const room = await openGlazeRoom();
    const refused = async (said: string) =>
      (await room.keeper(1, `/studio material name:"moon dust" ${said}`)).title;
    expect((await room.say(1, '/studio material name:"moon dust" like:kaolin')).ok).toBe(false);
    expect(await refused('particle-gravity:2.6')).toMatch(/What is moon dust\? Give like:/);
    expect(await refused('hazard:none particle-gravity:2.6')).toMatch(/dissolve in water/);
    expect(await refused('hazard:none soluble:no')).toMatch(/gravity of the grains/);
    expect(await refused('like:stardust')).toMatch(/I don't know “stardust”/);
    const kept = await room.keeper(
      2,
      '/studio material name:"moon dust" hazard:barium soluble:yes particle-gravity:2.6',
    );
    expect(kept).toMatchObject({ ok: true, data: { cautions: ['barium', 'soluble'], particleGravity: 2.6 } });
    const answer = await room.say(3, plan('feldspar 50, Moon Dust 50'));
    // s = 100/(50/2.62 + 50/2.6) = 2.60996
    expect(answer.data['solidsGravity']).toBeCloseTo(2.60996, 4);
    expect(answer.cautions.join(' ')).toMatch(/Moon Dust: barium, toxic/);
    await room.keeper(4, `/undo entry:${String(kept.data['entry'])}`);
    expect((await room.say(5, plan('feldspar 50, moon dust 50'))).ok).toBe(false);
  });

  it('takes over gravity and hazards of what it is like, and keeps those of its name', async () => {
    const room = await openGlazeRoom();
    const kept = await room.keeper(1, '/studio material name:"cad red stain" like:"lead frit" hazard:none');
    expect(kept.data).toMatchObject({ particleGravity: 4.7, cautions: ['lead', 'cadmium'] });
  });

  it('of which only the gravity was said is taken for toxic', async () => {
    const room = await openGlazeRoom();
    const answer = await room.say(1, `${plan('feldspar 50, moon dust 50')} gravities:"moon dust 2.6"`);
    expect(answer.ok).toBe(true);
    expect(answer.cautions.join(' ')).toMatch(/Nobody has said what “moon dust” is\. Treat it as toxic/);
  });
});

describe('raw lead, cadmium and the like put a bucket on hold, whichever way they are entered', () => {
  const add = (more: string) => `/bucket add name:"Sea Fog" nick:sf pail:19l gravity:1.42-1.46 ${more}`;

  it.each([
    'recipe:"white lead 50, silica 50"',
    'recipe:"litharge 50, silica 50" cautions:none',
    'glaze:"Lead Amber"',
    'cautions:uranium',
  ])('/bucket add %s', async (more) => {
    const room = await openGlazeRoom();
    expect((await room.keeper(1, add(more))).title).toMatch(/on hold/);
    expect(verdictOf(await room.say(2, '/water-or-stir bucket:sf')).step).toBe('on-hold');
  });

  it.each(['recipe:"cadmium red stain 10, silica 90"', 'name:"White Lead"'])(
    '/bucket change %s',
    async (more) => {
      const room = await openRoomWithGullGrey();
      expect((await room.keeper(1, `/bucket change bucket:gg ${more}`)).title).toMatch(/on hold/);
    },
  );

  it.each(['other', 'dry', 'glaze', 'water'])('/added what:%s with a note of it', async (what) => {
    const room = await openRoomWithGullGrey(['cautions', 'children']);
    const added = await room.say(1, `/added bucket:gg what:${what} note:"a spoon of white lead"`);
    expect(added.title).toMatch(/On hold.*raw lead/);
    expect(await marks(room)).toEqual(['lead']);
    await room.say(2, `/undo entry:${String(added.data['entry'])}`);
    expect(await marks(room)).toEqual(['children']);
    expect(verdictOf(await room.say(3, '/water-or-stir bucket:gg')).step).not.toBe('on-hold');
  });

  it('a recipe that is kept anew, and a material that a keeper explains', async () => {
    const room = await openGlazeRoom();
    await room.keeper(1, '/batch recipe name:"Sea Fog" recipe:"feldspar 50, silica 50"');
    await room.keeper(2, add('recipe:"Sea Fog" cautions:children'));
    const kept = await room.keeper(3, '/batch recipe name:"Sea Fog" recipe:"feldspar 50, red lead 50"');
    expect(kept.cautions.join(' ')).toMatch(/marked on Sea Fog \(on hold\).*lead, poisonous/);
    expect(await marks(room, 'sf')).toEqual(['lead']);
    const other = await openGlazeRoom();
    await other.keeper(1, add('recipe:"feldspar 50, moon dust 50"'));
    await other.keeper(2, '/studio material name:"moon dust" like:kaolin hazard:cadmium');
    expect(verdictOf(await other.say(3, '/water-or-stir bucket:sf')).step).toBe('on-hold');
  });

  it('while a hazard that is no poison is marked, and whatever is not known ends “children”', async () => {
    const room = await openGlazeRoom();
    await room.keeper(1, add('recipe:"oak ash 50, barium carbonate 10, borax frit 40"'));
    expect((await marks(room, 'sf')).toSorted()).toEqual(['barium', 'caustic']);
    const unexplained = await room.keeper(2, '/bucket change bucket:sf recipe:"moon dust 50, silica 50"');
    expect(unexplained.cautions[0]).toMatch(/Nobody has said what “moon dust” is/);
    const children = await openRoomWithGullGrey(['cautions', 'children']);
    await children.say(1, '/added bucket:gg what:other amount:10g');
    expect(await marks(children)).toEqual([]);
  });
});
