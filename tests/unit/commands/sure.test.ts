import { describe, expect, it } from 'vitest';
import { gullGreyLine, openGlazeRoom } from '../../helpers/room/glazeRoom.ts';

describe('/studio set sure:', () => {
  it('takes a chance as a number, in per cent or as a part of one, and keeps it when it refuses another', async () => {
    const room = await openGlazeRoom();
    expect((await room.say(0, '/studio show')).data).toMatchObject({ sure: 0.95 });
    const taken = ['90', '"90 %"', '90%', '0.9'];
    for (const [i, typed] of taken.entries()) {
      const set = await room.keeper(1 + i, `/studio set sure:${typed}`);
      expect(set, typed).toMatchObject({ ok: true, data: { sure: 0.9 } });
    }
    for (const [i, typed] of ['20', '0.3', '100', 'very'].entries())
      expect((await room.keeper(10 + i, `/studio set sure:${typed}`)).kind, typed).toBe('refusal');
    expect((await room.say(20, '/studio show')).data).toMatchObject({ sure: 0.9 });
    expect((await room.say(21, '/studio set sure:80')).kind).toBe('refusal');
  });
});

describe('/water-or-stir', () => {
  it('says how sure it is, null for what has no window, and what is wanted next', async () => {
    const room = await openGlazeRoom();
    await room.keeper(1, '/bucket add name:Heron gravity:1.42-1.46 volume:15l pail:19l');
    const verdict = async (at: number) => (await room.say(at, '/water-or-stir bucket:Heron')).data['verdict'];
    expect(await verdict(2)).toMatchObject({
      step: 'stir',
      sure: { gravity: expect.closeTo(0.24, 1), flow: null, both: null },
      // After the stir it is weighed.
      asks: ['weight'],
    });
  });

  it('asks for a weight and seconds of a stirred bucket that was never measured, and for nothing after both', async () => {
    const room = await openGlazeRoom();
    await room.keeper(1, gullGreyLine());
    const verdict = async (at: number) => (await room.say(at, '/water-or-stir bucket:gg')).data['verdict'];
    await room.say(4, '/stirred bucket:gg minutes:3');
    expect(await verdict(5)).toMatchObject({ step: 'measure', asks: ['weight', 'seconds'] });
    await room.say(6, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes');
    // Weighed well and timed once in mid-window: gravity is surely right, flow nearly.
    expect(await verdict(7)).toMatchObject({
      step: 'use',
      sure: {
        gravity: expect.closeTo(0.99, 1),
        flow: expect.closeTo(0.98, 1),
        both: expect.closeTo(0.98, 1),
      },
      asks: [],
    });
  });
});
