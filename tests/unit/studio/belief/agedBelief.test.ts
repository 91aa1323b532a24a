import { describe, expect, it } from 'vitest';
import { aged } from '../../../../src/studio/belief/aged.ts';
import { chancesOf } from '../../../../src/studio/belief/chances.ts';
import { counted, place, together, type Belief } from '../../../../src/studio/belief/mixture.ts';
import { perhapsAsTold } from '../../../../src/studio/belief/told.ts';
import { foldBucket } from '../../../../src/studio/bucket/fold/foldBucket.ts';
import type { BucketEvent } from '../../../../src/studio/bucket/bucketEvent.ts';
import { gravity, millilitres, seconds } from '../../../../src/glaze/units.ts';
import { days, later, streamNo } from '../../../../src/studio/ids.ts';
import { entriesOf } from '../../../helpers/bucketArbitraries.ts';
import { dippingBucket } from '../../../helpers/glazeRoomLife.ts';

const day = 24 * 60;
type Timed = { event: BucketEvent; minute: number };

const fold = (...events: Timed[]): Belief => {
  const state = foldBucket(
    streamNo(1),
    entriesOf([
      { event: { kind: 'setup', settings: dippingBucket, volume: millilitres(15_000) }, minute: 0 },
      ...events,
    ]),
  );
  if (!state) throw new Error('no setup');
  return state.belief;
};

const read = (minute: number, value?: number, time?: number, more: Partial<BucketEvent> = {}): Timed => ({
  minute,
  event: {
    kind: 'reading',
    stirred: true,
    seen: [],
    ...(value !== undefined && { gravity: { value: gravity(value), u95: 0.009, by: 'weight' } }),
    ...(time !== undefined && { flow: { cup: 'ford4', kind: 'ford4', seconds: seconds(time) } }),
    ...more,
  } as BucketEvent,
});

const known = (belief: Belief) => {
  const { mean, covariance, counts } = together(belief.components);
  const size = mean.length;
  return {
    gravity: mean[place.gravity] ?? NaN,
    sd: Math.sqrt(covariance[0] ?? NaN),
    flow: Math.exp(mean[place.flow] ?? NaN),
    litres: Math.exp(mean[place.volume] ?? NaN),
    flowSd: Math.sqrt(covariance[place.flow * (size + 1)] ?? NaN),
    waterIn: counts[counted.water] ?? NaN,
  };
};

const after = (belief: Belief, gone: number) => aged(belief, later(belief.at, days(gone)), dippingBucket);
const both = (belief: Belief) => chancesOf(belief, dippingBucket).both ?? NaN;

describe('what is believed of a bucket', () => {
  const measured = fold(read(1, 1.44, 13.9));

  it('is sure right after a weighing and a cup time in mid-window', () => {
    expect(both(measured)).toBeGreaterThan(0.95);
    expect(known(measured).gravity).toBeCloseTo(1.44, 3);
  });

  it('wears off day by day, and never comes back by itself', () => {
    const chances = [0, 1, 3, 7, 14, 30].map((gone) => both(after(measured, gone)));
    chances.slice(1).forEach((chance, i) => expect(chance).toBeLessThan(chances[i] ?? 0));
    for (const gone of [60, 61, 120, 365, 4000]) expect(both(after(measured, gone))).toBeLessThan(0.1);
    // After a week at rest ± 0.01 is not true: strangers pour once in twenty bucket-days.
    expect(known(after(measured, 7)).sd).toBeGreaterThan(0.012);
  });

  it('ends after a year of silence at about ± 0.08, and one weighing and one cup time bring it back', () => {
    const silent = known(after(measured, 365));
    expect(silent.sd).toBeGreaterThan(0.065);
    expect(silent.sd).toBeLessThan(0.095);
    expect(both(after(measured, 365))).toBeLessThan(0.1);
    expect(both(fold(read(1, 1.44, 13.9), read(365 * day, 1.44, 13.9)))).toBeGreaterThan(0.95);
  });

  it('follows water that is logged, and is unsure by what is unsure of the pour', () => {
    const watered = known(
      fold(read(1, 1.44, 13.9), {
        minute: 5,
        event: { kind: 'addition', added: { what: 'water', volume: millilitres(1_000) } },
      }),
    );
    // By hand: (15 × 1.44 + 1)/16, and 1/16 of gravity’s difference to water for a litre that is 5 % unsure
    expect(watered.gravity).toBeCloseTo((15 * 1.44 + 1) / 16, 3);
    expect(watered.litres).toBeCloseTo(16, 0);
    expect(watered.flow).toBeLessThan(13.9);
  });

  it('asks itself whether an odd first reading was a slip, and hears the second', () => {
    const once = fold(read(1, 1.44, 13.9), read(30, 1.52));
    const twice = fold(read(1, 1.44, 13.9), read(30, 1.52), read(35, 1.521));
    const chance = (belief: Belief) => chancesOf(belief, dippingBucket).gravity?.high ?? NaN;
    expect(chance(once)).toBeGreaterThan(0.05);
    expect(chance(once)).toBeLessThan(0.95);
    expect(chance(twice)).toBeGreaterThan(0.97);
  });

  it('finds that somebody poured water in and did not log it, about once', () => {
    // By hand: 0.9 l in 15 l of 1.44 make (15 × 1.44 + 0.9)/15.9 = 1.41509
    const thin = fold(read(1, 1.44, 13.9), read(5 * day, 1.4151), read(5 * day + 5, 1.4151));
    expect(known(thin).waterIn).toBeGreaterThan(0.7);
    expect(known(thin).waterIn).toBeLessThan(1.5);
    expect(known(measured).waterIn).toBe(0);
  });

  it('takes no reading of a bucket that was not stirred', () => {
    expect(fold(read(1, 1.44, 13.9), read(3 * day, 1.3, 9, { stirred: false }))).toStrictEqual(measured);
  });

  it('is not aged by entries that say nothing of the contents', () => {
    const idle: Timed[] = [
      { minute: 2 * day, event: { kind: 'stir', seen: [] } },
      { minute: 2 * day, event: { kind: 'hold', cause: 'other', why: 'busy' } },
      { minute: 3 * day, event: { kind: 'release' } },
      { minute: 3 * day, event: { kind: 'sieve' } },
    ];
    expect(fold(read(1, 1.44, 13.9), ...idle)).toStrictEqual(measured);
  });

  it.each<[string, Timed[]]>([
    ['a cake was found', [{ minute: 9, event: { kind: 'stir', seen: ['cake'] } }]],
    [
      'lumps were sieved out',
      [
        { minute: 8, event: { kind: 'stir', seen: ['lumps'] } },
        { minute: 9, event: { kind: 'sieve', mesh: 80 } },
      ],
    ],
    ['it froze', [{ minute: 9, event: { kind: 'hold', cause: 'frozen', why: 'outside' } }]],
    ['it was contaminated', [{ minute: 9, event: { kind: 'hold', cause: 'contaminated', why: 'slip' } }]],
    [
      'it was mixed anew',
      [{ minute: 9, event: { kind: 'addition', added: { what: 'other' }, remake: true } }],
    ],
  ])('begins anew when %s', (_, events) => {
    const { gravity: middle, sd } = known(fold(read(1, 1.451, 13.9), ...events));
    expect(sd).toBeCloseTo(0.08, 3);
    expect(middle).toBeCloseTo(1.44, 6);
  });

  it('counts one person’s looks in one visit once', () => {
    const look = (minute: number) => read(minute, undefined, undefined, { look: 'thick' });
    const once = fold(read(1, 1.44), look(3));
    expect(fold(read(1, 1.44), look(3), look(5), look(8)).components).toStrictEqual(once.components);
  });

  it('hears a cup that would not run as thick', () => {
    const stuck = fold({
      minute: 1,
      event: {
        kind: 'reading',
        stirred: true,
        seen: [],
        flow: { cup: 'ford4', kind: 'ford4', seconds: 'wont-run' },
      },
    });
    expect(chancesOf(stuck, dippingBucket).flow?.thick).toBeGreaterThan(0.9);
  });

  it('leaves seconds of another kind of cup alone', () => {
    const other: Timed = {
      minute: 4,
      event: {
        kind: 'reading',
        stirred: true,
        seen: [],
        flow: { cup: 'zahn2', kind: 'zahn2', seconds: seconds(30) },
      },
    };
    expect(fold(read(1, 1.44, 13.9), other)).toStrictEqual(measured);
  });

  it('gives half its weight to what somebody was told to pour, when they log something else', () => {
    const heavy = fold(read(1, 1.5, 20), read(3, 1.5, 20));
    // By hand: 15 l · (1.50 − 1.44)/0.44 = 2.05 l of water to mid-window.
    const told = perhapsAsTold(heavy, dippingBucket, false);
    const weights = told.components
      .filter(({ mean: [g = 0] }) => g < 1.45)
      .reduce((sum, { weight }) => sum + weight, 0);
    expect(weights).toBeCloseTo(0.5, 1);
    expect(perhapsAsTold(measured, dippingBucket, false)).toBe(measured);
  });

  it('has no chance to give where no window is set', () => {
    expect(chancesOf(measured, { solids: dippingBucket.solids })).toEqual({
      gravity: null,
      flow: null,
      both: null,
    });
  });
});
