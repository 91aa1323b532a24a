import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { demoStudio } from '../../helpers/demoStudio.ts';
import { openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';
import type { Answer } from '../../helpers/discord/answerSchemas.ts';

const day = 24 * 60;

/** What a script is promised; more keys may be added, these stay. */
const pair = z.looseObject({
  fault: z.string(),
  condition: z.string(),
  withFault: z.int().min(0),
  withFaultOf: z.int().min(0),
  without: z.int().min(0),
  withoutOf: z.int().min(0),
  p: z.number().min(0).max(1),
  q: z.number().min(0).max(1).nullable(),
  bayesFactor: z.number().positive(),
  interval: z.object({ low: z.number(), high: z.number() }).nullable(),
  lead: z.boolean(),
});
const pairsOf = (answer: Answer) => z.array(pair).parse(answer.data['faults']);
const found = (answer: Answer, fault: string, condition: string) =>
  pairsOf(answer).find((one) => one.fault === fault && one.condition === condition);

const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n - 1, k - 1) * n) / k);
/** Fisher's two sides by listing every table with the same margins. */
const byTables = (a: number, of: number, c: number, other: number): number => {
  const ways = Array.from({ length: of + 1 }, (_, k) =>
    a + c - k < 0 || a + c - k > other ? 0 : choose(of, k) * choose(other, a + c - k),
  );
  const seen = ways[a] ?? 0;
  const sum = (all: number[]) => all.reduce((total, one) => total + one, 0);
  return sum(ways.filter((one) => one <= seen * (1 + 1e-9))) / sum(ways);
};

const open = async (): Promise<GlazeRoom> => {
  const room = await openRoomWithGullGrey();
  await room.keeper(0, '/studio set zone:America/St_Johns');
  return room;
};

/** An evening each, from day `first` on: read at this gravity, then dipped, told two hours later. */
const evenings = async (room: GlazeRoom, first: number, gravity: number, lines: string[]): Promise<void> => {
  for (const [i, line] of lines.entries()) {
    const at = (first + i) * day + 9 * 60;
    await room.say(at, `/reading bucket:gg gravity:${gravity} seconds:14 stirred:yes`);
    expect(await room.say(at + 120, `/fired bucket:gg ${line} dipped:"110 min ago"`)).toMatchObject({
      ok: true,
    });
  }
};
const good = 'result:good pieces:4';
const crawled = 'result:crawling pieces:"1 of 4"';

describe('/faults', () => {
  it('is for keepers, and private', async () => {
    const room = await open();
    expect(await room.say(1, '/faults')).toMatchObject({ kind: 'refusal' });
    const answer = await room.keeper(1, '/faults');
    expect(answer).toMatchObject({ ok: true, private: true, data: { faults: [], results: 0 } });
    expect(answer.title).toMatch(/^No results from the kiln yet/);
  });

  it('says how many more it takes, rather than something', async () => {
    const room = await open();
    await evenings(room, 0, 1.51, [crawled]);
    await evenings(room, 1, 1.44, [good, good]);
    const few = await room.keeper(9 * day, '/faults bucket:gg');
    // By hand: 3 with a fault and 4 without, wholly apart, are 1 of C(7, 3) = 35 ways: 0.029. Six days give 0.067 at best.
    expect(few.title).toBe(
      'Too few results to say: 3 days of dipping so far. At least 4 more, good ones and faulty ones.',
    );
    await evenings(
      room,
      3,
      1.44,
      Array.from({ length: 7 }, () => good),
    );
    // 1 of C(10, 1) is 0.1; with one fault more, 1 of C(11, 2) = 55
    expect((await room.keeper(12 * day, '/faults')).title).toBe(
      'Too few results to say: 10 days of dipping, 1 with a fault. At least 1 more with a fault.',
    );
  });

  it('finds the one habit that goes with a fault, and counts what anybody can count after it', async () => {
    const room = await open();
    await evenings(room, 0, 1.51, [...Array.from({ length: 5 }, () => crawled), good]);
    await evenings(room, 6, 1.44, [...Array.from({ length: 9 }, () => good), crawled]);
    const answer = await room.keeper(20 * day, '/faults bucket:gg');
    const over = found(answer, 'crawling', 'gravity-over');
    expect(over).toMatchObject({ withFault: 5, withFaultOf: 6, without: 1, withoutOf: 10, lead: true });
    expect(over?.p).toBeCloseTo(byTables(5, 6, 1, 10), 12);
    expect(answer.title).toBe(
      'Crawling went with a gravity over the window: 5 of 6 days, against 1 of 10 otherwise (p 0.008). That is a lead, not a proof.',
    );
    for (const one of pairsOf(answer)) {
      const { withFault, withFaultOf, without, withoutOf, p } = one;
      expect(p).toBeCloseTo(byTables(withFault, withFaultOf, without, withoutOf), 10);
      expect(one.q ?? 1).toBeGreaterThanOrEqual(p);
    }
    const ps = pairsOf(answer).map(({ p }) => p);
    expect(ps).toEqual([...ps].sort((a, b) => a - b));
  });

  it('counts an evening at a bucket once, however many pots and members tell of it', async () => {
    const room = await open();
    await room.say(0, '/reading bucket:gg gravity:1.51 seconds:14 stirred:yes');
    for (const name of ['Wren', 'Ana', 'Pike', 'Kit'])
      await room.say(60, '/fired bucket:gg result:crawling pieces:6 dipped:"50 min ago"', name);
    await room.say(61, '/fired bucket:gg result:good pieces:2 dipped:"50 min ago"', 'Juno');
    const answer = await room.keeper(day, '/faults');
    expect(answer.data).toMatchObject({ results: 5, days: 1 });
    expect(found(answer, 'crawling', 'gravity-over')).toMatchObject({ withFault: 1, withFaultOf: 1 });
    expect(answer.reasons.join(' ')).toMatch(/Counted are days of dipping at a bucket, not pots/);
  });

  it('counts an evening on both sides where its pots differ', async () => {
    const room = await open();
    await room.say(60, '/fired bucket:gg result:crawling bisque:soft dipped:"50 min ago"');
    await room.say(61, '/fired bucket:gg result:good bisque:normal dipped:"50 min ago"');
    const answer = await room.keeper(day, '/faults');
    expect(found(answer, 'crawling', 'soft-bisque')).toMatchObject({
      withFault: 1,
      withFaultOf: 1,
      without: 0,
      withoutOf: 1,
    });
  });

  it('compares bodies, kilns and cones as people name them', async () => {
    const room = await open();
    await room.say(1 * day, '/fired bucket:gg result:crazing body:"Buff Stoneware" kiln:big cone:6');
    await room.say(2 * day, '/fired bucket:gg result:good body:"buff  stoneware" kiln:small cone:6');
    await room.say(3 * day, '/fired bucket:gg result:good body:porcelain cone:04');
    const answer = await room.keeper(9 * day, '/faults');
    expect(found(answer, 'crazing', 'body:Buff Stoneware')).toMatchObject({
      withFault: 1,
      withFaultOf: 2,
      without: 0,
      withoutOf: 1,
      fit: true,
    });
    expect(found(answer, 'crazing', 'kiln:big')).toMatchObject({ withFaultOf: 1, withoutOf: 1 });
    expect(found(answer, 'crazing', 'cone:6')).toMatchObject({ withFaultOf: 2, withoutOf: 1 });
    expect(found(answer, 'crazing', 'cone:-4')).toMatchObject({ withFaultOf: 1, withoutOf: 2 });
  });

  it('says of a fault of fit that glaze, body and firing come first', async () => {
    const room = await open();
    for (let i = 0; i < 6; i++) {
      await room.say(i * day, '/fired bucket:gg result:crazing body:porcelain');
      await room.say(i * day + 12 * 60, '/fired bucket:gg result:good body:stoneware');
    }
    const answer = await room.keeper(9 * day, '/faults');
    expect(answer.title).toMatch(
      /^Crazing went with the body “porcelain”: 6 of 6 days, against 0 of 6 .* a fault of fit: look at glaze, body and firing first\.$/,
    );
  });

  it('keeps to one bucket, a layer’s too, and to so many days', async () => {
    const room = await open();
    await room.keeper(1, '/bucket add name:"Sea Fog" nick:sf gravity:1.42-1.46 solids:2.6');
    await room.say(2 * day, '/fired bucket:gg result:crawling dipped:"1h ago"');
    await room.say(20 * day, '/fired bucket:sf result:good dipped:"1h ago"');
    await room.say(21 * day, '/fired bucket:sf over:gg result:good dipped:"1h ago"');
    const count = async (line: string) => (await room.keeper(22 * day, line)).data['results'];
    expect(await count('/faults')).toBe(3);
    expect(await count('/faults bucket:sf')).toBe(2);
    expect(await count('/faults bucket:gg')).toBe(2);
    expect(await count('/faults bucket:gg days:10')).toBe(1);
  });

  it('shows what came in lately, with the entry to take back', async () => {
    const room = await open();
    await room.say(60, '/fired bucket:gg result:crawling pieces:"2 of 4" dipped:"50 min ago"');
    const answer = await room.keeper(day, '/faults');
    expect(answer.reasons.at(-1)).toBe('Lately: f-1 · Sun 1 Mar · Gull Grey: 2 of 4 crawled');
  });
});

describe('the demo studio', () => {
  it('has one habit to show, the one that was put there, and nothing else', async () => {
    for (const start of ['2026-05-20T21:00:00Z', '2026-11-02T13:10:00Z']) {
      const { app, as, now, close } = await demoStudio(start);
      const who = await as('Odile', 'keeper');
      const reply = await app.desk.dispatch({ ...who, key: '1', now, path: ['faults'], typed: {} });
      const pairs = z.array(pair).parse(reply.data['faults']);
      expect(pairs.filter(({ lead }) => lead).map(({ fault, condition }) => [fault, condition])).toEqual([
        ['crawling', 'flow-thick'],
      ]);
      expect(Number(reply.data['results'])).toBeGreaterThan(36);
      await close();
    }
  });
});
