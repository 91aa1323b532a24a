import { describe, expect, it } from 'vitest';
import { openGlazeRoom, openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

describe('a studio has a name of its own', () => {
  it('set by a keeper, shown on its card, and taken back', async () => {
    const room = await openGlazeRoom();
    const set = await room.keeper(1, '/studio set name:"Crab Apple Yard" zone:America/St_Johns');
    expect(set).toMatchObject({ ok: true, data: { name: 'Crab Apple Yard', zone: 'America/St_Johns' } });
    expect(set.title).toBe('Crab Apple Yard. Time zone America/St_Johns, metric units.');
    expect((await room.say(2, '/studio show')).title).toMatch(/^Crab Apple Yard\. /);
    await room.keeper(3, '/undo entry:s-1');
    expect((await room.say(4, '/studio show')).title).toBe('Time zone America/St_Johns, metric units.');
  });

  it('of 60 characters at most', async () => {
    const room = await openGlazeRoom();
    expect((await room.keeper(1, `/studio set name:"${'h'.repeat(61)}"`)).kind).toBe('refusal');
    expect((await room.keeper(2, `/studio set name:"${'h'.repeat(60)}"`)).ok).toBe(true);
    expect((await room.say(3, '/studio set name:Mine')).kind).toBe('refusal');
  });
});

describe('where hours matter and no zone is set', () => {
  const told = /UTC, because no zone is set\. A keeper can set it: \/studio set zone:America\/St_Johns/;
  const asked = [
    '/coat on kind:wax pieces:"3 bowls"',
    '/coat list',
    '/prep piece:"tall jug" bucket:gg resist:wax',
  ];

  it.each([false, true])('is said, until one is: %s', async (isSet) => {
    const room = await openRoomWithGullGrey();
    if (isSet) await room.keeper(1, '/studio set zone:America/St_Johns');
    for (const line of asked) {
      const { facts, reasons } = await room.say(2, line);
      const all = [...facts.map(({ text }) => text), ...reasons].join('\n');
      expect(told.test(all), line).toBe(!isSet);
    }
    expect(/no zone is set/.test((await room.say(3, '/studio show')).title)).toBe(!isSet);
  });
});

describe('a cup that was calibrated', () => {
  it('is checked against the scale, in the units that it shows', async () => {
    const room = await openGlazeRoom();
    const set = await room.keeper(1, '/studio vessel name:"steel cup" tare:85.4g water:100.2g');
    // 85.4 + 100.2, by hand.
    expect(set.facts[0]?.text).toMatch(/^Full, your scale should show 185\.6 g\. /);
    await room.keeper(2, '/studio set units:us');
    const ounces = await room.keeper(3, '/studio vessel name:"oz cup" tare:3oz water:3.5oz');
    expect(ounces.facts[0]?.text).toMatch(/should show 6\.5 oz\. /);
  });

  it('is taken back by its entry', async () => {
    const room = await openGlazeRoom();
    const set = await room.keeper(1, '/studio vessel name:"steel cup" tare:85.4g water:185.6g');
    expect(set.data['entry']).toBe('s-1');
    expect((await room.keeper(2, '/undo entry:s-1')).ok).toBe(true);
    const { facts } = await room.say(3, '/studio show');
    expect(facts.find(({ label }) => label === 'Weighing cups')?.text).toMatch(/none yet/);
  });
});

it.each(['all day', '00:00-24:00'])('quiet hours leave time for a reminder: %s', async (quiet) => {
  const room = await openGlazeRoom();
  expect((await room.keeper(1, `/studio reminders quiet:"${quiet}"`)).title).toMatch(/leaves no time/);
  expect((await room.keeper(2, '/studio reminders quiet:20:00-12:00')).ok).toBe(true);
});
