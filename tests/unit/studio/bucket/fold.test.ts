import { describe, expect, it } from 'vitest';
import { verdictOf, type Answer } from '../../../helpers/discord/answerSchemas.ts';
import { openRoomWithGullGrey, type GlazeRoom, stateOf } from '../../../helpers/room/glazeRoom.ts';

const ask = '/water-or-stir bucket:gg';
const good = '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes';
const entry = (answer: Answer) => String(answer.data['entry']);

describe('undo', () => {
  it('takes an entry back; both stay visible in the log', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, good);
    const before = await stateOf(room);
    const slip = await room.say(2, '/added bucket:gg what:water amount:4l');
    expect(verdictOf(slip).step).toBe('measure');
    const undone = await room.say(3, `/undo entry:${entry(slip)}`);
    expect(undone.title).toMatch(/took back 1-3/i);
    expect(verdictOf(undone).step).toBe('use');
    expect(await stateOf(room)).toEqual(before);
    const log = (await room.say(4, '/bucket log bucket:gg')).reasons;
    expect(log).toHaveLength(4);
    expect(log.join('\n')).toMatch(/1-3 .*4 l of water.*taken back/);
    expect(log.join('\n')).toMatch(/1-4 .*took back/);
  });

  it('is for the author for 15 minutes, for a keeper always, for nobody else', async () => {
    const room = await openRoomWithGullGrey();
    const slip = entry(await room.say(0, '/added bucket:gg what:water amount:4l', 'Wren'));
    const other = await room.say(1, `/undo entry:${slip}`, 'Ines');
    expect(other).toMatchObject({ ok: false, kind: 'refusal' });
    expect(other.title).toMatch(/somebody else's/);
    const late = await room.say(16, `/undo entry:${slip}`, 'Wren');
    expect(late.title).toMatch(/older than 15 minutes/);
    expect((await room.keeper(60 * 24, `/undo entry:${slip}`)).ok).toBe(true);
    expect((await room.keeper(60 * 24, `/undo entry:${slip}`)).title).toMatch(/taken back already/);
  });

  it('at the fifteenth minute is in time', async () => {
    const room = await openRoomWithGullGrey();
    const slip = entry(await room.say(0, '/stirred bucket:gg'));
    expect((await room.say(15, `/undo entry:${slip}`)).ok).toBe(true);
  });

  it('counts from when it was written down, not from when it happened', async () => {
    const room = await openRoomWithGullGrey();
    const slip = entry(await room.say(600, '/stirred bucket:gg when:"3h ago"'));
    expect((await room.say(610, `/undo entry:${slip}`)).ok).toBe(true);
  });

  it('of an undo is refused: log it again instead', async () => {
    const room = await openRoomWithGullGrey();
    const slip = entry(await room.say(0, '/stirred bucket:gg'));
    const undone = entry(await room.say(1, `/undo entry:${slip}`));
    expect((await room.keeper(2, `/undo entry:${undone}`)).title).toMatch(/itself an undo/);
  });
});

describe('an entry logged late', () => {
  it('counts from when it happened', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(600, '/stirred bucket:gg when:"2h ago"');
    expect(verdictOf(answer).hoursSinceStir).toBeCloseTo(2, 6);
    // The data shows what was understood: noon on 1 March 2026 UTC, plus 480 minutes.
    expect(answer.logged).toEqual({ entry: '1-2', text: 'stirred, for Sun 1 Mar 20:00' });
  });

  it('before others leaves the same state as if it had been logged in time', async () => {
    const inOrder = await openRoomWithGullGrey();
    await inOrder.say(10, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
    await inOrder.say(20, '/added bucket:gg what:water amount:1l');
    await inOrder.say(30, '/stirred bucket:gg minutes:3');
    const late = await openRoomWithGullGrey();
    await late.say(10, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
    await late.say(30, '/stirred bucket:gg minutes:3');
    await late.say(35, '/added bucket:gg what:water amount:1l when:"15 min ago"');
    const seqless = async (room: GlazeRoom) => {
      const { believed, unknownSince: _seqs, ...rest } = await stateOf(room);
      return { ...rest, believed: believed?.value };
    };
    expect(await seqless(late)).toEqual(await seqless(inOrder));
    const verdicts = await Promise.all(
      [late, inOrder].map(async (room) => verdictOf(await room.say(40, ask))),
    );
    expect(verdicts[0]).toEqual(verdicts[1]);
  });

  it('a stir that a reading came after makes the reading believed', async () => {
    const room = await openRoomWithGullGrey();
    expect(verdictOf(await room.say(10, '/reading bucket:gg gravity:1.44 seconds:14')).step).toBe('stir');
    const answer = await room.say(20, '/stirred bucket:gg when:"15 min ago"');
    expect(verdictOf(answer)).toMatchObject({ step: 'use', gravity: { believed: true } });
  });

  it('water that was forgotten before the last reading changes nothing', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(60, good);
    const answer = await room.say(70, '/added bucket:gg what:water amount:1l when:"1h ago"');
    expect(verdictOf(answer).step).toBe('use');
  });
});

describe('what the logbook predicts', () => {
  const predicted = async (second: string) => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.004 seconds:14 stirred:yes');
    return verdictOf(await room.say(2, `/reading bucket:gg ${second} seconds:14 stirred:yes`)).predicted;
  };

  it('lies between two readings that agree, by what each is worth, and is surer than either', async () => {
    const found = await predicted('gravity:1.446 within:0.008');
    // Weights 1/0.004² and 1/0.008²: (4 · 1.44 + 1 · 1.446) / 5, ± 0.008/√5, slightly more after a day.
    expect(found?.value).toBeCloseTo(1.4412, 4);
    expect(found?.u95).toBeCloseTo(0.00358, 4);
  });

  it('is nothing of a reading that it did not expect, until a second one agrees', async () => {
    expect((await predicted('gravity:1.5 within:0.01'))?.value).toBeCloseTo(1.44, 4);
  });
});

describe('the order of unrelated entries', () => {
  it('another bucket’s log does not affect this one', async () => {
    const lines = ['/stirred bucket:BUCKET minutes:2', '/reading bucket:BUCKET gravity:1.5 seconds:20'];
    const alone = await openRoomWithGullGrey();
    for (const line of lines) await alone.say(10, line.replace('BUCKET', 'gg'));
    const beside = await openRoomWithGullGrey();
    await beside.keeper(0, '/bucket add name:Heron pail:10l volume:5l gravity:1.3-1.34');
    for (const line of lines) {
      await beside.say(10, line.replace('BUCKET', 'heron'));
      await beside.say(10, line.replace('BUCKET', 'gg'));
      await beside.say(10, '/added bucket:heron what:water');
    }
    const [one, other] = [await alone.say(11, ask), await beside.say(11, ask)];
    expect(other).toEqual(one);
  });
});

describe('what a keeper changes', () => {
  it('a new window is answered for at once', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, good);
    await room.keeper(2, '/bucket change bucket:gg gravity:1.36-1.40');
    expect(verdictOf(await room.say(3, ask))).toMatchObject({
      step: 'add-water',
      window: { low: 1.36, high: 1.4 },
    });
  });

  it('a remake counts flocculant from nothing again', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/added bucket:gg what:flocculant amount:20g');
    await room.keeper(2, '/added bucket:gg what:dry amount:100g remake:yes');
    const shown = await room.say(3, '/bucket show bucket:gg');
    expect(shown.data['flocculantGrams']).toBe(0);
  });

  it('lead or cadmium holds a bucket from the start', async () => {
    const room = await openRoomWithGullGrey();
    const added = await room.keeper(1, '/bucket add name:Old cautions:lead');
    expect(added.title).toMatch(/on hold/);
    expect(verdictOf(await room.say(2, '/water-or-stir bucket:old')).step).toBe('on-hold');
  });
});

describe('hands', () => {
  it('a bucket marked for gloves is never judged by a bare finger', async () => {
    for (const caution of ['gloves', 'caustic', 'toxic']) {
      const room = await openRoomWithGullGrey(['cautions', caution]);
      const look = await room.say(1, '/reading bucket:gg gravity:1.44 look:right stirred:yes');
      expect(look).toMatchObject({ ok: false, kind: 'refusal' });
      const asked = await room.say(2, '/reading bucket:gg gravity:1.44 stirred:yes');
      expect(asked.reasons.join('\n')).toMatch(/marked for gloves, so don’t dip a finger/i);
      expect(asked.reasons.join('\n')).not.toMatch(/dip a dry finger/);
      expect(asked.cautions.length).toBeGreaterThan(0);
    }
  });
});
