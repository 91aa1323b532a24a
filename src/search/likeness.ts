import { featuresOf, isWhole, rarityAmong, unitVector, type Features } from './features.ts';
import { learnLabels } from './learnLabels.ts';
import { eachInSteps, finished, type Steps } from './steps.ts';

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
  // Place and weight in turn: as objects they would keep the collector busy.
  const having = new Map<string, number[]>();
  vectors.forEach((vector, at) => {
    for (const [feature, weight] of vector) {
      const those = having.get(feature);
      if (those) those.push(at, weight);
      else having.set(feature, [at, weight]);
    }
  });
  // Not the vectors themselves, here and below: they can be collected.
  const { length } = vectors;
  return (vector) => {
    const cosines = new Float64Array(length);
    for (const [feature, asked] of vector) {
      const those = having.get(feature);
      if (!those) continue;
      for (let i = 0; i < those.length; i += 2) {
        const at = those[i] ?? 0;
        cosines[at] = (cosines[at] ?? 0) + asked * (those[i + 1] ?? 0);
      }
    }
    return cosines;
  };
};

/** A thing's names and text, taken apart once. */
const takeApart = ({ names, says }: Findable) => ({ names: names.map(featuresOf), says: featuresOf(says) });

/** Compares with each thing: with its nearest name, the middle of its names, and what it says. */
function* comparingThings(
  all: readonly ReturnType<typeof takeApart>[],
  rarity: Rarity,
): Steps<(vector: Features) => number[]> {
  const named = yield* eachInSteps(all, ({ names }) => names.map((features) => unitVector(features, rarity)));
  const toNames = comparing(named.flat());
  const centres = yield* eachInSteps(named, centreOf);
  const toCentres = comparing(centres);
  const texts = yield* eachInSteps(all, ({ says }) => unitVector(says, rarity));
  const toTexts = comparing(texts);
  yield;
  const lengths = named.map(({ length }) => length);
  return (vector) => {
    const [names, centres, texts] = [toNames(vector), toCentres(vector), toTexts(vector)];
    let next = 0;
    return lengths.map((length, i) => {
      let nearest = 0;
      for (const last = next + length; next < last; next++) nearest = Math.max(nearest, names[next] ?? 0);
      return nearest + ofCentre * (centres[i] ?? 0) + ofText * (texts[i] ?? 0);
    });
  };
}

export interface Likeness {
  withMore(more: readonly Findable[]): (words: readonly string[]) => number[];
}

/**
 * Learns to tell things apart by their names. `withMore` compares further things too, of which nothing is learnt: it
 * returns how much a question is like each of all these.
 */
export function* learnLikeness(all: readonly Findable[]): Steps<Likeness> {
  const apart = yield* eachInSteps(all, takeApart);
  const named = apart.flatMap(({ names }, label) => names.map((features) => ({ label, features })));
  const rarity = rarityAmong(named, all.length);
  yield;
  const compare = yield* comparingThings(apart, rarity);
  const examples = named.map(({ label, features }) => ({
    label,
    vector: unitVector(wholeWords(features), rarity),
  }));
  yield;
  const learnt = yield* learnLabels(examples, all.length);
  return {
    withMore: (more) => {
      const compareMore = finished(comparingThings(more.map(takeApart), rarity));
      return (words) => {
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
}
