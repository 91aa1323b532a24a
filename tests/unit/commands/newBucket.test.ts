import { describe, expect, it } from 'vitest';
import { openGlazeRoom, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const verdict = (answer: { data: Record<string, unknown> }) =>
  answer.data['verdict'] as Record<string, unknown>;

const newBucket = async (line = '/bucket add name:"Kelp" pail:19l volume:15l'): Promise<GlazeRoom> => {
  const room = await openGlazeRoom();
  expect(await room.keeper(0, line)).toMatchObject({ ok: true });
  return room;
};

const pressOf = (answer: { actions: { label: string; line: string }[] }, label: RegExp) => {
  const found = answer.actions.find((one) => label.test(one.label));
  if (!found) throw new Error(answer.actions.map((one) => one.label).join(' | '));
  return found.line;
};

describe('a new bucket without a window', () => {
  it('goes from its first reading to “Use it” by one press of a keeper', async () => {
    const room = await newBucket();
    const first = await room.say(1, '/reading bucket:1 gravity:1.44 within:0.01 seconds:14 stirred:yes');
    expect(verdict(first)).toMatchObject({ step: 'ask-keeper', rule: 'no-window' });
    expect(first.title).toMatch(/1\.44.*The keepers see it on their round.*test tile/);
    // A member can try it meanwhile, and cannot set it.
    expect(first.actions.map(({ line }) => line)).toEqual(['/dip tile bucket:1']);

    const round = await room.keeper(5, '/round');
    const row = round.facts.find(({ text }) => text.includes('1.44'));
    expect(row?.text).toMatch(/If it coats right, its window is 1\.42 to 1\.46 and 12 to 16 s/);

    const asked = await room.keeper(5, '/water-or-stir bucket:1');
    // ± 0.02 and ± 15 % (common practice): 14 s is 11.9 to 16.1.
    expect(verdict(asked)['proposed']).toMatchObject({
      from: 'reading',
      gravity: { low: 1.42, high: 1.46 },
      seconds: { low: 12, high: 16 },
    });
    const press = pressOf(asked, /^This is right: 1\.44, window 1\.42 to 1\.46, 12 to 16 s$/);
    expect(await room.say(6, press)).toMatchObject({ ok: false });
    expect(await room.keeper(6, press)).toMatchObject({ ok: true });
    const after = await room.say(7, '/water-or-stir bucket:1');
    expect(verdict(after)).toMatchObject({ step: 'use' });
    expect(after.title).toMatch(/Use it/);
  });

  it('goes by what came out well of the kiln, before what it reads now', async () => {
    const room = await newBucket();
    await room.say(1, '/reading bucket:1 gravity:1.50 within:0.005 seconds:20 stirred:yes');
    expect(await room.say(60, '/fired bucket:1 result:good dipped:"50 min ago"')).toMatchObject({ ok: true });
    await room.say(61, '/reading bucket:1 gravity:1.40 within:0.005 seconds:11 stirred:yes');
    const asked = await room.keeper(62, '/water-or-stir bucket:1');
    expect(verdict(asked)['proposed']).toMatchObject({
      from: 'fired',
      gravity: { low: 1.48, high: 1.52 },
      seconds: { low: 17, high: 23 },
    });
    expect(asked.title).toMatch(/A piece that came out well was dipped at 1\.50/);
  });

  it('goes by its test tiles, before what it reads now', async () => {
    const room = await newBucket();
    await room.say(1, '/dip tile bucket:1 seconds:3 thickness:0.8mm gravity:1.47');
    await room.say(2, '/reading bucket:1 gravity:1.42 within:0.005 stirred:yes');
    const asked = await room.keeper(3, '/water-or-stir bucket:1');
    expect(verdict(asked)['proposed']).toMatchObject({ from: 'tiles', gravity: { low: 1.45, high: 1.49 } });
    expect(await room.keeper(4, pressOf(asked, /Set its window: 1\.45 to 1\.49/))).toMatchObject({
      ok: true,
    });
  });

  it('proposes nothing from a reading that was voided, and asks to be measured', async () => {
    const room = await newBucket();
    await room.say(1, '/reading bucket:1 gravity:1.44 within:0.01 stirred:yes');
    await room.say(2, '/reading bucket:1 seen:cake');
    await room.say(3, '/stirred bucket:1 with:mixer seen:cake-gone');
    const asked = await room.keeper(4, '/water-or-stir bucket:1');
    expect(verdict(asked)).toMatchObject({ step: 'measure' });
    expect(verdict(asked)['proposed']).toBeUndefined();
  });

  it('has its seconds proposed too, when only the gravity has a window', async () => {
    const room = await newBucket('/bucket add name:"Kelp" pail:19l volume:15l gravity:1.42-1.46');
    await room.say(1, '/reading bucket:1 gravity:1.44 within:0.005 seconds:14 look:right stirred:yes');
    const asked = await room.keeper(2, '/water-or-stir bucket:1');
    expect(verdict(asked)).toMatchObject({ step: 'use' });
    expect(await room.keeper(3, pressOf(asked, /^These seconds are right: 12 to 16 s$/))).toMatchObject({
      ok: true,
    });
    expect(verdict(await room.say(4, '/water-or-stir bucket:1'))).toMatchObject({ step: 'use' });
  });

  it('is no dead end for a bucket that is marked for gloves', async () => {
    const room = await newBucket(
      '/bucket add name:"Kelp" pail:19l volume:15l gravity:1.42-1.46 cautions:gloves',
    );
    const unread = await room.say(1, '/reading bucket:1 gravity:1.44 within:0.005 stirred:yes');
    expect(unread.title).toMatch(/Time the flow cup now/);
    expect(unread.actions.length).toBeGreaterThan(0);
    await room.say(2, '/reading bucket:1 gravity:1.44 within:0.005 seconds:14 stirred:yes');
    const asked = await room.keeper(3, '/water-or-stir bucket:1');
    await room.keeper(3, pressOf(asked, /These seconds are right/));
    expect(verdict(await room.say(4, '/water-or-stir bucket:1'))).toMatchObject({ step: 'use' });
  });
});
