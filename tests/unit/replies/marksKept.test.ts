import { describe, expect, it } from 'vitest';
import { openGlazeRoom, openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const card = async (room: GlazeRoom, bucket = 'gg') => {
  const { data, cautions } = await room.say(50, `/bucket show bucket:${bucket}`);
  return { marks: (data['bucket'] as { cautions: string[] }).cautions, said: cautions.join(' ') };
};
const forChildren = '/bucket change bucket:gg cautions:children';

describe('a warning of a known hazard', () => {
  it.each(['cobalt', 'caustic', 'copper', 'boron'])('is not taken away unasked: %s', async (hazard) => {
    const room = await openRoomWithGullGrey(['cautions', hazard]);
    const asked = await room.keeper(1, forChildren);
    expect(asked.title).toMatch(new RegExp(`${hazard}.*sure.*Nothing is saved`, 'i'));
    expect((await card(room)).marks).toEqual([hazard]);
    const sure = asked.actions.find(({ line }) => line.includes('sure:yes'));
    await room.keeper(2, String(sure?.line));
    expect((await card(room)).marks).toEqual(['children']);
  });

  it.each(['lead', 'cadmium', 'uranium', 'arsenic', 'asbestos'])(
    'is not exchanged for “children”, sure or not: %s',
    async (poison) => {
      const room = await openRoomWithGullGrey(['cautions', poison]);
      for (const sure of ['', ' sure:yes']) {
        const refused = await room.keeper(1, forChildren + sure);
        expect(refused).toMatchObject({ ok: false });
        expect(refused.title).toMatch(new RegExp(`${poison}: it is not for children`));
      }
      expect((await card(room)).marks).toEqual([poison]);
    },
  );

  it.each(['lead', 'cadmium', 'uranium', 'arsenic', 'asbestos'])(
    'that is a poison is not taken away by a press: it wants a reason, which the log keeps: %s',
    async (poison) => {
      const room = await openRoomWithGullGrey(['cautions', `${poison}, boron`]);
      for (const line of ['cautions:none', 'cautions:none sure:yes', 'cautions:boron sure:yes']) {
        const asked = await room.keeper(1, `/bucket change bucket:gg ${line}`);
        expect(asked).toMatchObject({ ok: false, kind: 'choice' });
        expect(asked.title).toMatch(new RegExp(`marked with ${poison}.*Which laboratory or safety sheet`));
        expect(asked.actions.map(({ line: press }) => press).join()).not.toMatch(/note:[^"]/);
      }
      expect((await card(room)).marks).toEqual([poison, 'boron']);
      const why = 'note:"the laboratory found none, report 12"';
      const gone = await room.keeper(2, `/bucket change bucket:gg cautions:none sure:yes ${why}`);
      expect(gone.cautions.join(' ')).toMatch(new RegExp(`Nobody is warned of ${poison} here any more`));
      expect((await card(room)).marks).toEqual([]);
      expect(JSON.stringify((await room.say(3, '/bucket log bucket:gg')).data)).toMatch(/report 12/);
    },
  );

  it('is asked about when its name, its recipe or what was poured in tells of it', async () => {
    const room = await openGlazeRoom();
    const named = await room.keeper(0, '/bucket add name:"Cobalt Sky" nick:cs cautions:children');
    expect(named.title).toMatch(/cobalt.*sure/);
    const recipe = '/bucket add name:Sky nick:sk recipe:"silica 95, barium carbonate 5" cautions:children';
    expect((await room.keeper(1, recipe)).title).toMatch(/barium.*sure/);
    expect((await room.say(2, '/bucket list')).title).toMatch(/no buckets/);
    const lead = await room.keeper(3, '/bucket add name:"White lead" cautions:children sure:yes');
    expect(lead).toMatchObject({ ok: false });

    const poured = await openRoomWithGullGrey(['cautions', 'children']);
    await poured.keeper(1, '/bucket add name:Storm nick:st volume:10l cautions:barium');
    await poured.say(2, '/added bucket:gg what:glaze amount:1l from:st');
    expect((await poured.keeper(3, forChildren)).title).toMatch(/barium.*sure/);
  });

  it('is asked about when the bucket becomes the same as one that carries it', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, '/bucket add name:Storm nick:st volume:10l cautions:barium');
    const both = await room.keeper(2, `${forChildren} same-as:st`);
    expect(both.title).toMatch(/barium.*sure/);
  });

  it('is not overlooked after glaze that nobody named: “children” is asked about again', async () => {
    const room = await openRoomWithGullGrey(['cautions', 'children']);
    await room.say(1, '/added bucket:gg what:glaze amount:1l');
    expect((await room.keeper(2, forChildren)).title).toMatch(/no keeper has said since what that was/);
    expect((await card(room)).marks).toEqual([]);
  });

  it('goes with “children” on no bucket', async () => {
    const room = await openRoomWithGullGrey();
    for (const hazard of ['copper', 'boron', 'manganese', 'toxic']) {
      const refused = await room.keeper(1, `${forChildren},${hazard} sure:yes`);
      expect(refused.title).toMatch(/is not for children/);
    }
  });
});

describe('a bucket held for a poison', () => {
  it('is released only by a keeper who has said that it was cleared', async () => {
    const room = await openRoomWithGullGrey(['cautions', 'lead']);
    const asked = await room.keeper(1, '/bucket release bucket:gg');
    expect(asked.title).toMatch(/on hold for lead.*after a laboratory.*still on hold/);
    expect((await room.say(2, '/water-or-stir bucket:gg')).title).toMatch(/On hold/);
    await room.keeper(3, String(asked.actions[0]?.line));
    expect((await room.say(4, '/water-or-stir bucket:gg')).title).not.toMatch(/On hold/);
  });

  it('that a keeper held for a hazard is asked about too, and one held for dirt is not', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, '/bucket hold bucket:gg why:"is it toxic?"');
    expect((await room.keeper(2, '/bucket release bucket:gg')).title).toMatch(/on hold for a hazard/);
    await room.keeper(3, '/bucket release bucket:gg sure:yes');
    await room.keeper(4, '/bucket hold bucket:gg why:"a sponge fell in"');
    await room.keeper(5, '/bucket release bucket:gg');
    expect((await room.say(6, '/water-or-stir bucket:gg')).title).not.toMatch(/On hold/);
  });
});

describe('a bucket with a material that nobody has explained', () => {
  const frit = `recipe:"Bob's frit 80, kaolin 20"`;

  it('is not for children, at its setting up or later', async () => {
    const room = await openGlazeRoom();
    const added = await room.keeper(0, `/bucket add name:Fog nick:fg ${frit} cautions:children`);
    expect(added).toMatchObject({ ok: false });
    expect(added.title).toMatch(/Children may not use.*Bob's frit/);
    await room.keeper(1, `/bucket add name:Fog nick:fg ${frit}`);
    const later = await room.keeper(2, '/bucket change bucket:fg cautions:children sure:yes');
    expect(later.title).toMatch(/Children may not use.*Bob's frit/);
    await room.keeper(3, '/bucket add name:Dew nick:dw cautions:children');
    expect((await room.keeper(4, `/bucket change bucket:dw ${frit}`)).title).toMatch(/Children may not use/);
    expect((await card(room, 'dw')).marks).toEqual(['children']);
  });

  it('says so on its card and with every answer', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, `/bucket add name:Fog nick:fg ${frit}`);
    for (const line of ['/bucket show bucket:fg', '/water-or-stir bucket:fg'])
      expect((await room.say(1, line)).cautions.join(' ')).toMatch(/Bob's frit.*Treat it as toxic/);
  });
});
