import { describe, expect, it } from 'vitest';
import { openGlazeRoom, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const plan = '/batch plan recipe:"silica 50, moon dust 30, black stain 20" powder:1kg gravity:1.45';
const list = 'moon dust: like kaolin\nblack stain: cobalt + manganese, not soluble, 4.2';

const taught = (room: GlazeRoom) =>
  room.store.books.read(room.studio, async (book) => (await book.studio()).materials);

describe('materials of the studio’s own', () => {
  it('are taught in one go from a pasted list, and every recipe uses them', async () => {
    const room = await openGlazeRoom();
    const answer = await room.keeper(1, `/studio materials list:"${list}"`);
    expect(answer).toMatchObject({
      ok: true,
      data: { materials: [{ name: 'moon dust' }, { name: 'black stain' }] },
    });
    const planned = await room.say(2, plan);
    expect(planned.ok).toBe(true);
    expect(planned.cautions.join(' ')).toMatch(/black stain: cobalt/);
    // 100 / (50/2.648 + 30/2.59 + 20/4.2): by hand.
    expect(planned.data['solidsGravity']).toBeCloseTo(100 / (50 / 2.648 + 30 / 2.59 + 20 / 4.2), 4);
  });

  it('that are unknown are one question for all, and its answer goes on with the recipe', async () => {
    const room = await openGlazeRoom();
    const asked = await room.keeper(1, plan);
    expect(asked).toMatchObject({
      kind: 'refusal',
      data: { unknownMaterials: ['moon dust', 'black stain'] },
    });
    expect(asked.actions).toHaveLength(1);
    const line = asked.actions[0]?.line ?? '';
    expect(line).toMatch(/^\/studio materials list:"moon dust: like ; black stain: like " then:/);
    const filled = line.replace('moon dust: like ; black stain: like ', list.replace('\n', '; '));
    const answer = await room.keeper(2, filled);
    expect(answer.actions[0]?.label).toBe('Go on with the recipe');
    expect(await room.keeper(3, answer.actions[0]?.line ?? '')).toMatchObject({
      ok: true,
      data: { powderGrams: 1000 },
    });
  });

  it('go on with a recipe alone, and with no other line', async () => {
    const room = await openGlazeRoom();
    const typed = { list: 'moon dust: like kaolin', then: '/forget-me' };
    const answer = await room.request(1, { path: ['studio', 'materials'], typed, role: 'keeper' });
    expect(answer.title).toMatch(/Only a recipe’s line can follow/);
    expect(await taught(room)).toEqual([]);
  });

  it.each([
    ['moon dust: like nothing known', /I don't know “nothing known”/],
    ['moon dust: cobalt', /dissolve in water/],
    ['moon dust: 2.6, not soluble', /What is moon dust\?/],
    ['moon dust: none, not soluble', /gravity of the grains of moon dust/],
    ['moon dust: none, not soluble, 40', /can't be the gravity/],
    ['moon dust: green', /can’t read “green” of “moon dust”/],
    [`${list}; 12: like kaolin`, /“12” is not a material’s name/],
  ])('are all refused when one line is wrong: %s', async (typed, said) => {
    const room = await openGlazeRoom();
    const answer = await room.keeper(1, `/studio materials list:"${typed}"`);
    expect(answer.kind).toBe('refusal');
    expect(answer.title).toMatch(said);
    expect(await taught(room)).toEqual([]);
  });

  it('keep the hazards that the table, or their own names, tell, whatever is left out', async () => {
    const room = await openGlazeRoom();
    // Umber holds manganese: the table says so, its name does not.
    await room.keeper(1, '/studio materials list:"umber: like kaolin; red lead: none, not soluble, 8.9"');
    expect(await taught(room)).toMatchObject([
      { name: 'umber', cautions: expect.arrayContaining(['manganese']) },
      { name: 'red lead', cautions: ['lead'] },
    ]);
  });

  it('are not said to be less hazardous unasked, nor no poison without a reason', async () => {
    const room = await openGlazeRoom();
    const dust = '/studio material name:"moon dust" soluble:no particle-gravity:3';
    await room.keeper(1, `${dust} hazard:"cobalt, lead"`);
    expect((await room.keeper(2, '/studio materials list:"moon dust: none, not soluble, 3"')).title).toMatch(
      /these warnings.*: cobalt, lead/,
    );
    for (const sure of ['', ' sure:yes']) {
      const asked = await room.keeper(2, `${dust} hazard:none${sure}`);
      expect(asked.kind).toBe('choice');
      expect(asked.title).toMatch(/marked with lead.*Which laboratory/);
    }
    const less = await room.keeper(3, `${dust} hazard:lead`);
    expect(less.title).toMatch(/these warnings: cobalt.*sure/);
    const pressed = await room.keeper(
      4,
      less.actions.find(({ line }) => line.includes('sure:yes'))?.line ?? '',
    );
    expect(pressed).toMatchObject({ ok: true, data: { cautions: ['lead'] } });
    expect((await room.keeper(5, `${dust} hazard:none sure:yes note:"safety sheet of May: none"`)).ok).toBe(
      true,
    );
  });
});
