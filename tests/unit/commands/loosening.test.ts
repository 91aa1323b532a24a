import { describe, expect, it } from 'vitest';
import {
  openGlazeRoom,
  openRoomWithGullGrey,
  stateOf,
  type GlazeRoom,
} from '../../helpers/room/glazeRoom.ts';

type Room = GlazeRoom;
const verdict = (answer: { data: Record<string, unknown> }) =>
  answer.data['verdict'] as Record<string, unknown>;

/** Stirred long, weighed and timed: thick at the right gravity. */
const readThick = async (room: Room, minutes: number, seconds: number | string) => {
  await room.say(minutes, '/stirred bucket:1 minutes:6');
  await room.keeper(minutes + 1, `/reading bucket:1 gravity:1.44 within:0.002 seconds:${seconds}`);
  return room.keeper(minutes + 1, `/reading bucket:1 gravity:1.44 within:0.002 seconds:${seconds}`);
};

describe('a bucket that is thick at the right gravity', () => {
  it('gets a drop in a jar of 250 ml first, and a press that logs what that is in the pail', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await readThick(room, 1, 24);
    // A drop is 0.05 ml (20 to the millilitre, common practice); 15 l are 60 jars of 250 ml: 60 drops, 3 ml.
    expect(verdict(answer)).toMatchObject({ step: 'deflocculate', jarDrops: 1, asks: [] });
    expect(Number(verdict(answer)['deflocculantMl'])).toBeCloseTo(3, 6);
    expect(answer.title).toMatch(
      /1 drop of deflocculant in a 250 ml jar of it\. If that runs right, stir 3 ml into the pail\.$/,
    );
    expect(answer.actions.map(({ line }) => line.replace(/ after:\d+/, ''))).toEqual([
      '/added bucket:1 what:deflocculant amount:3ml',
      '/added bucket:1 what:deflocculant amount:6ml',
      '/reading bucket:1',
    ]);
    const press = answer.actions[0]?.line ?? '';
    expect(await room.keeper(3, press)).toMatchObject({ ok: true });
    const { deflocculant } = await stateOf(room);
    expect(deflocculant?.doses).toBe(1);
    expect(deflocculant?.steps).toBeCloseTo(1, 9);
    // A second press of the same button logs nothing.
    expect(await room.keeper(4, press)).toMatchObject({ ok: false });
  });

  it.each([
    ['8C', true],
    ['18C', false],
  ])('at %s: the jar is warmed first where the glaze is cold: %s', async (temperature, isWarmed) => {
    const room = await openRoomWithGullGrey();
    const answer = await readThick(room, 1, `32 temperature:${temperature}`);
    expect(verdict(answer)).toMatchObject({ step: 'deflocculate', jarDrops: 1 });
    expect(verdict(answer)['jarWarm']).toBe(isWarmed ? true : undefined);
    expect(/warm to room temperature first/.test(answer.reasons.join(' '))).toBe(isWarmed);
  });

  it('is said by drops in the pail when that is small', async () => {
    const room = await openRoomWithGullGrey(['pail', '5l'], ['volume', '2.5l']);
    // 2.5 l are ten jars: 10 drops, 0.5 ml
    expect((await readThick(room, 1, 24)).title).toMatch(/stir 10 drops \(0\.5 ml\)/);
  });

  it('is for each litre, with three presses for how full it is, while nobody knows', async () => {
    const room = await openGlazeRoom();
    await room.keeper(
      0,
      '/bucket add name:"Gull Grey" pail:19l gravity:1.42-1.46 seconds:12-16 cup:ford4 solids:2.6',
    );
    const answer = await readThick(room, 1, 24);
    expect(verdict(answer)).toMatchObject({ step: 'deflocculate', asks: ['level'] });
    // A drop in 250 ml is four in a litre, 0.2 ml.
    expect(answer.title).toMatch(/4 drops \(0\.2 ml\) for each litre in the pail/);
    expect(answer.actions.map(({ label }) => label).join()).toMatch(/half full.*two thirds full.*90 % full/);
    const filled = await room.keeper(3, answer.actions[1]?.line ?? '');
    expect(verdict(filled)).toMatchObject({ step: 'deflocculate', asks: [] });
    expect(filled.actions[0]?.line).toMatch(/^\/added bucket:1 what:deflocculant amount:2\.\d+ml/);
  });

  it('learns what a drop does from the readings on each side, and says so with its interval', async () => {
    const room = await openRoomWithGullGrey();
    await readThick(room, 1, 40);
    await room.keeper(3, '/added bucket:1 what:deflocculant amount:3ml');
    await readThick(room, 4, 32);
    const { deflocculant } = await stateOf(room);
    expect(deflocculant?.flow?.map(({ steps }) => Number(steps.toFixed(3)))).toEqual([0, 0, 1, 1]);
    const answer = await room.keeper(6, '/water-or-stir bucket:1');
    const told = answer.reasons.find((one) => one.includes('Learned'));
    // 40 to 32 s: a drop takes a fifth off.
    const [, less, least, most] =
      /takes (\d+) % off its seconds, 9 times out of 10 between (\d+) and (\d+) %/.exec(told ?? '') ?? [];
    expect(Number(less)).toBeGreaterThanOrEqual(17);
    expect(Number(less)).toBeLessThanOrEqual(24);
    expect(Number(least)).toBeLessThan(20);
    expect(Number(most)).toBeGreaterThan(20);
  });

  it('stops after two drops that changed nothing', async () => {
    const room = await openRoomWithGullGrey();
    let minutes = 1;
    for (let i = 0; i < 2; i++) {
      await readThick(room, minutes, 30);
      await room.keeper(minutes + 2, '/added bucket:1 what:deflocculant amount:3ml');
      minutes += 10;
    }
    const answer = await readThick(room, minutes, 30);
    expect(verdict(answer)).toMatchObject({ step: 'ask-keeper' });
    expect(answer.title).toMatch(/two doses of deflocculant changed nothing/);
  });

  it('has a keeper look when as much is in as 0.2 % of its dry weight', async () => {
    const room = await openRoomWithGullGrey();
    await readThick(room, 1, 90);
    // 10 725 g dry (Brongniart): 0.2 % is 21.45 ml; 7 steps of 3 ml are 21 ml.
    await room.keeper(3, '/added bucket:1 what:deflocculant amount:9ml');
    await room.keeper(4, '/added bucket:1 what:deflocculant amount:9ml');
    const more = await readThick(room, 5, 60);
    expect(more.actions.map(({ line }) => line).join()).not.toMatch(/amount:6ml/);
    await room.keeper(7, '/added bucket:1 what:deflocculant amount:3ml');
    const answer = await readThick(room, 8, 45);
    expect(verdict(answer)).toMatchObject({ step: 'ask-keeper' });
    expect(answer.title).toMatch(/much deflocculant is in it/);
    await room.keeper(10, '/added bucket:1 what:dry amount:100g remake:yes');
    expect((await stateOf(room)).deflocculant).toBeUndefined();
  });

  it('names the studio’s own deflocculant, once a keeper has said which', async () => {
    const room = await openRoomWithGullGrey();
    expect((await readThick(room, 1, 24)).reasons.join(' ')).toMatch(/\/studio set deflocculant:/);
    expect(await room.keeper(3, '/studio set deflocculant:"sodium silicate, half water"')).toMatchObject({
      ok: true,
    });
    const answer = await room.keeper(3, '/dose bucket:1 what:deflocculant');
    expect(answer.reasons.join(' ')).toMatch(/sodium silicate, half water.*20 drops are a millilitre/);
    expect(answer.data).toMatchObject({ what: 'deflocculant', jarDrops: 1 });
  });

  it('sends a member to a keeper, and never asks for more than three steps', async () => {
    const room = await openRoomWithGullGrey();
    const keeper = await readThick(room, 1, 24);
    // In the jar, into the pail; the third is to measure it again, under it. It stands alone in a notification.
    expect(keeper.title.match(/\b(try|stir) \d/g)).toHaveLength(2);
    expect(keeper.reasons.join(' ')).toMatch(/After that: measure again/);
    expect(keeper.title.length).toBeLessThan(140);
    const member = await room.say(3, '/water-or-stir bucket:1');
    expect(verdict(member)).toMatchObject({ step: 'ask-keeper', keeperStep: 'deflocculate' });
  });
});

describe('a borate gel', () => {
  it.each([
    ['a recipe with colemanite', '/bucket change bucket:1 recipe:"feldspar 40, colemanite 30, silica 30"'],
    ['a recipe with ulexite', '/bucket change bucket:1 recipe:"feldspar 40, ulexite 30, silica 30"'],
    [
      'a natural calcium borate',
      '/bucket change bucket:1 recipe:"feldspar 40, calcium borate 30, silica 30"',
    ],
    ['a keeper’s word', '/bucket change bucket:1 cautions:boron'],
  ])('leads to its keeper and the handbook, not to more deflocculant: by %s', async (_, line) => {
    const room = await openRoomWithGullGrey();
    expect(await room.keeper(0, line)).toMatchObject({ ok: true });
    const answer = await readThick(room, 1, 30);
    expect(verdict(answer)).toMatchObject({ step: 'ask-keeper' });
    expect(verdict(answer)['deflocculantMl']).toBeUndefined();
    expect(answer.title).toMatch(/borate glazes do by themselves.*Ask its keeper/);
    expect(answer.dont.join(' ')).toMatch(/Don't add deflocculant/);
    const note = answer.actions.find(({ line: one }) => one.startsWith('/ask'));
    const read = await room.say(3, note?.line ?? '');
    expect(JSON.stringify(read)).toMatch(/soluble borate gel by themselves/);
    const dose = await room.keeper(3, '/dose bucket:1 what:deflocculant');
    expect(dose.data).toMatchObject({ doseMl: 0, why: 'gels-by-itself' });
  });

  it('is not one for a frit’s boron, which does not dissolve', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/bucket change bucket:1 recipe:"feldspar 40, boron frit 30, silica 30"');
    expect(verdict(await readThick(room, 1, 30))).toMatchObject({ step: 'deflocculate' });
  });
});
