import { featuresOf, isWhole, rarityAmong, unitVector, type Features } from './features.ts';
import { learnLabels } from './learnLabels.ts';

/** A thing to be found: its names, and what it says, in words. */
export interface Findable {
  names: readonly (readonly string[])[];
  says: readonly string[];
}

/** Weights against the nearest name's; found by leaving phrases out in turn. */
const ofCentre = 2;
const ofText = 0.4;
const ofLearnt = 0.5;

type Rarity = (feature: string) => number;

const wholeWords = (features: Features): Features =>
  new Map([...features].filter(([feature]) => isWhole(feature)));

/** The middle of a thing's names. Roots keep a word that one name in ten has from being drowned. */
const centreOf = (vectors: readonly Features[]): Features => {
  const sum = new Map<string, number>();
  for (const vector of vectors)
    for (const [feature, weight] of vector) sum.set(feature, (sum.get(feature) ?? 0) + weight);
  return unitVector(new Map([...sum].map(([feature, weight]) => [feature, Math.sqrt(weight)])), () => 1);
};

/** Compares a vector with many at once: it looks only at those that share a feature. */
const comparing = (vectors: readonly Features[]): ((vector: Features) => Float64Array) => {
  const having = new Map<string, { at: number; weight: number }[]>();
  vectors.forEach((vector, at) => {
    for (const [feature, weight] of vector) {
      const those = having.get(feature);
      if (those) those.push({ at, weight });
      else having.set(feature, [{ at, weight }]);
    }
  });
  return (vector) => {
    const cosines = new Float64Array(vectors.length);
    for (const [feature, asked] of vector)
      for (const { at, weight } of having.get(feature) ?? [])
        cosines[at] = (cosines[at] ?? 0) + asked * weight;
    return cosines;
  };
};

/** Compares with each thing: with its nearest name, the middle of its names, and what it says. */
const comparingThings = (all: readonly Findable[], rarity: Rarity): ((vector: Features) => number[]) => {
  const vectorOf = (words: readonly string[]) => unitVector(featuresOf(words), rarity);
  const named = all.map(({ names }) => names.map(vectorOf));
  const toNames = comparing(named.flat());
  const toCentres = comparing(named.map(centreOf));
  const toTexts = comparing(all.map(({ says }) => vectorOf(says)));
  return (vector) => {
    const [names, centres, texts] = [toNames(vector), toCentres(vector), toTexts(vector)];
    let first = 0;
    return named.map(({ length }, i) => {
      const nearest = names.subarray(first, first + length).reduce((a, b) => Math.max(a, b), 0);
      first += length;
      return nearest + ofCentre * (centres[i] ?? 0) + ofText * (texts[i] ?? 0);
    });
  };
};

/**
 * Learns to tell things apart by their names. `withMore` compares further things too, of which nothing is learnt: it
 * returns how much a question is like each of all these.
 */
export const learnLikeness = (all: readonly Findable[]) => {
  const named = all.flatMap(({ names }, label) =>
    names.map((words) => ({ label, features: featuresOf(words) })),
  );
  const rarity = rarityAmong(named, all.length);
  const compare = comparingThings(all, rarity);
  const learnt = learnLabels(
    named.map(({ label, features }) => ({ label, vector: unitVector(wholeWords(features), rarity) })),
    all.length,
  );
  return {
    withMore: (more: readonly Findable[]) => {
      const compareMore = comparingThings(more, rarity);
      return (words: readonly string[]): number[] => {
        const features = featuresOf(words);
        const vector = unitVector(features, rarity);
        const probable = learnt(unitVector(wholeWords(features), rarity));
        return [
          ...compare(vector).map((alike, label) => alike + ofLearnt * (probable[label] ?? 0)),
          ...compareMore(vector),
        ];
      };
    },
  };
};
