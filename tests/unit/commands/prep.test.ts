import { describe, expect, it } from 'vitest';
import { openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

interface Step {
  step: string;
  at: string;
  done: boolean;
}
const steps = (answer: { data: Record<string, unknown> }) => answer.data['steps'] as Step[];
const names = (answer: { data: Record<string, unknown> }) => steps(answer).map(({ step }) => step);
const at = (answer: { data: Record<string, unknown> }, step: string) =>
  steps(answer).find((one) => one.step === step)?.at;

/** Noon on 1 March 2026 in UTC is 08:30 in St John's, half past. */
const open = async (): Promise<GlazeRoom> => {
  const room = await openRoomWithGullGrey();
  await room.keeper(0, '/studio set zone:America/St_Johns');
  await room.say(1, '/reading bucket:gg gravity:1.44 within:0.002 seconds:14 stirred:yes');
  for (const [seconds, mm] of [
    [1, 0.5],
    [4, 0.8],
    [9, 1.1],
  ])
    await room.say(1, `/dip tile bucket:gg seconds:${seconds} thickness:${mm}mm absorption:12`);
  return room;
};

describe('a plan for a piece', () => {
  it('goes from dust to foot, with the dip’s seconds', async () => {
    const room = await open();
    const answer = await room.say(5, '/prep piece:"tall jug" bucket:gg thickness:1mm absorption:12');
    expect(names(answer)).toEqual(['dust', 'sheen', 'bucket', 'dip', 'foot']);
    // ((1 − 0.2)/0.3)² = 7.11 s by its tiles
    expect(Number(answer.data['seconds'])).toBeCloseTo(7.11, 2);
    expect(answer.data).toMatchObject({
      entry: 'p-1',
      piece: 'p-1',
      bucket: 1,
      conflicts: [],
      bisque: 'usual',
    });
    // 12:05 and 20 minutes for the sheen
    expect(at(answer, 'bucket')).toBe('2026-03-01T12:25:00.000Z');
    expect(answer.private).toBe(true);
  });

  it('puts every step in its order', async () => {
    const room = await open();
    await room.keeper(2, '/bucket add name:"Sea Fog" nick:sf gravity:1.42-1.46 solids:2.6');
    const answer = await room.say(
      5,
      '/prep piece:bowl bucket:gg second:sf underglaze:thin resist:latex surface:carved absorption:22',
    );
    expect(names(answer)).toEqual([
      'dust',
      'sheen',
      'underglaze',
      'resist',
      'night',
      'bucket',
      'wet',
      'carving',
      'dip',
      'second',
      'peel',
      'foot',
    ]);
    expect(answer.data['conflicts']).toEqual(['bucket', 'resist-on-texture']);
    expect(answer.reasons.join(' ')).toMatch(/Peel the latex off/);
  });

  it('waits for the resist’s night, by the studio’s wall clock', async () => {
    const room = await open();
    // 1 March, 12:05 UTC = 08:35 in St John's; dusted and dry at 08:55, twelve hours are over at 20:55, the night at 05:00
    // on the 2nd, and the studio opens at 08:00: 11:30 UTC.
    const answer = await room.say(5, '/prep piece:jug bucket:gg resist:wax when:"2026-03-01 19:00"');
    expect(at(answer, 'dip')).toBe('2026-03-02T11:30:00.000Z');
    expect(answer.data['conflicts']).toEqual(['too-early']);
    expect(answer.dont.join(' ')).toMatch(/too early/);
    // if a later time is planned, that time
    const later = await room.say(6, '/prep piece:jug bucket:gg resist:wax when:"2026-03-02 19:00"');
    expect(at(later, 'dip')).toBe('2026-03-02T22:30:00.000Z');
    expect(later.data['conflicts']).toEqual([]);
  });

  it('knows a coat that is on the piece already', async () => {
    const room = await open();
    await room.say(5, '/coat on kind:wax pieces:"Tall Jug" when:"2026-02-28 21:00"');
    const answer = await room.say(6, '/prep piece:"tall jug" bucket:gg');
    // on since 21:00 the evening before: 09:00 ends its twelve hours, 12:30 UTC
    expect(steps(answer).find(({ step }) => step === 'resist')?.done).toBe(true);
    expect(at(answer, 'dip')).toBe('2026-03-01T12:30:00.000Z');
  });

  it('warns of what does not go together', async () => {
    const room = await open();
    const thick = await room.say(5, '/prep piece:a bucket:gg underglaze:thick cone:02');
    expect(thick.data['conflicts']).toEqual(['thick-underglaze', 'tight-bisque']);
    const thin = await room.say(5, '/prep piece:b bucket:gg cone:010 wall:3mm thickness:0.1mm');
    expect(thin.data['conflicts']).toEqual(['dip', 'wetted-wall']);
    const night = await room.say(5, '/prep piece:c bucket:gg when:"2026-03-01 23:00"');
    expect(night.data['conflicts']).toEqual(['closed']);
    const wax = await room.say(5, '/prep piece:d bucket:gg resist:hot-wax');
    expect(wax.cautions.join(' ')).toMatch(/fire and burn you/);
    await room.keeper(6, '/bucket hold bucket:gg why:frozen');
    const held = await room.say(7, '/prep piece:e bucket:gg');
    expect(held.data['conflicts']).toEqual(['bucket']);
  });
});

describe('ticking steps off', () => {
  it('is remembered with the piece, moves its times, and can be taken back', async () => {
    const room = await open();
    await room.say(5, '/prep piece:"tall jug" bucket:gg underglaze:thin resist:wax');
    const ticked = await room.say(10, '/prep piece:"tall jug" done:dust,sheen');
    expect(ticked.data['entry']).toBe('p-2');
    // the sheen went at 12:10, but 20 minutes are counted from the sponge: 12:30 at the latest
    expect(at(ticked, 'underglaze')).toBe('2026-03-01T12:30:00.000Z');
    const waxed = await room.say(90, '/prep piece:p-1 done:underglaze,resist');
    // waxed at 13:30 UTC, 10:00 in St John's: dry overnight, and the studio opens at 08:00
    expect(at(waxed, 'dip')).toBe('2026-03-02T11:30:00.000Z');
    expect(
      steps(waxed)
        .filter(({ done }) => done)
        .map(({ step }) => step),
    ).toEqual(['dust', 'sheen', 'underglaze', 'resist']);
    await room.say(91, '/undo entry:p-3');
    const shown = await room.say(92, '/prep piece:p-1');
    expect(steps(shown).filter(({ done }) => done)).toHaveLength(2);
  });

  it('says that it is a plan of before, when only its name is typed', async () => {
    const room = await open();
    const first = await room.say(5, '/prep piece:"tall jug" bucket:gg');
    expect(first.title).not.toMatch(/goes on/);
    const again = await room.say(6, '/prep piece:"tall jug"');
    expect(again.title).toMatch(/^You planned this before \(p-1\)\. tall jug/);
    expect(again.reasons.join(' ')).toMatch(/another piece with that name, give its bucket as well\./);
    expect(again.data['entry']).toBeUndefined();
    await room.say(7, '/prep piece:p-1 done:dust,sheen,bucket,dip,foot');
    expect((await room.say(8, '/prep piece:"tall jug"')).title).toMatch(/^Plan p-1 is done\. /);
  });

  it('says why there is no dip time, and not that nothing was saved, for it was', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.002 seconds:14 stirred:yes');
    for (const mm of [0.7, 0.72, 0.69])
      await room.say(1, `/dip tile bucket:gg seconds:3 thickness:${mm}mm absorption:12`);
    const answer = await room.say(5, '/prep piece:"tall jug" bucket:gg thickness:1mm');
    expect(answer.data).toMatchObject({ entry: 'p-1', conflicts: ['dip'] });
    expect(answer.dont.join(' ')).toMatch(/Dip one shorter and one longer\.$/);
  });

  it('survives a new start of the program', async () => {
    const room = await open();
    await room.say(5, '/prep piece:"tall jug" bucket:gg');
    await room.say(6, '/prep piece:"tall jug" done:dust');
    const pieces = await room.store.books.read(room.studio, (book) => book.pieces());
    expect(pieces).toMatchObject([
      { id: 'p-1', said: { name: 'tall jug', bucket: 1 }, done: [{ step: 'dust' }] },
    ]);
  });

  it.each([
    ['/prep piece:vase done:dust', /You have no/],
    ['/prep piece:vase', /Which bucket/],
    ['/prep piece:"tall jug" done:peel', /That is not one of its steps:/],
    ['/prep piece:"tall jug" bucket:gg second:gg', /another bucket/],
    ['/prep piece:"tall jug" bucket:gg cone:99', /not a cone/],
  ])('is refused, and saves nothing: %s', async (line, why) => {
    const room = await open();
    await room.say(5, '/prep piece:"tall jug" bucket:gg');
    const before = await room.store.books.read(room.studio, (book) => book.pieces());
    const answer = await room.say(6, line);
    expect(answer.kind).toBe('refusal');
    expect(answer.title).toMatch(why);
    expect(await room.store.books.read(room.studio, (book) => book.pieces())).toEqual(before);
  });

  it('is for its own member, and keepers', async () => {
    const room = await open();
    await room.say(5, '/prep piece:"tall jug" bucket:gg');
    expect(await room.say(6, '/prep piece:p-1 done:dust', 'Ana')).toMatchObject({ kind: 'refusal' });
    expect(await room.keeper(6, '/prep piece:p-1 done:dust')).toMatchObject({ ok: true });
  });
});
