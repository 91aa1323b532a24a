import { describe, expect, it } from 'vitest';
import { citiesNamed } from '../../../../src/studio/time/zoneOfCity.ts';
import { openGlazeRoom } from '../../../helpers/room/glazeRoom.ts';

/** Whether two zones' clocks agree in January and in July. */
const agree = (one: string, other: string) =>
  [0, 6].every((month) => {
    const clock = (timeZone: string) =>
      new Intl.DateTimeFormat('en', { timeZone, dateStyle: 'short', timeStyle: 'short' }).format(
        Date.UTC(2026, month, 15, 12),
      );
    return clock(one) === clock(other);
  });

/** A row of a city, its zone: the IANA time zone database, from memory. */
const found = [
  ['Lisbon', 'Europe/Lisbon'],
  ['lisbon, Portugal', 'Europe/Lisbon'],
  ['St. John’s', 'America/St_Johns'],
  ['Saint Johns', 'America/St_Johns'],
  ['new york', 'America/New_York'],
  ['San Francisco', 'America/Los_Angeles'],
  ['St. Louis', 'America/Chicago'],
  ['Calgary', 'America/Edmonton'],
  ['Munich', 'Europe/Berlin'],
  ['München', 'Europe/Berlin'],
  ['Kyoto', 'Asia/Tokyo'],
  ['Mumbai', 'Asia/Kolkata'],
  ['Kolkata', 'Asia/Kolkata'],
  ['Kathmandu', 'Asia/Kathmandu'],
  ['Cape Town', 'Africa/Johannesburg'],
  ['Wellington', 'Pacific/Auckland'],
] as const;

describe('a city', () => {
  it.each(found)('%s keeps the clocks of %s', async (typed, zone) => {
    const room = await openGlazeRoom();
    const { data } = await room.keeper(1, `/studio set zone:"${typed}"`);
    expect(agree(String(data['zone']), zone)).toBe(true);
  });

  it('that has a namesake is asked for, and none is guessed', async () => {
    const room = await openGlazeRoom();
    const asked = await room.keeper(1, '/studio set zone:Portland');
    expect(asked.kind).toBe('choice');
    expect(asked.actions.map(({ label }) => label).join()).toMatch(/America\/New_York.*America\/Los_Angeles/);
    expect((await room.say(2, '/studio show')).title).toMatch(/no zone is set/);
  });

  it('that nobody knows is refused with what to type', async () => {
    const room = await openGlazeRoom();
    const refused = await room.keeper(1, '/studio set zone:Atlantis');
    expect(refused.title).toMatch(/“Atlantis” is not a time zone that I know\. Type a large city/);
  });

  it('only has zones that this Node knows', () => {
    for (const letters of ['san', 'new', 'por', 'mil', 'bar', 'man', 'ham', 'kyo', 'mar', 'chi', 'val'])
      for (const { zone } of citiesNamed(letters))
        expect(() => new Intl.DateTimeFormat('en', { timeZone: zone }), zone).not.toThrow();
  });
});
