import { describe, expect, it } from 'vitest';
import { gullGreyLine, openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const day = 24 * 60;
const read = (bucket: string, gravity: number, seconds = 14) =>
  `/reading bucket:${bucket} gravity:${gravity} within:0.01 seconds:${seconds} stirred:yes`;

/** Gull Grey at 1.44, and Tern, a thick one, at 1.55. */
const twoBuckets = async () => {
  const room = await openRoomWithGullGrey();
  await room.keeper(0, gullGreyLine({ name: 'Tern', nick: 'tn', gravity: '1.53-1.57', seconds: '20-26' }));
  await room.say(1, read('gg', 1.44));
  await room.say(2, read('tn', 1.55, 23));
  return room;
};

const readings = async (room: GlazeRoom, minutes: number, bucket: string) =>
  (await room.say(minutes, `/bucket log bucket:${bucket}`)).reasons.filter((line) =>
    line.includes('gravity'),
  );

describe('a reading that is odd for its bucket and fits another', () => {
  it('asks whether it was that one; one press logs it there and takes it back here', async () => {
    const room = await twoBuckets();
    const odd = await room.say(day, read('gg', 1.55, 23));
    expect(odd.reasons[0]).toMatch(/^Was it Tern\?/);
    const [press] = odd.actions;
    expect(press).toMatchObject({ label: 'It was Tern' });
    const moved = await room.say(day + 3, String(press?.line));
    expect(moved.title).toMatch(/^Tern: /);
    expect(moved.data).toMatchObject({ undone: odd.data['entry'], gravity: 1.55 });
    expect(moved.reasons.join()).not.toMatch(/Was it/);
    // It was read when it was read, and Gull Grey is as it was.
    const grey = await room.say(day + 4, '/water-or-stir bucket:gg');
    expect(grey.data['verdict']).toMatchObject({ gravity: { value: 1.44, believed: true } });
    const tern = await room.say(day + 4, '/water-or-stir bucket:tn');
    expect(tern.data['verdict']).toMatchObject({ gravity: { value: 1.55 } });
    // Nothing is doubled, not by a second press either.
    expect(await readings(room, day + 5, 'tn')).toHaveLength(2);
    expect(await room.say(day + 6, String(press?.line))).toMatchObject({ ok: false });
    expect(await readings(room, day + 7, 'tn')).toHaveLength(2);
    expect(room.bugs).toEqual([]);
  });

  it('is not asked again once a second reading agrees with the first', async () => {
    const room = await twoBuckets();
    expect((await room.say(day, read('gg', 1.55, 23))).reasons.join()).toMatch(/Was it Tern/);
    expect((await room.say(day + 5, read('gg', 1.55, 23))).reasons.join()).not.toMatch(/Was it/);
  });

  it('is not moved when somebody has changed the other bucket since', async () => {
    const room = await twoBuckets();
    const odd = await room.say(day, read('gg', 1.55, 23));
    await room.say(day + 1, '/stirred bucket:tn');
    const moved = await room.say(day + 3, String(odd.actions[0]?.line));
    expect(moved.ok).toBe(false);
    expect(await readings(room, day + 5, 'tn')).toHaveLength(1);
    expect(await readings(room, day + 5, 'gg')).toHaveLength(2);
  });

  it('is not asked of a reading that fits, nor where two others fit alike', async () => {
    const room = await twoBuckets();
    expect((await room.say(day, read('gg', 1.44))).reasons.join()).not.toMatch(/Was it/);
    await room.keeper(
      day,
      gullGreyLine({ name: 'Skua', nick: 'sk', gravity: '1.53-1.57', seconds: '20-26' }),
    );
    await room.say(day + 1, read('sk', 1.55, 23));
    expect((await room.say(day + 9, read('gg', 1.55, 23))).reasons.join()).not.toMatch(/Was it/);
  });

  it('takes back only a reading, and only one’s own', async () => {
    const room = await twoBuckets();
    expect(await room.say(day, `${read('tn', 1.55, 23)} instead:1-1`)).toMatchObject({ kind: 'refusal' });
    const odd = await room.say(day, read('gg', 1.55, 23), 'Ana');
    const others = await room.say(day + 1, String(odd.actions[0]?.line));
    expect(others).toMatchObject({ kind: 'refusal' });
    expect(await readings(room, day + 2, 'tn')).toHaveLength(1);
  });
});

describe('a weight that may include the cup or not', () => {
  /** A paper cup of 30 g that holds 100 g of water: 174 g are 1.44 with it, 1.74 without. */
  const withCup = async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/studio vessel name:"paper cup" tare:30g water:100g temperature:20C');
    return room;
  };
  const weighing = '/reading bucket:gg weight:174g seconds:14 stirred:yes';

  it('is asked of a bucket that was never measured', async () => {
    const room = await withCup();
    expect(await room.say(1, weighing)).toMatchObject({ kind: 'choice' });
  });

  it('is settled by what is believed of the bucket, told, with one press for the other', async () => {
    const room = await withCup();
    await room.say(1, read('gg', 1.44));
    const told = await room.say(day, weighing);
    expect(told).toMatchObject({ ok: true, kind: 'answer' });
    expect(told.data['gravity']).toBeCloseTo(1.44, 2);
    expect(told.reasons.join(' ')).toMatch(/As without the cup, it would be a gravity of 1\.74/);
    const other = told.actions.find(({ label }) => label.startsWith('Scale set to zero first'));
    const changed = await room.say(day + 1, String(other?.line));
    expect(changed.data).toMatchObject({ undone: told.data['entry'], gravity: expect.closeTo(1.74, 2) });
    const log = await readings(room, day + 2, 'gg');
    expect(log.filter((line) => line.includes('1.74'))).toHaveLength(1);
    expect(room.bugs).toEqual([]);
  });
});
