import { beforeEach, describe, expect, it } from 'vitest';
import { gullGreyLine, openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

let room: GlazeRoom;
beforeEach(async () => {
  room = await openRoomWithGullGrey();
  for (const [name, nick] of [
    ['Sandbar', 'sb'],
    ['Kelp', 'kelp'],
    ['Bog', 'bog'],
  ] as const)
    await room.keeper(0, gullGreyLine({ name, nick }));
});

const bucket = async (no: number) =>
  (await room.store.books.read(room.studio, (book) => book.buckets())).find((one) => one.no === no);

describe('a bucket that is marked with a hazard', () => {
  it('names the buckets that took glaze from it since its last remake, with a press for each', async () => {
    await room.say(1, '/added bucket:bog what:glaze amount:1l from:gg');
    await room.keeper(2, '/added bucket:gg what:dry amount:5kg remake:yes');
    await room.say(3, '/added bucket:sb what:glaze amount:1l from:gg');
    const undone = await room.say(4, '/added bucket:kelp what:glaze amount:1l from:gg');
    await room.say(5, `/undo entry:${String(undone.data['alsoEntry'])}`);
    await room.keeper(6, '/bucket release bucket:sb');
    const answer = await room.keeper(6, '/bucket change bucket:gg cautions:lead');
    expect(answer.cautions[0]).toMatch(
      /glaze from it went into Sandbar \(bucket 2\), not yet marked with lead/,
    );
    expect(answer.actions.map(({ label }) => label)).toEqual(['Mark Sandbar too']);
    const marked = await room.keeper(7, answer.actions[0]?.line ?? '');
    expect(marked.ok).toBe(true);
    expect(await bucket(2)).toMatchObject({ settings: { cautions: ['lead'] }, hold: { cause: 'hazard' } });
    const again = await room.keeper(8, '/bucket change bucket:gg cautions:lead,barium');
    expect(again.cautions[0]).toMatch(/not yet marked with barium/);
  });

  it('says nothing of others when none took any, or when nothing new is marked', async () => {
    await room.say(1, '/added bucket:sb what:glaze amount:1l from:gg');
    const nothing = await room.keeper(2, '/bucket change bucket:gg rest:5h');
    expect([nothing.ok, nothing.actions, JSON.stringify(nothing.cautions)]).toEqual([true, [], '[]']);
    const none = await room.keeper(3, '/bucket change bucket:kelp cautions:barium');
    expect(JSON.stringify(none.cautions)).not.toContain('went into');
  });
});

describe('a note that names a hazard', () => {
  it.each(['/stirred bucket:gg', '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes'])(
    'at %s is answered by the caution and a press that holds the bucket',
    async (line) => {
      for (const [as, from] of [
        ['say', 10],
        ['keeper', 20],
      ] as const) {
        const answer = await room[as](from, `${line} note:"somebody put lead in"`);
        expect(answer.cautions.join(' ')).toMatch(/Your note names lead.*Holds lead: poisonous/);
        const [first] = answer.actions;
        const pressed = await room[as](from + 1, first?.line ?? '');
        expect(pressed.ok).toBe(true);
        expect((await bucket(1))?.hold).toMatchObject({ cause: 'hazard' });
        await room.keeper(from + 2, '/bucket release bucket:gg sure:yes');
        await room.keeper(from + 2, '/bucket change bucket:gg cautions:none sure:yes note:"tested"');
      }
    },
  );

  it('that the bucket is marked with, or that denies it, is no news', async () => {
    await room.keeper(1, '/bucket change bucket:gg cautions:barium');
    for (const note of ['the barium had settled', 'our lead-free frit'])
      expect((await room.say(2, `/stirred bucket:gg note:"${note}"`)).cautions.join(' ')).not.toContain(
        'Your note names',
      );
  });
});
