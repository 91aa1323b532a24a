import type { BucketEntry, BucketEvent } from '../../src/studio/bucket/bucketEvent.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf } from '../../src/glaze/statistics/normal.ts';
import { gravity, grams, millilitres } from '../../src/glaze/units.ts';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';
import { evaporationOf } from '../../src/studio/bucket/evaporationOf.ts';
import { foldBucket } from '../../src/studio/bucket/fold/foldBucket.ts';
import { later, minutes, seq, streamNo } from '../../src/studio/ids.ts';
import { seeded, simulatedPail } from '../helpers/simulatedLogbook.ts';

const day = 1440;
const told = 15_000;

/** How often two readings differ from the logbook by 2.6 standard deviations by chance. */
const byChance = 2 * (1 - normalCdf(2.6));

/** Three standard deviations of a share counted in so many trials. */
const leeway = (share: number, tries: number) => 3 * Math.sqrt((share * (1 - share)) / tries);

const fold = (entries: readonly BucketEntry[]): BucketState => {
  const state = foldBucket(streamNo(1), entries);
  if (!state) throw new Error('no setup');
  return state;
};

type Done =
  | { what: 'water' | 'draw-off' | 'dry' | 'taken' | 'flocculant'; amount: number }
  | { what: 'glaze'; amount: number; gravity: number };

const done: fc.Arbitrary<Done> = fc.oneof(
  fc.record({
    what: fc.constantFrom('water' as const, 'draw-off' as const, 'dry' as const, 'flocculant' as const),
    amount: fc.double({ min: 10, max: 900, noNaN: true }),
  }),
  fc.record({ what: fc.constant('taken' as const), amount: fc.double({ min: 10, max: 400, noNaN: true }) }),
  fc.record({
    what: fc.constant('glaze' as const),
    amount: fc.double({ min: 10, max: 2_000, noNaN: true }),
    gravity: fc.double({ min: 1.2, max: 1.8, noNaN: true }),
  }),
);

/** Does it to the simulated pail, exactly as it is logged. */
const carryOut = (pail: ReturnType<typeof simulatedPail>, one: Done) => {
  const { truth } = pail;
  const { what, amount } = one;
  const event = (added: Extract<BucketEvent, { kind: 'addition' }>['added']) =>
    pail.log({ kind: 'addition', added });
  if (what === 'water' || what === 'draw-off') {
    truth.water += what === 'water' ? amount : -amount;
    event({ what, volume: millilitres(amount) });
  } else if (what === 'dry') {
    truth.solids += amount;
    event({ what, mass: grams(amount) });
  } else if (what === 'taken') {
    const left = 1 - amount / pail.volume();
    truth.water *= left;
    truth.solids *= left;
    event({ what, volume: millilitres(amount) });
  } else if (what === 'glaze') {
    const phi = (one.gravity - 1) / 1.6;
    truth.water += amount * (1 - phi);
    truth.solids += amount * phi * 2.6;
    event({ what, volume: millilitres(amount), gravity: gravity(one.gravity) });
  } else event({ what, volume: millilitres(amount / 100) });
};

describe('a logbook that holds everything', () => {
  it('read without error, never has anything to report', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.3, max: 1.6, noNaN: true }),
        fc.constantFrom(0.002, 0.005, 0.01, 0.03),
        fc.array(fc.tuple(fc.integer({ min: 1, max: 5 * day }), done, fc.boolean()), { maxLength: 25 }),
        (from, u95, life) => {
          const pail = simulatedPail({ told, from });
          pail.setUp(told);
          pail.read(u95, 0);
          for (const [wait, one, reads] of life) {
            pail.wait(wait);
            // The pail keeps enough water and powder to continue.
            if (pail.truth.water < 3_000 || pail.volume() > 35_000) break;
            carryOut(pail, one);
            if (reads) pail.read(u95, 0);
          }
          pail.read(u95, 0);
          const { unexpected, unlogged } = pail.state();
          expect({ unexpected, unlogged }).toEqual({ unexpected: undefined, unlogged: undefined });
        },
      ),
      { numRuns: 600 },
    );
  });

  it('read with honest error, asks for a second reading as rarely as 2.6 standard deviations say, and reports more rarely', () => {
    for (const u95 of [0.005, 0.01, 0.02]) {
      const { normal, uniform } = seeded(11);
      const counted = { readings: 0, asked: 0, reported: 0 };
      for (let bucket = 0; bucket < 250; bucket++) {
        const pail = simulatedPail({ told: told * (1 + 0.05 * normal()), from: 1.44 });
        pail.setUp(told);
        pail.read(u95, normal());
        for (let week = 0; week < 12; week++) {
          const days = 0.2 + 5 * uniform();
          pail.wait(days * day);
          pail.drift(0.002 * Math.sqrt(days) * normal());
          const [which, amount] = [uniform(), 200 + 800 * uniform()];
          if (which < 0.25) {
            pail.log({ kind: 'addition', added: { what: 'water', volume: millilitres(amount) } });
            pail.truth.water += amount * (1 + 0.05 * normal());
          } else if (which < 0.35) {
            pail.log({ kind: 'addition', added: { what: 'dry', mass: grams(amount) } });
            pail.truth.solids += amount * (1 + 0.02 * normal());
          } else if (which < 0.6) pail.use(0.03 * Math.sqrt(days) * normal());
          const waiting = pail.state().unexpected !== undefined;
          pail.read(u95, normal());
          const first = pail.state();
          counted.readings++;
          if (waiting || !first.unexpected) continue;
          counted.asked++;
          pail.wait(3);
          pail.read(u95, normal());
          if ((pail.state().unlogged?.length ?? 0) > (first.unlogged?.length ?? 0)) counted.reported++;
        }
      }
      const { readings, asked, reported } = counted;
      expect(readings).toBe(3000);
      expect(asked / readings).toBeLessThan(byChance + leeway(byChance, readings));
      expect(reported / readings).toBeLessThan(byChance);
      // The check is able to fail: it does ask, only rarely.
      expect(asked).toBeGreaterThan(0);
    }
  });
});

describe('water that nobody logged', () => {
  /** Two ordinary days, then an unlogged share of water, and two readings. */
  const watered = (part: number, u95: number, { normal }: ReturnType<typeof seeded>) => {
    const pail = simulatedPail({ told: told * (1 + 0.05 * normal()), from: 1.44 });
    pail.setUp(told);
    pail.read(u95, normal());
    pail.wait(2 * day);
    pail.drift(0.002 * Math.sqrt(2) * normal());
    pail.use(0.03 * Math.sqrt(2) * normal());
    const went = part * pail.volume();
    pail.truth.water += went;
    pail.read(u95, normal());
    pail.wait(3);
    pail.read(u95, normal());
    return { found: pail.state().unlogged?.at(-1), went };
  };

  it.each([
    [0.1, 0.005],
    [0.1, 0.01],
    [-0.1, 0.005],
    [0.2, 0.01],
  ])(
    '%d of the pail, read to ± %d, is found by two readings, and its interval holds the truth 95 times in 100',
    (part, u95) => {
      const tries = 800;
      const random = seeded(7);
      const all = Array.from({ length: tries }, () => watered(part, u95, random));
      const found = all.filter(({ found }) => found?.what === (part > 0 ? 'water-in' : 'water-out'));
      expect(found.length / tries).toBeGreaterThan(0.97);
      const held = found.filter(
        ({ found, went }) => found?.water && Math.abs(found.water.value - went) <= found.water.u95,
      );
      expect(Math.abs(held.length / found.length - 0.95)).toBeLessThan(leeway(0.95, tries));
    },
  );

  it('is the same part of a pail ten times as big', () => {
    const litres = (size: number) => {
      const pail = simulatedPail({ told: size, from: 1.44 });
      pail.setUp(size);
      pail.read(0.005, 0);
      pail.wait(60);
      pail.truth.water += 0.1 * size;
      pail.read(0.005, 0);
      pail.read(0.005, 0);
      return pail.state().unlogged?.at(-1)?.water;
    };
    const [small, big] = [litres(1_500), litres(15_000)];
    expect(big?.value).toBeCloseTo(10 * (small?.value ?? 0), 6);
    expect(big?.u95).toBeCloseTo(10 * (small?.u95 ?? 0), 6);
  });

  it('is gone when it is logged late, as if it had been logged in time, and back when that is undone', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 400, max: 4_000 }),
        fc.integer({ min: 2, max: 3 * day }),
        fc.integer({ min: 1, max: 1000 }),
        fc.array(done, { maxLength: 3 }),
        (went, wait, when, more) => {
          const live = (logs: boolean) => {
            const pail = simulatedPail({ told, from: 1.44 });
            pail.setUp(told);
            pail.read(0.002, 0);
            const minute = Math.min(wait - 1, Math.max(1, Math.round((wait * when) / 1000)));
            pail.wait(minute);
            pail.truth.water += went;
            if (logs) pail.log({ kind: 'addition', added: { what: 'water', volume: millilitres(went) } });
            pail.wait(wait - minute);
            pail.read(0.002, 0);
            pail.wait(3);
            pail.read(0.002, 0);
            for (const one of more) {
              pail.wait(60);
              carryOut(pail, one);
            }
            pail.read(0.002, 0);
            return pail.entries();
          };
          const [without, inTime] = [live(false), live(true)];
          const forgotten = inTime[2];
          const last = without.at(-1);
          if (!forgotten || !last) throw new Error('too short a life');
          const missing = fold(without);
          expect(missing.unlogged?.[0]?.what).toBe('water-in');
          const late = { ...forgotten, seq: seq(500), loggedAt: later(last.at, minutes(5)) };
          const explained = fold([...without, late]);
          const { seq: _1, believed: one, ...told1 } = explained;
          const { seq: _2, believed: two, ...told2 } = fold(inTime);
          expect(explained.unlogged).toBeUndefined();
          expect({ ...told1, value: one?.value }).toEqual({ ...told2, value: two?.value });
          const undo: BucketEntry = { ...late, seq: seq(501), event: { kind: 'undo', of: seq(500) } };
          expect({ ...fold([...without, late, undo]), seq: missing.seq }).toEqual(missing);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('a pail that dries out', () => {
  const dried = (mlADay: number, random: ReturnType<typeof seeded>) => {
    const pail = simulatedPail({ told: told * (1 + 0.05 * random.normal()), from: 1.43 });
    pail.setUp(told);
    pail.read(0.005, random.normal());
    for (let visit = 0; visit < 7; visit++) {
      pail.wait(2 * day);
      pail.drift(0.002 * Math.sqrt(2) * random.normal());
      pail.truth.water -= 2 * mlADay;
      pail.read(0.005, random.normal());
      for (let again = 0; again < 2 && pail.state().unexpected; again++) {
        pail.wait(3);
        pail.read(0.005, random.normal());
      }
    }
    return evaporationOf(pail.state());
  };

  it('shows its rate within the interval, and a closed one hardly ever shows any', () => {
    const random = seeded(7);
    const open = Array.from({ length: 400 }, () => dried(100, random)).filter((rate) => rate !== undefined);
    expect(open.length).toBeGreaterThan(360);
    const held = open.filter(({ value, u95 }) => Math.abs(value - 100) <= u95);
    expect(held.length / open.length).toBeGreaterThan(0.95 - leeway(0.95, open.length));
    const closed = Array.from({ length: 400 }, () => dried(0, random)).filter((rate) => rate !== undefined);
    expect(closed.length / 400).toBeLessThan(byChance + leeway(byChance, 400));
  });
});
