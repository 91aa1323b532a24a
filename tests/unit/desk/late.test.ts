import { beforeEach, describe, expect, it } from 'vitest';
import { leafAt, parseLine } from '../../../src/contract/parseLine.ts';
import { commands } from '../../../src/start/registry.ts';
import { entryId, readEntryId, seq } from '../../../src/studio/ids.ts';
import { openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';
import { noonPlus } from '../../helpers/store/storeEvents.ts';

/** Typed at 13:00 on 1 March 2026; it reached the bot at 8:00 the next morning. */
const typedAt = 60;
const came = 1200;

let room: GlazeRoom;
beforeEach(async () => {
  room = await openRoomWithGullGrey();
});

const late = async (line: string, changed: { typedAt?: number; role?: 'keeper' } = {}) => {
  const parsed = parseLine(line, commands);
  if (!parsed.ok || !leafAt(commands, parsed.value.path)) throw new Error(line);
  const { typedAt: minute = typedAt, ...more } = changed;
  return room.request(came, { ...parsed.value, ...more, happenedAt: noonPlus(minute) });
};
const entry = async (id: unknown) => {
  const named = readEntryId(String(id));
  if (!named) throw new Error(`${String(id)} is no entry`);
  const { store, studio } = room;
  return store.books.read(studio, (book) => book.entry(entryId(named.stream, named.seq)));
};

describe('a line that came late', () => {
  it.each([
    ['/stirred bucket:gg', typedAt],
    ['/sieved bucket:gg', typedAt],
    ['/added bucket:gg what:water amount:100ml', typedAt],
    ['/reading bucket:gg gravity:1.44 stirred:yes', typedAt],
    ['/dip tile bucket:gg seconds:3 thickness:1mm', typedAt],
    ['/coat on kind:wax pieces:jug', typedAt],
    ['/fired bucket:gg result:good', typedAt],
    ['/prep piece:jug bucket:gg', typedAt],
    // As they were meant when they were typed.
    ['/stirred bucket:gg when:"30 min ago"', 30],
    ['/stirred bucket:gg when:now', typedAt],
    ['/coat on kind:wax pieces:jug when:"today 12:20"', 20],
  ])('%s is of when it was done, and logged when it came', async (line, minute) => {
    const { data } = await late(line);
    expect(await entry(data['entry'])).toMatchObject({ at: noonPlus(minute), loggedAt: noonPlus(came) });
  });

  it('ticks a step off, or takes a coat off, as of then', async () => {
    await room.say(1, '/prep piece:jug bucket:gg');
    await room.say(1, '/coat on kind:latex pieces:jug');
    for (const line of ['/prep piece:jug done:dust', '/coat off coat:c-1']) {
      const { data } = await late(line);
      expect(await entry(data['entry']), line).toMatchObject({ at: noonPlus(typedAt) });
    }
  });

  it.each(['/studio set units:us', '/bucket hold bucket:gg why:"smells odd"', '/studio keeper member:Wren'])(
    '%s holds from when it came: others may have decided otherwise meanwhile',
    async (line) => {
      const { data } = await late(line, { role: 'keeper' });
      expect(await entry(data['entry'])).toMatchObject({ at: noonPlus(came), loggedAt: noonPlus(came) });
    },
  );

  it('does not reach back to an entry that it is too late to take back', async () => {
    await room.say(typedAt, '/stirred bucket:gg');
    expect(await late('/undo entry:1-2')).toMatchObject({ ok: false });
  });

  it('puts a reminder off from when it came', async () => {
    await room.say(0, '/coat on kind:wax pieces:jug');
    expect(await late('/remind later reminder:c-1-ready for:1h')).toMatchObject({
      data: { at: new Date(noonPlus(came + 60)).toISOString() },
    });
  });

  it('plans no firing that is over by then', async () => {
    const past = await late('/studio firing when:"today 4pm"', { role: 'keeper' });
    expect(past).toMatchObject({ ok: false });
    const ahead = await late('/studio firing when:"tomorrow 4pm"', { role: 'keeper' });
    expect(ahead.data).toMatchObject({ firing: '2026-03-02T16:00:00.000Z' });
  });

  it('is told what to do now, not what was to be done then', async () => {
    // Rest limit 4 h: stirred at 13:00, it is to be stirred again at 8:00.
    const { data } = await late('/stirred bucket:gg');
    expect(data['verdict']).toMatchObject({ step: 'stir' });
  });

  it('of a time to come is of now', async () => {
    const { data } = await late('/stirred bucket:gg', { typedAt: came + 60 });
    expect(await entry(data['entry'])).toMatchObject({ at: noonPlus(came) });
  });

  it('is still of then when it is put right, chosen, or logged anyway', async () => {
    const then = new Date(noonPlus(typedAt)).toISOString();
    const refused = await late('/stirred bucket:gg minutes:often');
    expect(refused).toMatchObject({ ok: false, data: { when: then } });
    const slip = await late('/stirred bucket:"Gull Gray"');
    for (const { line } of slip.actions) expect(line).toContain(`when:"${then}"`);
    await room.say(70, '/stirred bucket:gg', 'Tern');
    const moved = await room.request(came, {
      path: ['sieved'],
      typed: { bucket: 'gg' },
      after: seq(1),
      happenedAt: noonPlus(typedAt),
    });
    expect(moved.actions.at(-1)?.line).toContain(`when:"${then}"`);
  });
});
