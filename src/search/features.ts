import { termsAmong } from './terms.ts';

/** What a text is compared by: word stems, pairs of them, and pieces of words, each with a weight. */
export type Features = ReadonlyMap<string, number>;

/** Weights against a stem's; found by leaving phrases out in turn. */
const ofPair = 0.5;
const ofPiece = 0.3;
const pieceLengths = [3, 4];

/** A stop word is its own stem: it tells “in the eye” from “eye wash”. Its rarity weighs it. */
const stemOf = (word: string): { stem: string; isStop: boolean } => {
  const [stem] = termsAmong([word]);
  return { stem: stem ?? word, isStop: stem === undefined };
};

/** The features of words in order. */
export const featuresOf = (words: readonly string[]): Features => {
  const found = new Map<string, number>();
  const add = (feature: string, weight: number): void => {
    found.set(feature, (found.get(feature) ?? 0) + weight);
  };
  const stems = words.filter((word) => !/^\p{N}+$/u.test(word)).map((word) => ({ word, ...stemOf(word) }));
  const heavy = stems.filter(({ isStop }) => !isStop);
  for (const { stem } of stems) add(stem, 1);
  stems.slice(1).forEach(({ stem, isStop }, i) => {
    const before = stems[i];
    if (before) add(`${before.stem} ${stem}`, before.isStop && isStop ? ofPair / 2 : ofPair);
  });
  // Without the stop words between, and in either order: “holes in the glaze”, “glaze has holes”.
  heavy.slice(1).forEach(({ stem }, i) => {
    const before = heavy[i];
    if (before) add([before.stem, stem].toSorted().join('&'), ofPair);
  });
  for (const { word } of heavy) {
    const whole = `#${word}#`;
    for (const length of pieceLengths)
      for (let i = 0; i + length <= whole.length; i++) add(`…${whole.slice(i, i + length)}`, ofPiece);
  }
  return found;
};

/** Whether a feature is one word's stem, not a pair or a piece. */
export const isWhole = (feature: string): boolean => !/[ &…]/.test(feature);

/** Features weighed by rarity, as a vector of length 1. */
export const unitVector = (features: Features, rarity: (feature: string) => number): Features => {
  const weighed = [...features].map(([feature, weight]) => [feature, weight * rarity(feature)] as const);
  const length = Math.sqrt(weighed.reduce((sum, [, weight]) => sum + weight * weight, 0));
  return new Map(weighed.map(([feature, weight]) => [feature, length > 0 ? weight / length : 0]));
};

/** How rare each feature is among labels: one that many have says little. */
export const rarityAmong = (
  labelled: readonly { label: number; features: Features }[],
  labels: number,
): ((feature: string) => number) => {
  const having = new Map<string, Set<number>>();
  for (const { label, features } of labelled)
    for (const feature of features.keys()) {
      const those = having.get(feature) ?? new Set();
      having.set(feature, those.add(label));
    }
  return (feature) => Math.log(1 + labels / (having.get(feature)?.size ?? 1));
};
