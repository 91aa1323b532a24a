import type { BucketEntry, BucketEvent } from '../../src/studio/bucket/bucketEvent.ts';
import { coverage95 } from '../../src/glaze/statistics/normal.ts';
import { gravity, millilitres } from '../../src/glaze/units.ts';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';
import { foldBucket } from '../../src/studio/bucket/fold/foldBucket.ts';
import { hours, streamNo } from '../../src/studio/ids.ts';
import { entriesOf } from './bucketArbitraries.ts';

/** Repeatable random numbers. */
export const seeded = (seed: number) => {
  let state = seed >>> 0;
  // Mulberry32, public domain.
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
};

const solids = 2.6;

/** A simulated pail with known truth, and its logbook. It uses none of the program's formulas. */
export const simulatedPail = ({ told, from }: { told: number; from: number }) => {
  const phi = (from - 1) / (solids - 1);
  const truth = { water: (1 - phi) * told, solids: phi * solids * told };
  const events: { event: BucketEvent; minute: number }[] = [];
  let minute = 0;
  const volume = () => truth.water + truth.solids / solids;
  const gravityNow = () => (truth.water + truth.solids) / volume();
  const log = (event: BucketEvent) => void events.push({ event, minute });
  return {
    truth,
    volume,
    gravityNow,
    setUp: (saidToHold: number | undefined) =>
      log({
        kind: 'setup',
        settings: {
          name: 'Gull Grey',
          use: 'dipping',
          pail: millilitres(40_000),
          solids: gravity(solids),
          restLimit: hours(4),
          shelfLife: hours(24 * 7),
          mesh: 80,
          cautions: [],
        },
        ...(saidToHold !== undefined && { volume: millilitres(saidToHold) }),
      }),
    wait: (more: number) => void (minute += more),
    log,
    /** Water that evaporates or drips in unnoticed, given as its effect on gravity. */
    drift: (by: number) => void (truth.water -= (by * volume()) / (gravityNow() - 1)),
    /** Glaze that is used without being logged, as a fraction of the pail. */
    use: (part: number) => {
      truth.water *= 1 - part;
      truth.solids *= 1 - part;
    },
    read: (u95: number, noise: number) =>
      log({
        kind: 'reading',
        gravity: { value: gravity(gravityNow() + (u95 / coverage95) * noise), u95, by: 'stated' },
        stirred: true,
        seen: [],
      }),
    entries: (): BucketEntry[] => entriesOf(events),
    state: (): BucketState => {
      const state = foldBucket(streamNo(1), entriesOf(events));
      if (!state) throw new Error('the pail was not set up');
      return state;
    },
  };
};
