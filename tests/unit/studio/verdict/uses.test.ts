import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../helpers/discord/answerSchemas.ts';
import { openGlazeRoom } from '../../../helpers/room/glazeRoom.ts';

// What each use is judged by is common practice: a keeper's own window is the only standard of a brush or a gun.
const open = async (options: string) => {
  const room = await openGlazeRoom();
  expect((await room.keeper(0, `/bucket add name:Lichen nick:li pail:4l volume:3l ${options}`)).ok).toBe(
    true,
  );
  return room;
};
const ask = '/water-or-stir bucket:li';

describe('a brushing bucket', () => {
  it('without windows is only stirred: no scale and no cup are asked for', async () => {
    const room = await open('use:brushing');
    expect(verdictOf(await room.say(1, ask)).step).toBe('stir');
    const answer = await room.say(2, '/stirred bucket:li');
    expect(verdictOf(answer)).toMatchObject({ step: 'use', flow: null });
    expect(answer.title).toBe('Lichen: Use it: it is stirred.');
    expect(answer.reasons.join(' ')).not.toMatch(/cup|finger/i);
  });

  it('is stirred again after something went in', async () => {
    const room = await open('use:brushing');
    await room.say(1, '/stirred bucket:li');
    const answer = await room.say(2, '/added bucket:li what:water amount:50ml');
    expect(verdictOf(answer)).toMatchObject({ step: 'stir', then: 'use' });
  });

  it('is judged by gravity when its keeper set that window, and by no cup and no finger', async () => {
    const room = await open('use:brushing gravity:1.5-1.56');
    const good = await room.say(1, '/reading bucket:li gravity:1.53 stirred:yes look:thin');
    expect(verdictOf(good)).toMatchObject({ step: 'use', flow: null });
    expect(good.title).toBe('Lichen: Use it. Gravity is where it should be.');
    expect(verdictOf(await room.say(2, '/reading bucket:li gravity:1.6 stirred:yes')).step).toBe('measure');
    expect(verdictOf(await room.say(3, '/reading bucket:li gravity:1.6 stirred:yes')).step).toBe('add-water');
    const old = await room.say(9 * 24 * 60, '/stirred bucket:li');
    expect(old.data['verdict']).toMatchObject({ step: 'measure', asks: ['weight'], sure: { flow: null } });
  });

  it('is judged by a cup when its keeper set seconds, and is never given flocculant', async () => {
    const room = await open('use:brushing gravity:1.5-1.56 seconds:20-30 cup:ford4');
    // So far outside is read twice before it is taken for true.
    await room.say(1, '/reading bucket:li gravity:1.53 seconds:12 cup:ford4 stirred:yes');
    const thin = await room.say(2, '/reading bucket:li gravity:1.53 seconds:12 cup:ford4 stirred:yes');
    expect(verdictOf(thin)).toMatchObject({ step: 'ask-keeper', flow: 'thin' });
    expect(thin.title).toBe('Lichen: It flows too thin for its window. Ask a keeper; add nothing.');
    expect(thin.reasons.join(' ')).toMatch(/gum, not flocculant/);
  });

  it('with seconds alone is timed, then used or shown to a keeper', async () => {
    const room = await open('use:brushing seconds:20-30 cup:ford4');
    expect(verdictOf(await room.say(1, '/stirred bucket:li')).step).toBe('measure');
    const right = await room.say(2, '/reading bucket:li seconds:25 cup:ford4 stirred:yes');
    expect(verdictOf(right)).toMatchObject({ step: 'use', flow: 'in' });
    const thick = await room.say(3, '/reading bucket:li seconds:40 cup:ford4 stirred:yes');
    expect(verdictOf(thick).step).toBe('ask-keeper');
  });

  it('gets no dose of flocculant and no dip time: neither makes its coat', async () => {
    const room = await open('use:brushing gravity:1.5-1.56');
    await room.say(1, '/reading bucket:li gravity:1.53 stirred:yes');
    expect((await room.say(2, '/dose bucket:li')).title).toMatch(/is for brushing.*gum, not flocculant/);
    expect((await room.say(3, '/dip time bucket:li thickness:1mm')).title).toMatch(/is for brushing/);
  });

  it('with a cake, with lumps or on hold is answered as any other', async () => {
    const room = await open('use:brushing');
    expect(verdictOf(await room.say(1, '/stirred bucket:li seen:cake')).step).toBe('stir');
    expect(verdictOf(await room.say(2, '/stirred bucket:li seen:cake-gone,lumps')).step).toBe('sieve');
    await room.keeper(3, '/bucket hold bucket:li why:"mould in it"');
    expect(verdictOf(await room.say(4, ask)).step).toBe('on-hold');
  });
});

describe('a spraying bucket', () => {
  it('is sieved within a day of its use, and every answer warns of the mist', async () => {
    const room = await open('use:spraying');
    const stirred = await room.say(1, '/stirred bucket:li');
    expect(verdictOf(stirred)).toMatchObject({ step: 'sieve', then: 'use' });
    const sieved = await room.say(2, '/sieved bucket:li mesh:80');
    expect(verdictOf(sieved).step).toBe('use');
    await room.say(24 * 60, '/stirred bucket:li');
    expect(verdictOf(await room.say(24 * 60 + 2, ask)).step).toBe('use');
    expect(verdictOf(await room.say(24 * 60 + 3, ask)).step).toBe('sieve');
    for (const answer of [stirred, sieved, await room.say(24 * 60 + 4, '/bucket show bucket:li')])
      expect(answer.cautions.join(' ')).toMatch(/booth that draws outside.*fitted respirator.*local rules/i);
  });

  it('that is marked never to be sieved is not', async () => {
    const room = await open('use:spraying mesh:never');
    expect(verdictOf(await room.say(1, '/stirred bucket:li')).step).toBe('use');
  });
});

describe('a test jar', () => {
  it('is judged like the bucket that it tries out', async () => {
    const room = await open('use:test');
    await room.say(1, '/stirred bucket:li');
    expect(
      verdictOf(await room.say(2, '/reading bucket:li gravity:1.44 seconds:14 stirred:yes')),
    ).toMatchObject({
      step: 'ask-keeper',
    });
  });
});
