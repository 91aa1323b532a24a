import { chances, someTruth, walk, type Room, type Walk } from './simulatedBucket.ts';

export interface Walked {
  buckets: number;
  /** Learned proposals, and the share whose interval contained the true need. */
  proposals: number;
  coverage: number;
  bounded: number;
  ladder: Summary;
  learned: Summary;
  /**
   * Buckets that both methods brought into the window: how many took more doses when learned than by the ladder, and
   * how many took fewer.
   */
  more: number;
  fewer: number;
  largestRungs: number;
  mostPercent: number;
}

interface Summary {
  doses: number;
  reached: number;
  tooThick: number;
}

const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;

const summed = (walks: readonly Walk[]): Summary => ({
  doses: mean(walks.map(({ doses }) => doses)),
  reached: mean(walks.map(({ reached }) => Number(reached))),
  tooThick: mean(walks.map(({ tooThick }) => Number(tooThick))),
});

export const rooms: readonly Room[] = [
  { name: 'careful readings', perRung: 0.3, repeat: [0.02, 0.035] },
  { name: 'usual readings', perRung: 0.3, repeat: [0.03, 0.05] },
  { name: 'rough readings', perRung: 0.3, repeat: [0.05, 0.07] },
  { name: 'slow to flocculate', perRung: 0.2, repeat: [0.03, 0.05] },
  { name: 'quick to flocculate', perRung: 0.5, repeat: [0.03, 0.05] },
];

/**
 * Doses many simulated buckets by the ladder and by the learned dose, with the same truth and the same random errors.
 */
export const walkBuckets = (buckets: number, room: Room, seed = 1): Walked => {
  const world = chances(seed);
  const pairs = Array.from({ length: buckets }, (_, i) => {
    const truth = someTruth(world, room);
    return { ladder: walk(truth, 7919 * (i + 1), 'ladder'), learned: walk(truth, 7919 * (i + 1), 'learned') };
  });
  const both = pairs.filter((pair) => pair.ladder.reached && pair.learned.reached);
  const ladder = pairs.map((pair) => pair.ladder);
  const learned = pairs.map((pair) => pair.learned);
  const proposals = learned.flatMap((one) => one.proposals);
  const held = proposals.filter(
    ({ low, high, needed }) => needed >= low - 1e-9 && (high === undefined || needed <= high),
  );
  return {
    buckets,
    proposals: proposals.length,
    coverage: held.length / proposals.length,
    bounded: proposals.filter(({ high }) => high !== undefined).length / proposals.length,
    ladder: summed(ladder),
    learned: summed(learned),
    more: both.filter((pair) => pair.learned.doses > pair.ladder.doses).length,
    fewer: both.filter((pair) => pair.learned.doses < pair.ladder.doses).length,
    largestRungs: Math.max(0, ...proposals.map(({ ml, rungMl }) => ml / rungMl)),
    mostPercent: Math.max(...learned.map(({ mostPercent }) => mostPercent)),
  };
};
