import { describe, expect, it } from 'vitest';
import { standsIn } from '../../helpers/store/fileBytes.ts';
import { openGlazeRoom, openRoomWithGullGrey, stateOf } from '../../helpers/room/glazeRoom.ts';

const factOf = (answer: { facts: { label: string; text: string }[] }, label: string) =>
  answer.facts.find((one) => one.label === label)?.text;

const openWithFiring = async () => {
  const room = await openRoomWithGullGrey();
  await room.keeper(1, '/batch recipe name:"Gull Grey" recipe:"feldspar 44, silica 31, whiting 25"');
  await room.keeper(
    1,
    '/bucket change bucket:gg cone:6 atmosphere:oxidation bodies:"stoneware, porcelain" recipe:"Gull Grey"',
  );
  return room;
};

describe('what a bucket is', () => {
  it('is told on its card, and by number for scripts', async () => {
    const room = await openWithFiring();
    const card = await room.say(2, '/bucket show bucket:gg');
    expect(factOf(card, 'Made for')).toBe('dipping; fires to cone 6, oxidation; on stoneware, porcelain');
    expect(factOf(card, 'Recipe')).toBe('Gull Grey');
    expect(card.data['bucket']).toMatchObject({
      cone: 6,
      atmosphere: 'oxidation',
      bodies: 'stoneware, porcelain',
      recipe: 'Gull Grey',
      use: 'dipping',
    });
  });

  it.each([
    ['06', 'fires to cone 06'],
    ['cone 10', 'fires to cone 10'],
    ['^5', 'fires to cone 5'],
  ])('reads the cone %s', async (typed, shown) => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, `/bucket change bucket:gg cone:"${typed}"`);
    expect(factOf(await room.say(2, '/bucket show bucket:gg'), 'Made for')).toContain(shown);
  });

  it.each(['0', '5-6', 'hot', '99'])('refuses %s as a cone, and changes nothing', async (typed) => {
    const room = await openWithFiring();
    const refused = await room.keeper(2, `/bucket change bucket:gg cone:${typed}`);
    expect(refused.kind).toBe('refusal');
    expect(refused.title).toContain(typed);
    expect((await stateOf(room)).settings.cone).toBe(6);
  });

  it('is taken away again by none, and comes back by undo', async () => {
    const room = await openWithFiring();
    const changed = await room.keeper(2, '/bucket change bucket:gg cone:none atmosphere:none');
    const bare = (await stateOf(room)).settings;
    expect([bare.cone, bare.atmosphere, bare.bodies]).toEqual([undefined, undefined, 'stoneware, porcelain']);
    await room.keeper(3, `/undo entry:${String(changed.data['entry'])}`);
    expect((await stateOf(room)).settings).toMatchObject({ cone: 6, atmosphere: 'oxidation' });
  });
});

describe('a name in what a keeper typed of it', () => {
  it('is taken out everywhere, like a name in the bucket’s own', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(
      1,
      '/bucket change bucket:gg bodies:"stoneware of Quillfeather" atmosphere:"Quillfeather way"',
    );
    expect((await room.keeper(2, '/redact name:Quillfeather sure:yes')).kind).toBe('answer');
    await room.store.erased();
    expect((await stateOf(room)).settings).toMatchObject({ bodies: 'stoneware of …', atmosphere: '… way' });
    expect(standsIn(room.store.file, 'Quillfeather')).toBe(false);
  });
});

describe('a question about it', () => {
  it.each([
    ['what cone is gull grey?', 'Gull Grey fires to cone 6, oxidation.'],
    ['which cone does bucket 1 fire to', 'Gull Grey fires to cone 6, oxidation.'],
    ['is gg oxidation or reduction?', 'Gull Grey fires to cone 6, oxidation.'],
    ['can I fire gull grey to cone 10?', 'Gull Grey fires to cone 6, oxidation.'],
    ['which clay does gull grey go on?', 'Gull Grey goes on stoneware, porcelain.'],
    ['what is the recipe of gull grey', 'Gull Grey: feldspar 44, silica 31, whiting 25.'],
    ['can I brush bucket 1?', 'Gull Grey is made for dipping, not for brushing. Ask a keeper first.'],
    ['could I spray gull grey', 'Gull Grey is made for dipping, not for spraying. Ask a keeper first.'],
  ])('%s', async (question, answer) => {
    const room = await openWithFiring();
    expect((await room.say(2, `/ask question:"${question}"`)).title).toBe(answer);
  });

  it('is answered honestly where no keeper has said it, with a form for a keeper', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.keeper(2, '/ask question:"what cone is gull grey?"');
    expect(answer.title).toBe('No keeper has said what Gull Grey fires to.');
    expect(answer.actions[0]?.line).toMatch(/^\/bucket change bucket:1 cone:/);
    expect((await room.say(3, '/ask question:"what cone is gull grey?"')).actions).toEqual([]);
  });

  it('says yes to a brush only where the bucket is made for one, with what it needs now', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/bucket add name:Lichen use:brushing');
    const answer = await room.say(1, '/ask question:"can I brush lichen?"');
    expect(answer.title).toMatch(/^Yes, it is made for brushing\. Lichen: Stir it first/);
  });

  it('says what hold it is on before anything else', async () => {
    const room = await openWithFiring();
    await room.keeper(2, '/bucket hold bucket:gg why:"sponge fell in"');
    expect((await room.say(3, '/ask question:"can I brush gull grey?"')).title).toMatch(/On hold/);
  });

  it('is answered by the studio’s own note, where a keeper has written one about it', async () => {
    const room = await openWithFiring();
    await room.keeper(
      2,
      '/note add title:"Gull Grey cone" text:"We fire Gull Grey to cone 6 on the top shelf."',
    );
    const answer = await room.say(3, '/ask question:"what cone is gull grey?"');
    expect(answer.title).toBe('We fire Gull Grey to cone 6 on the top shelf.');
  });

  it('leaves questions about faults to the handbook', async () => {
    const room = await openWithFiring();
    const answer = await room.say(2, '/ask question:"why did gull grey run at cone 6?"');
    expect(answer.title).not.toContain('fires to');
  });
});
