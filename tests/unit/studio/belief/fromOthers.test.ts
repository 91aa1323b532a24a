import { describe, expect, it } from 'vitest';
import { countsOfEvents } from '../../../../src/glaze/statistics/countsOfEvents.ts';
import { gravity, millilitres, seconds } from '../../../../src/glaze/units.ts';
import { lentBy, ownShown, withOthers } from '../../../../src/studio/belief/fromOthers.ts';
import { counted, together, type Belief } from '../../../../src/studio/belief/mixture.ts';
import {
  blindPress,
  fromOthers,
  noise,
  priorDays,
  unlogged,
  usualWeighing,
} from '../../../../src/studio/belief/priors.ts';
import type { BucketEvent } from '../../../../src/studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../../../src/studio/bucket/bucketState.ts';
import { foldBucket } from '../../../../src/studio/bucket/fold/foldBucket.ts';
import { weighedSd } from '../../../../src/studio/bucket/fold/sightsInReading.ts';
import { shownIn, toLearn } from '../../../../src/studio/bucket/learned.ts';
import { streamNo } from '../../../../src/studio/ids.ts';
import { entriesOf } from '../../../helpers/bucketArbitraries.ts';
import { must } from '../../../helpers/glaze/must.ts';
import {
  dippingBucket,
  keptLife,
  ordinaryFaults,
  quiet,
  type Faults,
} from '../../../helpers/glazeRoomLife.ts';
import { seeded } from '../../../helpers/simulatedLogbook.ts';

const folded = (no: number, entries: Parameters<typeof foldBucket>[1]): BucketState => {
  const state = foldBucket(streamNo(no), entries);
  if (!state) throw new Error('no setup');
  return state;
};

/** So many buckets of one room, each looked after for so many days. */
const roomOf = (buckets: number, faults: Faults, visits: number, seed = 0, look: 'no' | 'one' = 'no') =>
  Array.from({ length: buckets }, (_, i) =>
    folded(i + 1, keptLife(seed + i + 1, faults, visits, look).entries()),
  );

const setup: BucketEvent = { kind: 'setup', settings: dippingBucket, volume: millilitres(15_000) };
const fresh = folded(99, entriesOf([{ event: setup, minute: 0 }]));

/** A new bucket after its first night among others. */
const newAmong = (others: readonly BucketState[]): Belief => {
  const learned = toLearn([...others, fresh]).find(({ of }) => of.no === 99);
  const events = learned ? [setup, learned.event] : [setup];
  return folded(99, entriesOf(events.map((event) => ({ event, minute: 0 })))).belief;
};

/** Strangers' water that is expected in a day. */
const waterADay = ({ components, days }: Belief): number => {
  const count = priorDays * unlogged.water.perDay + (together(components).counts[counted.water] ?? 0);
  return count / (priorDays + days);
};

const blindPart = ({ components }: Belief): number => {
  const { counts } = together(components);
  return (
    (blindPress.blind + (counts[counted.blind] ?? 0)) / (blindPress.looks + (counts[counted.looks] ?? 0))
  );
};

const pouring = (waterPerDay: number): Faults => ({ ...quiet, waterPerDay, water: [0.5, 1] });

describe('what a new bucket expects of a studio’s people', () => {
  const byItself = unlogged.water.perDay;

  it('is more water where strangers often pour it in, and less where they never do', () => {
    const [wet, dry] = [0.2, 0].map((perDay) => waterADay(newAmong(roomOf(6, pouring(perDay), 40))));
    // Half of it is what any bucket is expected to get, half what the others got: (0.05 + 0.2)/2 and (0.05 + 0)/2.
    expect(wet).toBeGreaterThan(0.09);
    expect(wet).toBeLessThan(0.16);
    expect(dry).toBeGreaterThan(0.02);
    expect(dry).toBeLessThan(0.035);
  });

  it('is nearer to the truth than what one by itself has found in its first two weeks', () => {
    const perDay = 0.2;
    const others = roomOf(6, pouring(perDay), 40, 100);
    const [alone, among] = [[], others].map((some) => {
      const off = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) => {
        const entries = keptLife(seed, pouring(perDay), 14).entries();
        const [first, ...rest] = entries;
        const learned = toLearn([...some, fresh]).find(({ of }) => of.no === 99);
        if (!first) throw new Error('no setup');
        const more = learned && { ...first, event: learned.event };
        const all = [first, ...(more ? [more] : []), ...rest];
        return Math.abs(Math.log(waterADay(folded(1, all).belief) / perDay));
      });
      return off.reduce((sum, one) => sum + one, 0) / off.length;
    });
    expect(among).toBeLessThan(0.75 * (alone ?? NaN));
  });

  it('is that many look, where many look, and that few do, where few do', () => {
    const part = (blind: number) =>
      blindPart(newAmong(roomOf(5, { ...quiet, saltPerDay: 0.5, waterPerDay: 0.3, blind }, 40, 20, 'one')));
    const usual = blindPress.blind / blindPress.looks;
    expect(part(0.7)).toBeGreaterThan(usual + 0.1);
    expect(part(0.02)).toBeLessThan(usual);
  });

  it('is what it is by itself where the others have shown nothing yet', () => {
    expect(toLearn([fresh, { ...fresh, no: streamNo(2) }])).toEqual([]);
    expect(toLearn([fresh])).toEqual([]);
    expect(waterADay(newAmong([]))).toBeCloseTo(byItself, 12);
  });

  it('comes to less than what it finds out itself: a studio’s years count for twenty days', () => {
    const { days, counts } = lentBy(roomOf(4, pouring(0.2), 100).map(({ belief }) => ownShown(belief)));
    expect(days).toBeCloseTo(fromOthers.days, 9);
    expect((counts[counted.water] ?? 0) / days).toBeGreaterThan(0.15);
    expect((counts[counted.water] ?? 0) / days).toBeLessThan(0.25);
    const some = must(countsOfEvents({ shape: priorDays * byItself + (counts[0] ?? 0), over: 40, days: 1 }));
    expect(1 - some.none).toBeGreaterThan(byItself);
  });
});

describe('what is lent', () => {
  const others = roomOf(3, ordinaryFaults, 30, 40, 'one');
  const shown = others.map(({ belief }) => ownShown(belief));

  it('is not lent on: a bucket tells only what it has shown by itself', () => {
    const [one] = others;
    const [, ...rest] = shown;
    if (!one) throw new Error('no bucket');
    const lent = withOthers(one.belief, lentBy(rest));
    expect(lent.days).toBeGreaterThan(one.belief.days);
    const own = ownShown(lent);
    expect(own.days).toBeCloseTo(one.belief.days, 9);
    ownShown(one.belief).counts.forEach((count, i) => expect(own.counts[i]).toBeCloseTo(count, 9));
  });

  it('takes the place of what was lent before', () => {
    const [one] = others;
    if (!one) throw new Error('no bucket');
    const [early, late] = [lentBy(shown.slice(1, 2)), lentBy(shown.slice(1))];
    const [twice, once] = [withOthers(withOthers(one.belief, early), late), withOthers(one.belief, late)];
    expect(twice.days).toBeCloseTo(once.days, 9);
    twice.components.forEach(({ counts }, i) =>
      counts.forEach((count, kind) => expect(count).toBeCloseTo(once.components[i]?.counts[kind] ?? NaN, 9)),
    );
  });

  it('is not written down again when it would change next to nothing', () => {
    const all = [...others, fresh];
    const learned = toLearn(all);
    expect(learned.map(({ of }) => of.no)).toContain(99);
    const after = all.map((state) => {
      const event = learned.find(({ of }) => of.no === state.no)?.event;
      return event ? { ...state, belief: withOthers(state.belief, shownIn(event)) } : state;
    });
    expect(toLearn(after)).toEqual([]);
  });

  it('comes from a bucket that was retired too, but not to it', () => {
    const retired = others.map((state) => ({ ...state, retired: true }));
    expect(toLearn([...retired, fresh]).map(({ of }) => of.no)).toEqual([99]);
  });
});

describe('how well a vessel and a cup repeat', () => {
  /** A bucket that was weighed and timed twice in each of so many visits. */
  const repeated = (no: number, { weight, flow }: { weight: number; flow: number }, vessel: string) => {
    const { normal } = seeded(no);
    const story: { event: BucketEvent; minute: number }[] = [{ event: setup, minute: 0 }];
    for (let visit = 1; visit <= 10; visit++)
      for (const later of [0, 4])
        story.push({
          event: {
            kind: 'reading',
            stirred: true,
            seen: [],
            gravity: {
              value: gravity(1.44 + weight * normal()),
              u95: 0.02,
              by: 'weight',
              vessel,
            },
            flow: {
              cup: 'ford4',
              kind: 'ford4',
              seconds: seconds(14 * Math.exp(flow * normal())),
            },
          },
          minute: visit * 24 * 60 + later,
        });
    return folded(no, entriesOf(story));
  };

  it('is known to a new bucket by what the others showed of each: a steady one, and one that is not', () => {
    const steady = [1, 2, 3].map((no) => repeated(no, { weight: 0.005, flow: 0.02 }, 'steel cup'));
    const rough = [4, 5, 6].map((no) => repeated(no, { weight: 0.009, flow: 0.02 }, 'tin cup'));
    const belief = newAmong([...steady, ...rough]);
    const [steel, tin] = ['steel cup', 'tin cup'].map((vessel) => weighedSd(belief, vessel, usualWeighing));
    // Of 20 repeats and the 4 that ± 0.02 counts for: √((20·0.005² + 4·0.0102²)/24) = 0.0062, and 0.0092.
    expect(steel).toBeGreaterThan(0.0055);
    expect(steel).toBeLessThan(0.0072);
    expect(tin).toBeGreaterThan(0.008);
    expect(tin).toBeLessThanOrEqual(usualWeighing);
    // Of a vessel that nobody repeated with, only what the brim says.
    expect(weighedSd(belief, 'glass cup', usualWeighing)).toBe(usualWeighing);
    expect(weighedSd(fresh.belief, 'steel cup', usualWeighing)).toBe(usualWeighing);
    expect(noise.gravity).toBeLessThan(steel ?? NaN);
  });

  it('is still known of weighings from before vessels were told apart', () => {
    const state = repeated(1, { weight: 0.005, flow: 0.02 }, 'steel cup');
    const { 'weight steel cup': found } = state.belief.repeats ?? {};
    if (!found) throw new Error('nothing was repeated');
    const belief = { ...state.belief, repeats: { weight: found } };
    expect(weighedSd(belief, 'steel cup', usualWeighing)).toBeLessThan(0.008);
  });
});
