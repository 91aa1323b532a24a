import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../helpers/discord/answerSchemas.ts';
import { openGlazeRoom, openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

describe('bleach and what must never meet it', () => {
  // Chlorine from acids, chloramines from ammonia: any safety sheet of household bleach.
  it.each([
    ['other', 'a capful of bleach', /never with vinegar.*never with latex or ammonia/],
    ['other', 'a splash of vinegar', /never with bleach/],
    ['deflocculant', 'vinegar', /never with bleach/],
  ])('is warned of: what:%s note:%s', async (what, note, warned) => {
    const room = await openRoomWithGullGrey();
    const added = await room.say(1, `/added bucket:gg what:${what} note:"${note}"`);
    expect(added.cautions.join(' ')).toMatch(warned);
    expect(added.cautions.join(' ')).not.toMatch(/both/);
  });

  it('is warned of louder when the other went in before, unless that was taken back', async () => {
    const room = await openRoomWithGullGrey();
    const bleached = await room.say(1, '/added bucket:gg what:other note:"bleach"');
    const both = await room.say(2, '/added bucket:gg what:other note:"vinegar"');
    expect(both.cautions.join(' ')).toMatch(/both bleach.*leave the room/);
    await room.say(3, `/undo entry:${String(bleached.data['entry'])}`);
    const again = await room.say(4, '/added bucket:gg what:other note:"vinegar"');
    expect(again.cautions.join(' ')).not.toMatch(/both/);
  });

  it('is warned of with latex', async () => {
    const room = await openRoomWithGullGrey();
    const coat = await room.say(1, '/coat on kind:latex pieces:bowl');
    expect(coat.cautions.join(' ')).toMatch(/Never bleach with it/);
  });
});

describe('water over a glaze of ash, soda, borate or copper', () => {
  const open = async (more: string) => {
    const room = await openGlazeRoom();
    await room.keeper(
      0,
      `/bucket add nick:x pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:ford4 solids:2.6 ${more}`,
    );
    await room.say(1, '/reading bucket:x gravity:1.36 seconds:11 stirred:yes');
    return room;
  };

  it.each([
    'name:"Oak Ash"',
    'name:Dune cautions:copper',
    'name:Dune recipe:"feldspar 50, soda ash 20, silica 30"',
    'name:Dune recipe:"borax 20, silica 80"',
  ])('is better left to evaporate, and is caustic when it is drawn off: %s', async (more) => {
    const room = await open(more);
    const ask = '/water-or-stir bucket:x';
    const keeper = await room.keeper(2, ask);
    expect(verdictOf(keeper).step).toBe('draw-off-water');
    expect(keeper.title).toMatch(/evaporate, lid off; drawing it off takes flux away/);
    expect(keeper.cautions.join(' ')).toMatch(/may be caustic.*Gloves and eye protection/);
    for (const answer of [keeper, await room.say(2, ask)]) {
      const way = answer.actions.find(({ line }) => line.includes('by:evaporate'));
      const chosen = await room.say(3, String(way?.line));
      expect(chosen.title).toMatch(/Leave the lid off until .* of water has evaporated, stir, then measure/);
      // Clear water off, 1.36 to 1.44: at most 15 l × 0.08/0.44 = 2.73 l.
      expect(Number(chosen.data['drawOffMl'])).toBeGreaterThan(1500);
      expect(Number(chosen.data['drawOffMl'])).toBeLessThanOrEqual(2730);
    }
    const drawn = await room.keeper(4, '/added bucket:x what:draw-off amount:500ml');
    expect(drawn.cautions.join(' ')).toMatch(/caustic.*let the water evaporate instead/s);
    const correct = await room.keeper(5, '/batch correct bucket:x by:draw-off');
    if (correct.kind === 'answer') expect(correct.cautions.join(' ')).toMatch(/caustic/);
  });

  it('is drawn off as ever from one that holds none of that', async () => {
    const room = await open('name:Dune');
    const keeper = await room.keeper(2, '/water-or-stir bucket:x');
    expect(keeper.title).toMatch(/draw off/);
    expect(keeper.cautions.join(' ')).not.toMatch(/flux/);
  });
});
