import { beforeEach, describe, expect, test } from 'vitest';
import { coatStream } from '../../../src/studio/ids.ts';
import { openGlazeRoom, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

let room: GlazeRoom;

/** Minutes after noon, UTC, on Sunday 1 March 2026. */
const sevenPm = 7 * 60;

beforeEach(async () => {
  room = await openGlazeRoom();
});

const entries = () => room.store.books.read(room.studio, (book) => book.entries(coatStream, { most: 100 }));
const on = (more: string, minutes = sevenPm) => room.say(minutes, `/coat on ${more}`);

describe('a coat', () => {
  test('is ready at eight in the morning after, by the house rule', async () => {
    const answer = await on('kind:wax pieces:bowl');
    expect(answer).toMatchObject({
      ok: true,
      private: true,
      data: { coats: [{ id: 'c-1', onAt: '2026-03-01T19:00:00.000Z', readyAt: '2026-03-02T08:00:00.000Z' }] },
    });
  });

  test('that fits its plan is told so', async () => {
    expect((await on('kind:wax pieces:bowl for:"tomorrow 8am"')).title).toMatch(
      /your plan for .* 08:00 fits/,
    );
  });

  test('of tape is ready at once, and of melted wax once it is cold', async () => {
    expect((await on('kind:tape pieces:rim')).data).toMatchObject({ coats: [{ ready: true }] });
    expect((await on('kind:hot-wax pieces:foot')).data).toMatchObject({
      coats: [{ readyAt: '2026-03-01T19:15:00.000Z', ready: false }],
    });
  });

  test('may be noted later, for when it went on', async () => {
    const answer = await room.say(24 * 60, '/coat on kind:wax pieces:bowl when:"last night 9pm"');
    expect(answer.data).toMatchObject({
      coats: [{ onAt: '2026-03-01T21:00:00.000Z', readyAt: '2026-03-02T09:00:00.000Z', ready: true }],
    });
  });

  test('waits longer by a keeper’s rule, and in the room’s usual damp', async () => {
    await room.keeper(0, '/studio drying hours:15h');
    expect((await on('kind:wax pieces:bowl')).data).toMatchObject({
      coats: [{ readyAt: '2026-03-02T10:00:00.000Z' }],
    });
    await room.keeper(1, '/studio drying humidity:75');
    // Half the vapour deficit doubles the hours: 30 h after 19:00 is 01:00, and the studio opens at 08:00.
    expect((await on('kind:wax pieces:jug')).data).toMatchObject({
      coats: [{ readyAt: '2026-03-03T08:00:00.000Z' }],
    });
  });

  test('waits for a studio that is closed', async () => {
    await room.keeper(0, '/studio hours monday:closed closed:"2026-03-03"');
    expect((await on('kind:wax pieces:bowl')).data).toMatchObject({
      coats: [{ readyAt: '2026-03-04T08:00:00.000Z' }],
    });
  });

  test('of a second layer starts anew, and goes by its first id too', async () => {
    await on('kind:wax pieces:"3 bowls"');
    const second = await on('kind:wax pieces:"3 Bowls"', sevenPm + 120);
    expect(second.data).toMatchObject({
      coats: [{ id: 'c-2', readyAt: '2026-03-02T09:00:00.000Z', layer: 2 }],
    });
    expect(second.reasons.join()).toMatch(/the time starts again/);
    expect(await room.say(sevenPm + 121, '/coat off coat:c-1')).toMatchObject({
      ok: true,
      data: { coat: 'c-2' },
    });
  });

  // Noon on 10 March is 9 days on. Twelve degrees and 90 %: three times the hours, 36 h.
  test.each([
    ['an hour later, over damp wax', 60, 2, '36 h'],
    ['four days later, over dry wax', 4 * 24 * 60, 2, '12 h'],
    ['thirteen days later', 13 * 24 * 60, 2, '12 h'],
    ['fifteen days later, on other bowls of that name', 15 * 24 * 60, 1, '12 h'],
    ['two months later', 61 * 24 * 60, 1, '12 h'],
  ])('of the same name %s', async (_, after, layer, hours) => {
    const day = 9 * 24 * 60;
    await on('kind:wax pieces:"3 bowls" temperature:12C humidity:90', day);
    const next = await on('kind:wax pieces:"3 bowls"', day + after);
    expect(next.data).toMatchObject({ coats: [{ id: 'c-2', layer }] });
    expect(next.reasons.join()).toContain(`which takes ${hours} (until`);
    expect(/This is layer 2, over c-1/.test(next.reasons.join())).toBe(layer === 2);
  });

  test('of another kind on the same pieces is reported with the first', async () => {
    await on('kind:wax pieces:"3 bowls"');
    const second = await on('kind:tape pieces:"3 bowls"');
    expect(second.reasons.join()).toMatch(/also have wax emulsion on \(c-1\), ready .* 08:00/);
    expect((await room.say(sevenPm, '/coat list')).data).toMatchObject({
      coats: [{ id: 'c-1' }, { id: 'c-2' }],
    });
  });
});

describe('the cautions of a coat', () => {
  test.each([
    ['hot-wax', /can catch fire and burn you\. Keep a lid at hand, never pour water/],
    ['latex', /ammonia,.*allergic/],
    ['wax', /kiln room while it fires/],
    ['hot-wax', /kiln room while it fires/],
  ])('of %s are shown', async (kind, caution) => {
    expect((await on(`kind:${kind} pieces:bowl`)).cautions.join()).toMatch(caution);
  });

  test('of cold say that an emulsion may never be a film, and of tape nothing', async () => {
    expect((await on('kind:wax pieces:bowl temperature:8C')).cautions.join()).toMatch(/never form a film/);
    expect((await on('kind:wax pieces:jug temperature:12C')).cautions.join()).not.toMatch(/film/);
    expect((await on('kind:tape pieces:rim temperature:8C')).cautions).toEqual([]);
  });

  test('latex is a mask to peel; wax that was spilled wants a new bisque', async () => {
    expect((await on('kind:latex pieces:bowl')).reasons.join()).toMatch(/off when the glaze/);
    expect((await on('kind:wax pieces:bowl')).reasons.join()).toMatch(/another bisque firing/);
  });
});

describe('what makes no sense', () => {
  test.each([
    ['a coat of the future', 'kind:wax pieces:bowl when:"tomorrow 9pm"', /has not happened yet/],
    ['a coat of years ago', 'kind:wax pieces:bowl when:"2025-01-01T10:00Z"', /more than a year ago/],
    ['a coat of weeks ago', 'kind:wax pieces:bowl when:"2026-02-01T10:00Z"', /more than two weeks ago/],
    ['a day without an hour', 'kind:wax pieces:bowl when:yesterday', /no time of day/],
    ['a plan that is over', 'kind:wax pieces:bowl for:"2026-02-28T10:00Z"', /is in the past/],
    ['500 pieces in a line', 'kind:wax pieces:"500 bowls"', /100 pieces is the most/],
    ['500 pieces one by one', `kind:wax pieces:"${'bowl, '.repeat(500)}"`, /100 pieces is the most/],
    ['no pieces', 'kind:wax pieces:" "', /^pieces is missing/],
    ['no such resist', 'kind:glue pieces:bowl', /not one of these: wax, latex, hot-wax, tape/],
    ['air of a kiln', 'kind:wax pieces:bowl temperature:900C', /too high/],
    ['air wetter than water', 'kind:wax pieces:bowl humidity:140', /too high/],
  ])('%s is refused, and nothing saved', async (_what, line, why) => {
    const answer = await on(line);
    expect(answer).toMatchObject({ ok: false, kind: 'refusal' });
    expect(answer.title).toMatch(why);
    expect(await entries()).toEqual([]);
    expect(room.bugs).toEqual([]);
  });

  test('a first layer after the second is refused, and says how to put it right', async () => {
    await on('kind:wax pieces:bowl');
    const before = await on('kind:wax pieces:bowl when:"6pm"');
    expect(before.title).toMatch(/take it back first: \/undo entry:c-1/);
    expect(await entries()).toHaveLength(1);
  });

  test('sizes and marks are no counts: two bowls of 120 cm are two', async () => {
    expect(await on('kind:tape pieces:"2 bowls, 120cm platter and 300 mm dish"')).toMatchObject({ ok: true });
  });

  test.each([
    ['/studio set zone:Mars/Olympus', /not a time zone/],
    ['/studio hours daily:closed', /would never open/],
    ['/studio hours monday:22:00-22:00', /opens and closes at the same time/],
    ['/studio hours monday:8-10pm', /morning or evening/],
    ['/studio hours closed:2026-02-30', /not a date/],
    ['/studio hours closed:"2026-12-26 to 2026-12-24"', /ends before it starts/],
    ['/studio session day:tuesday hours:off', /no such session/],
    ['/studio drying hours:1000h', /too high/],
    ['/studio reminders lead:0min', /too low/],
    ['/studio firing when:"yesterday 8am"', /in the past/],
    ['/studio hours', /Say what to set/],
  ])('%s is refused', async (line, why) => {
    const answer = await room.keeper(0, line);
    expect(answer).toMatchObject({ ok: false });
    expect(answer.title).toMatch(why);
  });

  test('a studio whose hours came to be closed for good is told, and no coat is saved', async () => {
    await room.keeper(0, '/studio hours daily:closed monday:08:00-22:00');
    await room.keeper(1, '/studio hours tuesday:08:00-22:00');
    await room.keeper(2, '/studio hours monday:closed');
    await room.keeper(3, '/undo entry:s-2');
    const answer = await on('kind:wax pieces:bowl');
    expect(answer).toMatchObject({ ok: false });
    expect(answer.title).toMatch(/never opens/);
    expect(await entries()).toEqual([]);
  });

  test('somebody else’s coat is not yours to take off, nor one that is off', async () => {
    await on('kind:wax pieces:bowl');
    expect((await room.say(sevenPm, '/coat off coat:c-1', 'Teo')).title).toMatch(/somebody else's/);
    expect(await room.keeper(sevenPm, '/coat off coat:c-1')).toMatchObject({ ok: true });
    expect((await room.say(sevenPm, '/coat off coat:c-1')).title).toMatch(/off already/);
    expect((await room.say(sevenPm, '/coat off coat:c-9')).title).toMatch(/no coat/);
  });

  test('somebody else’s reminder is none of yours', async () => {
    await on('kind:wax pieces:bowl');
    expect((await room.say(sevenPm, '/remind done reminder:c-1-ready', 'Teo')).title).toMatch(/no reminder/);
    expect(await room.say(sevenPm, '/remind done reminder:c-1-ready')).toMatchObject({ ok: true });
    expect((await room.say(sevenPm, '/remind list')).data).toEqual({ reminders: [] });
  });
});
