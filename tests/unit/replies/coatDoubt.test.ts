import { describe, expect, it } from 'vitest';
import { openGlazeRoom, openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const hour = 60;
/** Seven in the evening of 1 March 2026, UTC. */
const evening = 7 * hour;
const on = (room: GlazeRoom, more: string, minute = evening) =>
  room.say(minute, `/coat on kind:wax pieces:bowls ${more}`);

describe('a coat that may never be dry', () => {
  it('says so in its headline when it is too cold for a film', async () => {
    const room = await openGlazeRoom();
    const answer = await on(room, 'temperature:8 humidity:85');
    expect(answer.title).toMatch(
      /^bowls: In this cold it may never form a film, and in air this damp .*\. Don’t glaze before /,
    );
    expect(answer.title).not.toMatch(/Ready/);
    // Neither does a plan fit, nor is it shown as ready in a list.
    const planned = await on(await openGlazeRoom(), 'temperature:8 for:"in 5 days 7pm"');
    expect(planned.title).not.toMatch(/fits/);
    expect((await room.say(evening + 1, '/coat list')).facts[0]?.text).toMatch(
      /may never form a film, and in air this damp it will hardly dry; not before/,
    );
    expect((await room.say(evening + 96 * hour, '/coat list')).facts[0]?.text).toMatch(
      /drying time is over, but.*Touch it/,
    );
    expect((await room.say(evening + 1, '/ask question:"is my wax dry?"')).title).toMatch(
      /never form a film/,
    );
  });

  // Dalton's law on the ASHRAE saturation pressures 2339 Pa at 20 °C, 1403 at 12 and 1073 at 8:
  // 2339 · 0.5 / (p · 0.05) = 10, 16.7 and 21.8.
  it.each([
    ['temperature:20 humidity:95', /10 times more slowly/],
    ['temperature:12 humidity:95', /17 times more slowly/],
    ['temperature:20 humidity:100', /does not dry a coat at all/],
  ])('says that it will hardly dry: %s', async (air, times) => {
    const answer = await on(await openGlazeRoom(), air);
    expect(answer.title).toMatch(/^bowls: In air this damp it will hardly dry\. Don’t glaze before /);
    expect(answer.reasons.join(' ')).toMatch(times);
    expect(answer.cautions.join(' ')).toMatch(/Warm the room, dry its air/);
  });

  it('says it by the studio’s usual air too, and not of what needs no film', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/studio drying temperature:8');
    expect((await on(room, '')).title).toMatch(/never form a film/);
    const tape = await room.say(evening, '/coat on kind:tape pieces:rims temperature:8');
    expect(tape.title).toMatch(/Ready at once/);
  });

  it('is not doubted in a usual room', async () => {
    expect((await on(await openGlazeRoom(), 'temperature:15 humidity:70')).title).toMatch(/^bowls: Ready /);
  });
});

it('a coat that is only planned dries in the studio’s usual air', async () => {
  const room = await openRoomWithGullGrey();
  const dip = async (minute: number) => {
    const plan = await room.say(minute, '/prep piece:jug bucket:gg resist:wax');
    return String(/"dipAt":"([^"]+)"/.exec(JSON.stringify(plan.data))?.[1]);
  };
  expect(await dip(evening)).toMatch(/^2026-03-02T0[89]:/);
  await room.keeper(evening + 1, '/studio drying humidity:75');
  // (1 − 0.5)/(1 − 0.75) = 2: 24 h.
  expect(await dip(evening + 2)).toMatch(/^2026-03-02T(?:19|2\d):/);
});

describe('every coat', () => {
  it.each([
    ['wax', /Touch it before you glaze: it should be clear and not tacky/],
    ['latex', /clear and not tacky/],
    ['hot-wax', /cold and hard, not tacky/],
  ])('of %s has its touch test', async (kind, test) => {
    const room = await openGlazeRoom();
    const answer = await room.say(evening, `/coat on kind:${kind} pieces:bowls`);
    expect(answer.reasons.join(' ')).toMatch(test);
  });
});

describe('a studio whose emulsion is dry in its hours', () => {
  it('says that no night is needed, and may say that one is again', async () => {
    const room = await openGlazeRoom();
    const set = await room.keeper(0, '/studio drying hours:1h night:no');
    expect(set.title).toMatch(/60 min here, and need no night/);
    const answer = await on(room, '', 3 * hour);
    expect(answer.data).toMatchObject({ coats: [{ readyAt: '2026-03-01T16:00:00.000Z' }] });
    expect(answer.reasons.join(' ')).toMatch(/not ask for a night/);
    await room.keeper(4 * hour, '/studio drying night:yes');
    const later = await room.say(4 * hour, '/coat on kind:wax pieces:mugs');
    expect(later.data).toMatchObject({ coats: [{ readyAt: '2026-03-02T08:00:00.000Z' }] });
  });

  it('still waits longer in a damp room, and for the studio to open', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/studio drying hours:1h night:no');
    // (1 − 0.5)/(1 − 0.75) = 2 h.
    const damp = await on(room, 'humidity:75', 3 * hour);
    expect(damp.data).toMatchObject({ coats: [{ readyAt: '2026-03-01T17:00:00.000Z' }] });
    const late = await room.say(9.5 * hour, '/coat on kind:wax pieces:mugs');
    expect(late.data).toMatchObject({ coats: [{ readyAt: '2026-03-02T08:00:00.000Z' }] });
  });
});

describe('a coat in a room that is cold and damp', () => {
  it('is warned of for both, and the damper the air, the longer it is said to take', async () => {
    const said = async (humidity: number) => {
      const room = await openGlazeRoom();
      const line = `/coat on kind:wax pieces:bowls temperature:8 humidity:${humidity}`;
      return room.say(evening, line);
    };
    const [damp, wet] = [await said(85), await said(95)];
    for (const { title, cautions } of [damp, wet]) {
      expect(title).toMatch(/In this cold it may never form a film, and in air this damp it will hardly dry/);
      expect(cautions.join(' ')).toMatch(/Below 10 °C.*In air this damp a coat may stay wet for days/);
    }
    // Over water 2339 Pa at 20 °C and 1073 Pa at 8 °C: 1169 to 161 at 85 %, 1169 to 54 at 95 %.
    expect(damp.reasons.join(' ')).toMatch(/a coat 7 times more slowly/);
    expect(wet.reasons.join(' ')).toMatch(/a coat 22 times more slowly/);
    const dry = await said(40);
    expect(dry.title).not.toMatch(/damp/);
  });
});
