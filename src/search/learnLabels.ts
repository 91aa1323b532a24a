import type { Features } from './features.ts';
import type { Steps } from './steps.ts';

const passes = 3;
const firstStep = 5;
const examplesAtOnce = 30;

/** Examples in an order that is mixed, and the same each time. */
const shuffled = <T>(all: T[], turn: number): T[] => {
  let seed = turn + 1;
  const mixed = [...all];
  for (let i = mixed.length - 1; i > 0; i--) {
    seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff;
    const j = seed % (i + 1);
    const [one, other] = [mixed[i], mixed[j]];
    if (one === undefined || other === undefined) continue;
    mixed[i] = other;
    mixed[j] = one;
  }
  return mixed;
};

/** Turns scores into probabilities, in place. */
const softmax = (scores: Float64Array): void => {
  let most = -Infinity;
  for (let i = 0; i < scores.length; i++) most = Math.max(most, scores[i] ?? 0);
  let sum = 0;
  for (let i = 0; i < scores.length; i++) sum += scores[i] = Math.exp((scores[i] ?? 0) - most);
  for (let i = 0; i < scores.length; i++) scores[i] = (scores[i] ?? 0) / sum;
};

/**
 * Learns from labelled examples how probable each label is: logistic regression over all labels, by stochastic gradient
 * descent. The same examples give the same numbers.
 */
export function* learnLabels(
  examples: readonly { label: number; vector: Features }[],
  labels: number,
): Steps<(vector: Features) => Float64Array> {
  const placeOf = new Map<string, number>();
  const rows = examples.map(({ label, vector }) => ({
    label,
    places: Int32Array.from(vector.keys(), (feature) => {
      const place = placeOf.get(feature) ?? placeOf.size;
      placeOf.set(feature, place);
      return place * labels;
    }),
    values: Float32Array.from(vector.values()),
  }));
  const weights = new Float32Array(placeOf.size * labels);
  const scores = new Float64Array(labels);
  for (let turn = 0; turn < passes; turn++) {
    const step = firstStep / (1 + 0.3 * turn);
    for (const [n, { label, places, values }] of shuffled(rows, turn).entries()) {
      if (n % examplesAtOnce === 0) yield;
      scores.fill(0);
      for (let i = 0; i < places.length; i++) {
        const from = places[i] ?? 0;
        const value = values[i] ?? 0;
        for (let one = 0; one < labels; one++)
          scores[one] = (scores[one] ?? 0) + (weights[from + one] ?? 0) * value;
      }
      softmax(scores);
      scores[label] = (scores[label] ?? 0) - 1;
      for (let i = 0; i < places.length; i++) {
        const from = places[i] ?? 0;
        const change = step * (values[i] ?? 0);
        for (let one = 0; one < labels; one++)
          weights[from + one] = (weights[from + one] ?? 0) - change * (scores[one] ?? 0);
      }
    }
  }
  return (vector) => {
    const found = new Float64Array(labels);
    for (const [feature, value] of vector) {
      const place = placeOf.get(feature);
      if (place === undefined) continue;
      for (let one = 0; one < labels; one++)
        found[one] = (found[one] ?? 0) + (weights[place * labels + one] ?? 0) * value;
    }
    softmax(found);
    return found;
  };
}
