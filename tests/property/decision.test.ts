import type { BucketEntry } from '../../src/studio/bucket/bucketEvent.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';
import { surenessOf } from '../../src/studio/verdict/chooseByChance.ts';
import { decide } from '../../src/studio/verdict/decide.ts';
import { applyToBucket, foldBucket, volumeHeld } from '../../src/studio/bucket/fold/foldBucket.ts';
import { later, minutes, seq, streamNo } from '../../src/studio/ids.ts';
import { isFlagged } from '../../src/studio/bucket/withoutFlagged.ts';
import { restLimitOf } from '../../src/studio/bucket/rests.ts';
import type { Amounts, Step, Verdict } from '../../src/studio/verdict/verdict.ts';
import { bucketEvent, gridStory, keepersDoing, story, type Story } from '../helpers/bucketArbitraries.ts';

const runs = { numRuns: 1500 };

const stateOf = (entries: readonly BucketEntry[]): BucketState => {
  const state = foldBucket(streamNo(1), entries);
  if (!state) throw new Error('a story begins with a setup');
  return state;
};

const verdictsOf = ({ entries, now }: Story): Verdict[] => {
  const state = stateOf(entries);
  return (['member', 'keeper'] as const).map((role) => decide(state, { now, role }));
};

const changesWater: Step[] = ['add-water', 'draw-off-water', 'add-dry'];
/** The next step, whether the member or a keeper does it. */
const meant = ({ step, keeperStep }: Verdict): Step => keeperStep ?? step;
const amountsOfWater = ({ waterMl, drawOffMl, dryGrams, ...more }: Amounts) =>
  [waterMl, drawOffMl, dryGrams, more.waterMlPerLitre, more.drawOffMlPerLitre, more.dryGramsPerLitre].filter(
    (amount) => amount !== undefined,
  );

const unweighed = (entry: BucketEntry): BucketEntry => {
  if (entry.event.kind !== 'reading') return entry;
  const { gravity: _gravity, ...event } = entry.event;
  return { ...entry, event };
};

const numbersIn = (value: unknown): number[] => {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
};

describe('whatever was logged', () => {
  it('a verdict tells the chances that the belief gives, after the stir or sieve that it asks for too', () => {
    fc.assert(
      fc.property(story, ({ entries, now }) => {
        const state = stateOf(entries);
        const { chances } = decide(state, { now, role: 'member' });
        if (chances) expect(chances).toStrictEqual(surenessOf(state, now).chances);
      }),
      { numRuns: 200 },
    );
  });

  it('there is an answer, and no number in it is other than finite', () => {
    fc.assert(
      fc.property(story, (one) => {
        const state = stateOf(one.entries);
        for (const number of numbersIn(state)) expect(number).toSatisfy(Number.isFinite);
        const { water = 1, solids = 0 } = state.contents ?? {};
        expect(water).toBeGreaterThan(0);
        expect(solids).toBeGreaterThanOrEqual(0);
        for (const verdict of verdictsOf(one)) {
          for (const number of numbersIn(verdict)) expect(number).toSatisfy(Number.isFinite);
          for (const amount of numbersIn(verdict.amounts)) expect(amount).toBeGreaterThanOrEqual(0);
        }
      }),
      runs,
    );
  });

  it('the same log gives the same answer', () => {
    fc.assert(
      fc.property(story, (one) => {
        expect(verdictsOf(one)).toEqual(verdictsOf(structuredClone(one)));
      }),
      runs,
    );
  });

  it('water or powder is only ever moved on a gravity, believed or likely enough, that is outside its window by more than its uncertainty', () => {
    const moved = { steps: 0 };
    fc.assert(
      fc.property(fc.oneof(story, gridStory), (one) => {
        for (const verdict of verdictsOf(one)) {
          const { window, amounts } = verdict;
          // Additions that are too small to require a reading still count: the prediction includes them.
          const gravity =
            verdict.gravity && stateOf(one.entries).moved > 0
              ? { ...verdict.gravity, ...verdict.predicted }
              : verdict.gravity;
          const overlaps =
            gravity === null ||
            window === null ||
            (gravity.value + gravity.u95 >= window.low - 1e-12 &&
              gravity.value - gravity.u95 <= window.high + 1e-12);
          // A reading that the logbook did not expect counts for nothing else yet; it is acted on when it is likely enough.
          if (overlaps || !(gravity.believed || isFlagged(stateOf(one.entries)))) {
            expect(changesWater).not.toContain(meant(verdict));
            expect(amountsOfWater(amounts)).toEqual([]);
          } else if (changesWater.includes(meant(verdict))) moved.steps++;
        }
      }),
      runs,
    );
    expect(moved.steps).toBeGreaterThan(100);
  });

  it('without a believed gravity nothing is moved, dosed or used', () => {
    fc.assert(
      fc.property(story, (one) => {
        for (const verdict of verdictsOf({ ...one, entries: one.entries.map(unweighed) })) {
          expect(numbersIn(verdict.amounts)).toEqual([]);
          expect(['on-hold', 'sieve', 'stir', 'measure', 'ask-keeper']).toContain(verdict.step);
        }
      }),
      runs,
    );
  });

  it('a bucket at rest too long is never used, watered, thinned or dosed', () => {
    fc.assert(
      fc.property(story, ({ entries, now }) => {
        const state = stateOf(entries);
        const { limit } = restLimitOf(state);
        const at = later(state.stir?.at ?? now, limit);
        const rested = later(at < state.foldedTo ? state.foldedTo : at, minutes(1));
        if (state.stir && rested - state.stir.at <= limit) return;
        const verdict = decide(state, { now: rested, role: 'keeper' });
        expect(['on-hold', 'sieve', 'stir', 'ask-keeper']).toContain(verdict.step);
        expect(verdict.amounts).toEqual({});
      }),
      runs,
    );
  });
});

describe('amounts', () => {
  it('never are more than the pail holds', () => {
    const full = { times: 0 };
    fc.assert(
      fc.property(fc.oneof(gridStory, story), (one) => {
        const state = stateOf(one.entries);
        const { pail, solids } = state.settings;
        const held = volumeHeld(state)?.value;
        if (pail === undefined || held === undefined) return;
        for (const { amounts, reasons } of verdictsOf(one)) {
          const { waterMl = 0, dryGrams = 0 } = amounts;
          if (waterMl > 0) expect(held + waterMl).toBeLessThanOrEqual(pail * (1 + 1e-9));
          // Powder adds the volume of its grains: their weight divided by their gravity.
          if (dryGrams > 0) expect(held + dryGrams / solids).toBeLessThanOrEqual(pail * (1 + 1e-9));
          if (reasons.some(({ because }) => because === 'pail-full')) full.times++;
        }
      }),
      runs,
    );
    expect(full.times).toBeGreaterThan(20);
  });
});

describe('order', () => {
  it('what has nothing to do with water, powder or flow may come before or after a reading at the same moment', () => {
    fc.assert(
      fc.property(story, bucketEvent, keepersDoing, fc.boolean(), ({ entries, now }, event, other, sieve) => {
        // Sieving removes visible lumps, so these two are related.
        if (other.kind === 'sieve' && 'seen' in event && event.seen.some((sight) => sight !== 'none')) return;
        // Frost and dirt invalidate earlier readings, and so does sieving a lumpy bucket.
        if (other.kind === 'hold' && (other.cause === 'frozen' || other.cause === 'contaminated')) return;
        if (other.kind === 'sieve' && stateOf(entries).unsieved) return;
        if (event.kind === 'hold' || event.kind === 'release' || event.kind === 'sieve') return;
        const last = entries.at(-1);
        if (!last) return;
        const add = (first: BucketEntry['event'], second: BucketEntry['event']) =>
          stateOf([
            ...entries,
            { ...last, seq: seq(last.seq + 1), event: first },
            { ...last, seq: seq(last.seq + 2), event: second },
          ]);
        const placeless = (state: BucketState) =>
          JSON.parse(JSON.stringify(decide(state, { now, role: sieve ? 'keeper' : 'member' })));
        expect(placeless(add(event, other))).toEqual(placeless(add(other, event)));
      }),
      runs,
    );
  });

  it('entries logged late or in any order fold to what they fold to in order', () => {
    fc.assert(
      fc.property(story, fc.array(fc.nat()), ({ entries, now }, picks) => {
        const [setup, ...rest] = entries;
        if (!setup) return;
        // The same events, logged in another order: each keeps its time, and no two have the same.
        const moments = rest.map((entry, i) => ({ ...entry, at: later(entry.at, minutes((i + 1) / 1000)) }));
        const shuffled = moments
          .map((entry, i) => ({ entry, key: picks[i % Math.max(1, picks.length)] ?? 0 }))
          .sort((a, b) => a.key - b.key)
          .map(({ entry }, i) => ({ ...entry, seq: seq(i + 2) }));
        const blank = (state: BucketState) => ({
          verdict: { ...decide(state, { now: later(now, minutes(1)), role: 'keeper' }), after: 0 },
          contents: state.contents,
          predicted: state.predicted,
        });
        expect(blank(stateOf([setup, ...shuffled]))).toEqual(blank(stateOf([setup, ...moments])));
      }),
      runs,
    );
  });

  it('an entry taken back is as if it had never been', () => {
    fc.assert(
      fc.property(story, bucketEvent, fc.nat(), ({ entries, now }, slip, where) => {
        const place = 1 + (where % entries.length);
        const beside = entries[place - 1];
        const end = entries.at(-1);
        if (!beside || !end) return;
        const taken = { ...beside, seq: seq(1000), event: slip };
        const undo: BucketEntry = { ...end, seq: seq(1001), at: now, event: { kind: 'undo', of: seq(1000) } };
        const without = stateOf(entries);
        expect({ ...stateOf([...entries, taken, undo]), seq: without.seq }).toEqual(without);
      }),
      runs,
    );
  });

  it('adding one entry on gives what folding all of them gives', () => {
    fc.assert(
      fc.property(story, ({ entries }) => {
        const [setup, ...rest] = entries;
        if (!setup) return;
        let state = stateOf([setup]);
        for (const entry of rest) state = applyToBucket(state, entry);
        expect(state).toEqual(stateOf(entries));
      }),
      runs,
    );
  });
});
