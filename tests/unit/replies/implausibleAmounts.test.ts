import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { gullGreyLine, openGlazeRoom, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

let room: GlazeRoom;

beforeEach(async () => {
  room = await openGlazeRoom();
  await room.keeper(0, gullGreyLine());
  await room.say(1, '/reading bucket:gg gravity:1.44 stirred:yes');
});

afterEach(async () => {
  await room.store.close();
});

/** 15 l at 1.44 of a powder of 2.6: 15 × 0.44 / 1.6 = 4.125 l of grains, 10.7 kg, in 10.9 l of water. */
describe('amounts that no bucket of 15 l has ever been given', () => {
  it('takes two litres of flocculant for two millilitres', async () => {
    // 2 l of saturated solution is 1.29 kg of Epsom salt, 12 % of the powder; a dose is 0.03 %.
    const said = await room.say(2, '/added bucket:gg what:flocculant amount:2l');
    expect(said.kind).toBe('refusal');
    expect(said.title).toMatch(/“2l” is 4\d\d times a dose.*2 ml\?.*Nothing was saved/);
    const salt = await room.say(2, '/added bucket:gg what:flocculant amount:3kg');
    expect(salt.title).toMatch(/“3kg” is \d+ times a dose.*3 g\?/);
  });

  it('takes no more than a keeper could mean', async () => {
    const said = await room.say(2, '/added bucket:gg what:flocculant amount:"1 cup"');
    // 237 ml hold 157 g of salt (3.28 g in 4.93 ml), 1.5 %; a dose is 0.03 % of 10.7 kg, 3.2 g: 49 of them. Somebody may
    // have done it, so it is asked about.
    expect(said.kind).toBe('choice');
    expect(said.title).toMatch(
      /“1 cup” of flocculant is 49 doses.*Did so much go in\? Nothing was saved yet/,
    );
    expect((await room.say(3, '/bucket log bucket:gg')).reasons).toHaveLength(2);
    const sure = said.actions.find(({ line }) => line.includes('sure:yes'));
    expect((await room.say(4, String(sure?.line))).kind).toBe('answer');
  });

  it.each([
    ['what:deflocculant amount:50ml', /0\.47 % of the dry powder: a glaze takes it by the drop/],
    ['what:flocculant amount:25g', /8 doses/],
  ])('asks about what few would give: %s', async (line, why) => {
    const said = await room.keeper(2, `/added bucket:gg ${line}`);
    expect(said.kind).toBe('choice');
    expect(said.title).toMatch(why);
    expect((await room.keeper(3, `/added bucket:gg ${line} sure:yes`)).kind).toBe('answer');
  });

  it.each(['what:deflocculant amount:2ml', 'what:flocculant amount:20g'])(
    'takes what people give: %s',
    async (line) => {
      expect((await room.keeper(2, `/added bucket:gg ${line}`)).kind).toBe('answer');
    },
  );

  it('draws no more clear water off than lies between the grains', async () => {
    // 14 l is more than there is; with 10 l off, 0.9 l of water and 10.7 kg in 5.0 l weigh 2.3: no slurry.
    for (const amount of ['14l', '10l', '14kg']) {
      const said = await room.say(2, `/added bucket:gg what:draw-off amount:${amount}`);
      expect(said.kind, amount).toBe('refusal');
      expect(said.title, amount).toMatch(/about 10\.9 l of water is in it/);
      expect(said.title, amount).toContain(`“${amount}”`);
    }
    expect((await room.say(3, '/added bucket:gg what:draw-off amount:4l')).kind).toBe('answer');
  });

  it('says what was typed when it is more than the pail, or what is left of it', async () => {
    expect((await room.say(2, '/added bucket:gg what:water amount:100l')).title).toMatch(
      /“100l” is more than/,
    );
    expect((await room.say(2, '/added bucket:gg what:water amount:9l')).title).toMatch(
      /“9l” more can't have/,
    );
    expect((await room.say(2, '/added bucket:gg what:taken amount:18l')).title).toMatch(/“18l” is more than/);
  });
});

it('refuses nothing of a pail whose contents nobody has said', async () => {
  await room.keeper(2, '/bucket add name:"Dune" pail:19l gravity:1.42-1.46');
  for (const line of ['what:flocculant amount:2l sure:yes', 'what:draw-off amount:14l'])
    expect((await room.say(3, `/added bucket:dune ${line}`)).kind, line).toBe('answer');
  // A full pail of it would not take so much either.
  expect((await room.say(3, '/added bucket:dune what:flocculant amount:2l')).kind).toBe('choice');
});
