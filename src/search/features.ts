import { termsAmong } from './terms.ts';

/** What a text is compared by: word stems, pairs of them, and pieces of words, each with a weight. */
export type Features = ReadonlyMap<string, number>;

/** Weights against a stem's; found by leaving phrases out in turn. */
const ofPair = 0.5;
const ofPiece = 0.3;
const pieceLengths = [3, 4];

interface Word {
  stem: string;
  isStop: boolean;
  pieces: readonly string[];
}

const piecesOf = (word: string): string[] => {
  const whole = `#${word}#`;
  return pieceLengths.flatMap((length) =>
    Array.from(
      { length: Math.max(0, whole.length - length + 1) },
      (_, i) => `…${whole.slice(i, i + length)}`,
    ),
  );
};

/** A stop word is its own stem: it tells “in the eye” from “eye wash”. Its rarity weighs it. */
const takeApart = (word: string): Word => {
  const [stem] = termsAmong([word]);
  return stem === undefined
    ? { stem: word, isStop: true, pieces: [] }
    : { stem, isStop: false, pieces: piecesOf(word) };
};

/** Words of the notes come again and again; a member's may be anything, so only so many are kept. */
const mostKept = 5000;
const kept = new Map<string, Word>();
const wordOf = (word: string): Word => {
  const known = kept.get(word);
  if (known) return known;
  const apart = takeApart(word);
  if (kept.size < mostKept) kept.set(word, apart);
  return apart;
};

export const featuresOf = (words: readonly string[]): Features => {
  const found = new Map<string, number>();
  const add = (feature: string, weight: number): void => {
    found.set(feature, (found.get(feature) ?? 0) + weight);
  };
  const stems = words.filter((word) => !/^\p{N}+$/u.test(word)).map(wordOf);
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
  for (const { pieces } of heavy) for (const piece of pieces) add(piece, ofPiece);
  return found;
};

/** Whether a feature is one word's stem, not a pair or a piece. */
export const isWhole = (feature: string): boolean => !/[ &…]/.test(feature);

/** Features weighed by rarity, as a vector of length 1. */
export const unitVector = (features: Features, rarity: (feature: string) => number): Features => {
  const weighed = new Map<string, number>();
  let square = 0;
  for (const [feature, plain] of features) {
    const weight = plain * rarity(feature);
    square += weight * weight;
    weighed.set(feature, weight);
  }
  const length = Math.sqrt(square);
  if (length > 0) for (const [feature, weight] of weighed) weighed.set(feature, weight / length);
  return weighed;
};

/** How rare each feature is among labels, which come one after the other: one that many have says little. */
export const rarityAmong = (
  labelled: readonly { label: number; features: Features }[],
  labels: number,
): ((feature: string) => number) => {
  const having = new Map<string, { labels: number; last: number }>();
  for (const { label, features } of labelled)
    for (const feature of features.keys()) {
      const known = having.get(feature);
      if (!known) having.set(feature, { labels: 1, last: label });
      else if (known.last !== label) {
        known.labels++;
        known.last = label;
      }
    }
  const rarity = new Map(
    [...having].map(([feature, { labels: those }]) => [feature, Math.log(1 + labels / those)]),
  );
  const unseen = Math.log(1 + labels);
  return (feature) => rarity.get(feature) ?? unseen;
};
